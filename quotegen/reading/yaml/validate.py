"""A document against its model: the typed value, or every fault with its place and near miss."""

import re
from collections.abc import Iterable
from difflib import get_close_matches
from typing import Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from quotegen.problem import Problem
from quotegen.reading.fields.text_fields import cut_short
from quotegen.reading.fields.typed_fields import EMAIL
from quotegen.reading.yaml.located import Document, DocumentPath, path_text

M = TypeVar("M", bound=BaseModel)
MOST_SHOWN = 200
"""How many faults of one file are said; each is looked up for its place and near miss."""


def validate(document: Document, model: type[M]) -> M | tuple[Problem, ...]:
    """Check a document against a model of its file.

    Returns:
        The model, or all faults of the file together.
    """
    try:
        return model.model_validate(document.content)
    except ValidationError as error:
        faults = [
            details
            for details in error.errors(include_url=False)
            if not (details["type"] == "too_short" and details["input"])  # its items are at fault
        ]
        shown = tuple(_problem(document, model, details) for details in faults[:MOST_SHOWN])
        return shown if len(faults) <= MOST_SHOWN else (*shown, _and_more(document, faults))


def _and_more(document: Document, faults: list[ErrorDetails]) -> Problem:
    left = len(faults) - MOST_SHOWN
    return document.places.fault(
        _path(document, faults[MOST_SHOWN]["loc"]),
        "more-faults",
        f"there are {left:,} more faults in this file",
        "mend those above first; if all is strange, is this the right file?",
    )


FORMER = {
    "colour": "color",
    "colours": "colors",
    "duty": "responsibility",
    "fibre": "fiber",
    "fieldbook": "notebook",
    "licence": "license",
    "with colour": "with color",
}
"""What some of our keys and words were called before, each with its name of today."""


def renamed_or_near(word: str, allowed: Iterable[str]) -> str:
    """Return today's name of a key or word of ours that was renamed, else its near miss."""
    words = tuple(allowed)
    now = FORMER.get(word)
    return f"it is now called `{now}`" if now in words else near_miss(word, words)


def near_miss(word: str, allowed: Iterable[str]) -> str:
    """Return `did you mean ...?` if some allowed word is close, else the list of allowed words."""
    words = sorted(allowed)
    close = get_close_matches(word, words, n=1, cutoff=0.6)
    if close:
        return f"did you mean `{close[0]}`?"
    return f"allowed here: {', '.join(words)}" if words else "there is none to choose from"


def _problem(document: Document, model: type[BaseModel], details: ErrorDetails) -> Problem:
    path = _path(document, details["loc"])
    found = details["input"]
    kind = details["type"]
    message, hint, code = details["msg"], "", kind
    is_key = "[key]" in details["loc"]
    places = document.places
    place = (places.of_key if is_key else places.of)(path)
    if kind == "extra_forbidden":
        key = str(path[-1])
        code, message = "unknown-key", f"`{key}` is not a key that is known here"
        hint = renamed_or_near(key, _keys(_model_at(model, path[:-1])))
        if key[:1].isdigit():
            hint = "inside { } a comma ends the value: leave it out ($2481.81), or quote the value"
        place = places.of_key(path)
    elif kind == "missing" and isinstance(path[-1], str):
        code, message = "missing-key", f"`{path[-1]}:` is missing"
        hint = _lines_to_paste(str(path[-1]), path[:-1], _model_at(model, path[:-1]))
        place = places.of_key(path[:-1])
    elif kind in _ONE_OF and isinstance(found, str):
        code, message = "unknown-word", f"`{cut_short(found)}` is not known here"
        hint = renamed_or_near(cut_short(found), _allowed(details))
    elif kind in {*_ONE_OF, "string_too_short", "string_type", "no-value", "not-one-value"} or (
        kind == "string_pattern_mismatch" and not str(found).strip()
    ):
        code, message, hint = _text_fault(found)
    elif kind == "string_pattern_mismatch":
        code, message = "bad-form", f"`{cut_short(str(found))}` is not in the right form"
        hint = _FORMS.get(str(details.get("ctx", {}).get("pattern")), "see the example jobs")
    elif kind in {"tuple_type", "list_type", "dict_type", "model_type", "model_attributes_type"}:
        code, message, hint = _structure_fault(kind, found)
    elif kind in {"missing", "too_short", "too_long"}:
        code, message, hint = _count_fault(details)
    return Problem(code=code, source=place, path=path_text(path), message=message, hint=hint)


_COORDINATES = 2
_ONE_OF = frozenset({"enum", "literal_error"})
_FORMS = {
    r"^[A-Z]{2}$": "two capital letters, such as OH",
    r"^[a-z][a-z0-9_]*$": "use small letters, digits and _ , beginning with a letter: pool_deck",
    EMAIL: "an e-mail address looks like name@place.example",
    r"^#[0-9a-fA-F]{6}$": "a color is # and six digits or letters a-f: #1f4e79",
    r"^[A-Za-z0-9][A-Za-z0-9_.-]{0,30}$": "letters, digits, dot, dash and _ only, such as 2026-041",
}


def _text_fault(found: Any) -> tuple[str, str, str]:
    if isinstance(found, str):
        return "no-value", "there is no value after the colon", "type the value, or delete the line"
    return (
        "not-one-value",
        "a list or a mapping stands here; one value belongs here",
        "write it on one line",
    )


def _count_fault(details: ErrorDetails) -> tuple[str, str, str]:
    most = details.get("ctx", {}).get("max_length")
    if details["type"] == "missing" or most == _COORDINATES:
        return "not-a-point", "this is not a point of the plan", "type two lengths: [12 ft, 0]"
    if most is not None:
        return "too-many", "there are too many here", f"at most {most} belong here"
    return "empty-list", "the list is empty", "at least one is needed here"


def _structure_fault(kind: str, found: Any) -> tuple[str, str, str]:
    is_list = kind in {"tuple_type", "list_type"}
    wanted = (
        "a list belongs (lines that begin with -)" if is_list else "lines of `key: value` belong"
    )
    was = (
        f"`{cut_short(found)}`"
        if isinstance(found, str) and found
        else "nothing"
        if not found
        else "a list"
        if isinstance(found, list)
        else "a mapping"
    )
    return "wrong-structure", f"found {was} where {wanted}", "compare with an example job"


def _path(document: Document, loc: tuple[int | str, ...]) -> DocumentPath:
    """Drop what pydantic adds to a path that is no part of the document, such as `[key]`."""
    content: Any = document.content
    path: list[str | int] = []
    for part in loc:
        if part == "[key]":
            break
        path.append(part)
        if isinstance(content, dict) and part in content:
            content = content[str(part)]
        elif isinstance(content, list) and isinstance(part, int) and part < len(content):
            content = content[part]
        else:
            content = None
    return tuple(path)


def _lines_to_paste(key: str, path: DocumentPath, model: type[BaseModel] | None) -> str:
    """Return the line that is missing, with its usual value and what that promises, if known."""
    fields = model.model_fields if model else {}
    field = fields.get(key)
    usual = field.examples[0] if field and field.examples else "..."
    means = f": {field.description}" if field and field.examples else ""
    return f"add a line `{key}: {usual}` {_inside(path)}{means}"


def _inside(path: DocumentPath) -> str:
    return f"under `{path_text(path)}`" if path else "at the top level"


def _allowed(details: ErrorDetails) -> list[str]:
    return re.findall("'([^']+)'", str(details.get("ctx", {}).get("expected", "")))


def _keys(model: type[BaseModel] | None) -> list[str]:
    if model is None:
        return []
    return [field.alias or name for name, field in model.model_fields.items()]


def _model_at(model: type[BaseModel], path: DocumentPath) -> type[BaseModel] | None:
    """Follow a path down the annotations to the model whose keys stand there."""
    at: Any = model
    for part in path:
        inner = _models_in(at)
        if isinstance(part, int):
            at = inner[0] if inner else None
        elif isinstance(at, type) and issubclass(at, BaseModel):
            fields = {field.alias or name: field for name, field in at.model_fields.items()}
            at = fields[part].annotation if part in fields else None
        else:
            at = inner[0] if inner else None
    found = _models_in(at)
    return found[0] if found else None


def _models_in(annotation: Any) -> list[type[BaseModel]]:
    """Return the models that an annotation such as `tuple[Shape, ...] | None` holds."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    return [model for argument in get_args(annotation) for model in _models_in(argument)]
