"""The JSON Schema of each file: what an editor needs to complete and check the examples."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from quotegen.reading.kinds import KINDS
from quotegen.reading.schema import _models, schema_of, sentences
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


def _properties(kind: str) -> Iterator[tuple[str, str, Any]]:
    """Each key of a kind of file: the part that has it, its name, and its schema."""
    schema: Any = schema_of(kind)
    for part, described in (*schema["$defs"].items(), (kind, schema)):
        for key, value in described.get("properties", {}).items():
            yield part, key, value


@pytest.mark.parametrize("kind", KINDS)
def test_an_editor_says_what_each_key_is(kind: str):
    """At each key stands a sentence; one that takes a text or a number shows how it is typed."""
    for part, key, value in _properties(kind):
        assert re.match(r"[A-Z0-9].*\.(?: |$)", value["description"]), (part, key)
        typed = str(value.get("anyOf", value))
        if "$ref" not in typed and "enum" not in typed and "array" not in typed:
            assert value.get("examples") or "object" in typed, (part, key)


def test_an_editor_says_in_which_unit():
    """How a length, a price or a time is typed follows the sentence."""
    known = {(part, key): value for kind in KINDS for part, key, value in _properties(kind)}
    for place, form in {
        ("Placement", "thickness"): "A length as on a tape.",
        ("CostedOrder", "allowance"): "A share.",
        ("CostedRate", "rate"): "A price for one.",
        ("Site", "drive_time"): "A time on the road, one way.",
    }.items():
        assert known[place]["description"].endswith(form)
    assert "24 ft 6 in" in known["Placement", "thickness"]["examples"]


def test_no_sentence_is_left_over():
    """keys.yaml has no key that no file has."""
    known = {(part, key) for kind in KINDS for part, key, _ in _properties(kind)}
    models = {model.__name__: model for kind in KINDS for model in _models(KINDS[kind], set())}
    brought = {
        (above.__name__, key)
        for name, model in models.items()
        for above in model.__mro__
        for part, key in known
        if part in {name, *(kind for kind, file in KINDS.items() if file is model)}
    }
    said = {(part, key) for part, keys in sentences().items() for key in keys}
    assert said - brought == set()


@pytest.mark.parametrize("kind", KINDS)
def test_the_schema_beside_the_examples_is_this_one(kind: str):
    """What the first lines of the examples point at: `quotegen schema KIND > schema/KIND.json`."""
    kept = json.loads((EXAMPLES.parents[1] / "schema" / f"{kind}.json").read_text("utf-8"))
    assert kept == json.loads(json.dumps(schema_of(kind)))


@pytest.mark.parametrize(
    "path", sorted(EXAMPLES.parent.rglob("*.yaml")), ids=lambda path: path.name
)
def test_each_example_names_its_schema(path: Path):
    """An editor that knows this line completes and checks an example as it is opened."""
    kind = "job" if path.parent.name == "jobs" else path.stem
    (named,) = re.findall(r"(?m)^# yaml-language-server: \$schema=(\S+)$", path.read_text("utf-8"))
    assert (path.parent / named).resolve() == EXAMPLES.parents[1] / "schema" / f"{kind}.json"
