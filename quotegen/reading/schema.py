"""The JSON Schema of each input file, for editors: at each key a sentence and an example."""

from collections.abc import Iterator, Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

import yaml
from pydantic import BaseModel

from quotegen.reading.kinds import KINDS


def schema_of(kind: str) -> dict[str, object]:
    """Return the JSON Schema (draft 2020-12) of a kind of file."""
    schema = KINDS[kind].model_json_schema(by_alias=True)
    parts: dict[str, Any] = schema.get("$defs", {})
    models = {model.__name__: model for model in _models(KINDS[kind], set())}
    for name, part in (*parts.items(), (KINDS[kind].__name__, schema)):
        for key, value in part.get("properties", {}).items():
            part["properties"][key] = _with_words(models[name], key, value)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}


def _with_words(model: type[BaseModel], key: str, value: dict[str, Any]) -> dict[str, Any]:
    """Return the schema of a key with its sentence, how it is typed, and an example."""
    sentence, _, own = _sentence(model, key).partition(" | ")
    forms = dict.fromkeys(_found(value, "description"))
    examples = [own] if own else list(dict.fromkeys(map(str, _found(value, "examples"))))
    said = " ".join((sentence, *(f"{form}." for form in forms if form and form != sentence)))
    shown = ({"examples": examples} if examples else {}) | {"description": said}
    return {name: part for name, part in value.items() if name != "title"} | shown


def _sentence(model: type[BaseModel], key: str) -> str:
    """Return what keys.yaml says of a key, under the nearest part that brings it."""
    for part in model.__mro__:
        if key in sentences().get(part.__name__, {}):
            return sentences()[part.__name__][key]
    return ""


def _found(value: Any, name: str) -> Iterator[Any]:
    """Yield what a kind of value says of itself, also within a choice or a list."""
    if isinstance(value, dict):
        here = value.get(name, ())
        yield from here if isinstance(here, list) else [here] if here else ()
        for inner in ("anyOf", "items", "prefixItems"):
            yield from _found(value.get(inner, ()), name)
    elif isinstance(value, list):
        for one in value:
            yield from _found(one, name)


def _models(part: Any, known: set[type[BaseModel]]) -> set[type[BaseModel]]:
    """Return every part of a file, however deep it lies."""
    if isinstance(part, type) and issubclass(part, BaseModel) and part not in known:
        known.add(part)
        part.model_rebuild()
        for field in part.model_fields.values():
            _models(field.annotation, known)
    for inner in getattr(part, "__args__", ()):
        _models(inner, known)
    return known


@cache
def sentences() -> Mapping[str, Mapping[str, str]]:
    """Return what an editor says of each key, by the part of a file that brings it."""
    text = (files("quotegen.reading") / "files" / "keys.yaml").read_text(encoding="utf-8")
    return MappingProxyType(yaml.safe_load(text))
