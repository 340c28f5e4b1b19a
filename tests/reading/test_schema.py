"""The JSON Schema of each file: what an editor needs to complete and check the examples."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from quotegen.reading.kinds import KINDS
from quotegen.reading.schema import schema_of
from tests.world import EXAMPLES

TYPED = [
    *(("job", path) for path in sorted((EXAMPLES / "jobs").iterdir())),
    ("company", EXAMPLES / "company.yaml"),
    ("rate-book", EXAMPLES / "rate-book.yaml"),
    ("past-jobs", EXAMPLES / "past-jobs.yaml"),
]


def _strangers(typed: Any, schema: Any, root: Any, path: str = "") -> list[str]:
    """Return where a file has a key that its schema lacks, or lacks one that is required."""
    while "$ref" in schema:
        schema = root["$defs"][schema["$ref"].rpartition("/")[2]]
    if "anyOf" in schema:
        tried = [_strangers(typed, choice, root, path) for choice in schema["anyOf"]]
        return min(tried, key=len)
    if isinstance(typed, dict):
        known = schema.get("properties", {})
        rest = schema.get("additionalProperties", {})
        if isinstance(rest, dict) and not known:
            return [s for k, v in typed.items() for s in _strangers(v, rest, root, f"{path}.{k}")]
        lost = [f"{path}: lacks {key}" for key in schema.get("required", ()) if key not in typed]
        odd = [f"{path}: has {key}" for key in typed if key not in known]
        return lost + odd + [
            s for k, v in typed.items() if k in known
            for s in _strangers(v, known[k], root, f"{path}.{k}")
        ]  # fmt: skip
    if isinstance(typed, list):
        items = schema.get("items", {})
        return [s for i, v in enumerate(typed) for s in _strangers(v, items, root, f"{path}[{i}]")]
    return []


@pytest.mark.parametrize(("kind", "path"), TYPED, ids=lambda value: getattr(value, "stem", value))
def test_the_examples_fit_their_schema(kind: str, path: Path):
    """Each key of an example is in the schema, and each that is required is in the example."""
    schema = schema_of(kind)
    typed = yaml.safe_load(path.read_text(encoding="utf-8"))
    assert _strangers(typed, schema, schema) == []


def test_the_check_finds_strangers():
    """The small checker above does see a key too many and one too few."""
    schema = schema_of("job")
    typed = {"quote": "T-1", "site": {"address": "1 Test Lane", "twon": "Ashwick"}}
    found = _strangers(typed, schema, schema)
    assert ".site: has twon" in found
    assert ".site: lacks town" in found
    assert ": lacks finish" in found


@pytest.mark.parametrize("kind", KINDS)
def test_no_key_is_known_that_is_not_listed(kind: str):
    """An editor marks a key that quotegen would refuse."""
    schema: Any = schema_of(kind)
    objects = [schema, *schema["$defs"].values()]
    assert [o["title"] for o in objects if "properties" in o and o["additionalProperties"]] == []


def test_keys_are_named_as_they_are_typed():
    """`from` and `is` are Python words; the schema has them as a person types them."""
    defs: Any = schema_of("job")["$defs"]
    assert "from" in defs["OutlineSide"]["properties"]
    assert "is" in defs["Shape"]["properties"]
    assert "from_" not in str(defs)
    assert "is_" not in defs["Shape"]["properties"]


def test_an_editor_may_offer_examples():
    """A field of text says what it takes and shows how it is typed."""
    defs: Any = schema_of("job")["$defs"]
    thickness = defs["Placement"]["properties"]["thickness"]["anyOf"][0]
    assert thickness["description"] == "A length as on a tape"
    assert "24 ft 6 in" in thickness["examples"]
