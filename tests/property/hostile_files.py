"""Files as no owner means them: slips of a tired hand, and files made from the schema itself.

Everything follows from a seed, so that what was found once can be found again.
"""

import random
from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from quotegen.reading.schema import schema_of
from quotegen.reading.yaml.located import Document, parse
from tests.messages.case_files import CASES
from tests.pricing.shop import as_yaml
from tests.world import COMPANY_FILES, EXAMPLES

REPO = Path(__file__).resolve().parents[2]
JUNK = (
    "", "0", "-1 ft", "1/0 in", "9" * 500, "9999999 ft", "$9,999,999 / sq ft", "&a", "*a", "!x",
    "[", "}", "{", "- ", ":", "\t", "\x07", "\u2028", "'", '"', "|", "#", "~", "yes", "[]", "{}",
    "[[0, 0], 1]", "9999-12-31", "2026-02-30", "360 deg", "-720 deg", "🏊", "\\", "---", "? a",
    "1e9", "nan", "0x1F", "1² ft", "٣ ft", "\u202e", "=styles=", "../../x", "100 %", "0.0001 in",
    "3000 ft x 3000 ft", "40 ft", "1/9999999 in", "2099-01-01", "-$90000", "[" * 40,
)  # fmt: skip
_DEEPEST, _LONGEST_LIST = 7, 3
_OPTIONAL, _JUNK_VALUE, _WHOLE_FILE, _SLIPS = 0.15, 0.08, 0.2, 0.5
"""How often an optional key is given, a value is junk, a file is new throughout, a hand slips."""

Schema = Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class HostileFiles:
    """The four files of a company, one of them spoiled, and how."""

    made: str
    texts: Mapping[str, str]


def hostile_files(seed: int) -> HostileFiles:
    """Return four files of which one is not as anybody means it."""
    chance = random.Random(seed)
    job = chance.choice(_jobs())
    home = job.parent.parent
    paths = {name: home / name for name in COMPANY_FILES} | {"job.yaml": job}
    texts = {name: path.read_text(encoding="utf-8") for name, path in paths.items()}
    name = chance.choice(("job.yaml", "job.yaml", "job.yaml", *COMPANY_FILES))
    if chance.random() < _SLIPS:
        made, texts[name] = "mutated", slipped(texts[name], chance)
    else:
        made, texts[name] = "from the schema", _from_schema(name, texts[name], chance)
    return HostileFiles(made=made, texts=texts)


@cache
def _jobs() -> tuple[Path, ...]:
    return tuple(sorted(REPO.glob("example_jobs/*/jobs/*.yaml")))


def slipped(text: str, chance: random.Random) -> str:
    """Return the text with a few slips of a tired hand."""
    lines = text.splitlines()
    for _ in range(chance.randint(1, 3)):
        at = chance.randrange(len(lines))
        line = lines[at]
        spot = chance.randrange(len(line) + 1)
        slip = chance.randrange(7)
        if slip == 0 and len(lines) > 1:
            del lines[at]
        elif slip == 1:
            lines.insert(at, chance.choice(lines))
        elif slip == 2:
            lines[at] = line[:spot] + chance.choice(JUNK) + line[spot:]
        elif slip == 3:
            lines[at] = line[:spot] + line[spot + 1 :]
        elif slip == 4 and ": " in line:
            lines[at] = line[: line.index(": ") + 2] + chance.choice(JUNK)
        elif slip == 5:
            lines[at] = " " * chance.randint(0, 8) + line.lstrip()
        else:
            lines[at] = line[:spot]
    return "\n".join(lines) + "\n"


def _from_schema(name: str, text: str, chance: random.Random) -> str:
    """Return a file of the keys of its schema: new throughout, or with a few new values."""
    schema = _schema(name.removesuffix(".yaml"))
    if chance.random() < _WHOLE_FILE:
        made = _Maker(schema, chance).value(schema, "", 0)
    else:
        made = yaml.load(text, Loader=yaml.BaseLoader)
        for _ in range(chance.randint(1, 3)):
            _graft(made, schema, _Maker(schema, chance))
    return as_yaml(made)


@cache
def _schema(kind: str) -> Schema:
    return schema_of(kind)


def schema_walk(kind: str, made: Any) -> Iterator[tuple[Any, Any, Schema]]:
    """Yield each value of a file below the top: what holds it, its key or index, its schema."""
    schema = _schema(kind)
    maker = _Maker(schema, random.Random(0))
    left: list[tuple[Any, Schema]] = [(made, schema)]
    while left:
        at, inside = left.pop()
        for one in maker.alternatives(inside):
            keys = maker.keys_of(one, at)
            if isinstance(at, list) and "items" in one:
                items: Schema = one["items"]
                keys |= dict.fromkeys(range(len(at)), items)
            for key in [key for key in keys if isinstance(at, list) or key in at]:
                for below in maker.alternatives(keys[key]):
                    yield at, key, below
                left.append((at[key], keys[key]))


def _graft(made: Any, schema: Schema, maker: "_Maker") -> None:
    """Give one key of a file, at any depth, a new value that its schema allows."""
    at, inside, key = made, maker.resolved(schema), ""
    while True:
        keys = maker.keys_of(inside, at)
        if isinstance(at, list) and at and "items" in inside:
            index: Any = maker.chance.randrange(len(at))
            below = inside["items"]
        elif isinstance(at, dict) and keys:
            index = key = maker.chance.choice(sorted(keys))
            below = keys[index]
        else:
            return
        there = index in at if isinstance(at, dict) else True
        further = there and isinstance(at[index], (dict, list)) and maker.chance.random() < 0.8
        if not further:
            at[index] = maker.value(below, key, 2)
            return
        at, inside = at[index], maker.resolved(below)


class _Maker:
    """Makes values that a JSON Schema describes, with some that it does not."""

    def __init__(self, schema: Schema, chance: random.Random) -> None:
        self.chance = chance
        self._parts: Schema = schema["$defs"]

    def alternatives(self, schema: Schema) -> tuple[Schema, ...]:
        """Return a part with its reference followed, each of its alternatives by itself."""
        if "$ref" in schema:
            return self.alternatives(self._parts[schema["$ref"].rpartition("/")[2]])
        several = schema.get("anyOf", ())
        return tuple(one for part in several for one in self.alternatives(part)) or (schema,)

    def resolved(self, schema: Schema) -> Schema:
        """Return a part with its reference followed, and one of its alternatives chosen."""
        while True:
            if "$ref" in schema:
                schema = self._parts[schema["$ref"].rpartition("/")[2]]
            elif "anyOf" in schema:
                real = [one for one in schema["anyOf"] if one.get("type") != "null"]
                schema = self.chance.choice(real)
            else:
                return schema

    def keys_of(self, schema: Schema, at: Any) -> dict[Any, Schema]:
        """Return the keys that a mapping may have: those of the schema, or those it has."""
        if known := schema.get("properties"):
            return dict(known)
        anything = self._of_any_key(schema)
        return dict.fromkeys(at, anything) if anything and isinstance(at, dict) else {}

    def value(self, schema: Schema, key: str, depth: int) -> Any:
        """Return a value for a key: what it is seen to have, what the schema says, or junk."""
        schema = self.resolved(schema)
        if depth > 0 and self.chance.random() < _JUNK_VALUE:
            return self.chance.choice(JUNK)
        if depth > 0 and (seen := _seen().get(key)) and self.chance.random() < 0.7:
            return deepcopy(self.chance.choice(seen))
        if "enum" in schema:
            return self.chance.choice(schema["enum"])
        kind = schema.get("type")
        if kind == "object":
            return self._mapping(schema, depth)
        if kind == "array":
            items = schema.get("items", {})
            count = self.chance.randint(0, _LONGEST_LIST) if depth < _DEEPEST else 0
            return [self.value(items, key, depth + 1) for _ in range(count)]
        known = (*schema.get("examples", ()), "3", "yes", "a text", "12 ft", "$40", "5 %")
        return self.chance.choice(known)

    def _mapping(self, schema: Schema, depth: int) -> dict[str, Any]:
        if depth >= _DEEPEST:
            return {}
        needed = schema.get("required", ())
        made = {
            key: self.value(part, key, depth + 1)
            for key, part in schema.get("properties", {}).items()
            if key in needed or self.chance.random() < _OPTIONAL
        }
        if anything := self._of_any_key(schema):
            names = self.chance.sample(("broom", "slab", "patio", "one", "two"), 2)
            made |= {name: self.value(anything, name, depth + 1) for name in names}
        return made

    @staticmethod
    def _of_any_key(schema: Schema) -> Schema | None:
        patterns = tuple(schema.get("patternProperties", {}).values())
        further = schema.get("additionalProperties")
        return patterns[0] if patterns else further if isinstance(further, dict) else None


@cache
def _seen() -> Mapping[str, tuple[Any, ...]]:
    """Return all values that a key has anywhere in the examples and the cases of messages."""
    seen: dict[str, list[Any]] = {}
    for path in (*_jobs(), *(EXAMPLES / name for name in COMPANY_FILES), *sorted(CASES.iterdir())):
        read = parse(path.read_bytes(), path.name)
        if isinstance(read, Document):  # a case may be about a file that cannot be read
            _note(read.content, seen)
    return {key: tuple(values) for key, values in seen.items()}


def _note(value: Any, seen: dict[str, list[Any]]) -> None:
    if isinstance(value, dict):
        for key, inner in value.items():
            seen.setdefault(str(key), []).append(inner)
            _note(inner, seen)
    elif isinstance(value, list):
        for inner in value:
            _note(inner, seen)
