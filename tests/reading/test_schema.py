"""The JSON Schema of each file: what an editor needs to complete and check the examples."""

import json
import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

from quotegen.reading.kinds import KINDS
from quotegen.reading.schema import _models, schema_of, sentences
from quotegen.starting.answers import filled_up
from quotegen.starting.files import started_files
from quotegen.trade.contract_law import load_laws
from quotegen.trade.rules import load_rules
from tests.world import EXAMPLES

TYPED = sorted(EXAMPLES.parent.rglob("*.yaml"))


def _faults(kind: str, text: str) -> list[str]:
    """Return what an editor would mark in a file: its place, and the rule of the schema."""
    schema = schema_of(kind)
    Draft202012Validator.check_schema(schema)
    read = yaml.load(text, yaml.BaseLoader)
    found = Draft202012Validator(schema).iter_errors(read)
    return [f"{one.json_path} {one.validator}" for one in found]


@pytest.mark.parametrize("path", TYPED, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_the_examples_fit_their_schema(path: Path):
    """jsonschema, a validator of JSON Schema draft 2020-12, finds nothing to mark in an example."""
    kind = "job" if path.parent.name == "jobs" else path.stem
    assert _faults(kind, path.read_text(encoding="utf-8")) == []


def test_what_new_writes_fits_its_schema():
    """An editor marks nothing in the files of a start."""
    on = date(2026, 6, 3)
    written = started_files(filled_up({}, load_laws(), load_rules(), on), on)
    for name, data in written.items():
        kind = "job" if name.startswith("jobs/") else name.removesuffix(".yaml")
        assert _faults(kind, data.decode()) == [], name


@pytest.mark.parametrize(
    ("good", "typed", "fault"),
    [
        ("town: Harrow Bend", "twon: Harrow Bend", "$.site additionalProperties"),
        ("finish: ", "finsh: ", "$ required"),
        ("use: patio", "use: patoi", "$.placements[0].use enum"),
        ("title: ", "title: [a, b]\nnote: ", "$.title type"),
    ],
)
def test_an_editor_marks_a_slip(good: str, typed: str, fault: str):
    """A key that is none, one that lacks, a word and a kind of value that are none there."""
    text = Path("tests/messages/good/job.yaml").read_text(encoding="utf-8")
    assert _faults("job", text) == []
    assert good in text
    assert fault in _faults("job", text.replace(good, typed, 1))


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
