"""A document against its model: the typed value, or every fault with its place and near miss."""

import re
from collections.abc import Mapping
from types import UnionType
from typing import Annotated, Any, TypeVar, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from quotegen.problem import Problem
from quotegen.reading.fields.text_fields import cut_short
from quotegen.reading.fields.typed_fields import EMAIL, LANGUAGE, SLUG, STATE
from quotegen.reading.yaml.located import Document, DocumentPath, path_text
from quotegen.reading.yaml.near import renamed_or_near

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
        elif ":" in key:
            hint = f"a blank belongs after the colon: `{key.replace(':', ': ', 1)}`"
        place = places.of_key(path)
    elif kind == "missing" and isinstance(path[-1], str):
        code, message = "missing-key", f"`{path[-1]}:` is missing"
        hint = _lines_to_paste(str(path[-1]), path[:-1], _model_at(model, path[:-1]))
        place = places.of_key(path[:-1])
    elif kind in _ONE_OF and isinstance(found, str):
        code, message = "unknown-word", f"`{cut_short(found)}` is not known here"
        allowed = _allowed(details)
        hint = renamed_or_near(cut_short(found), allowed) + _SIDES.get(frozenset(allowed), "")
    elif kind in {*_ONE_OF, "string_too_short", "string_type", "no-value", "not-one-value"} or (
        kind == "string_pattern_mismatch" and not str(found).strip()
    ):
        beside = _keys(_model_at(model, path[:-1])) if path else []
        code, message, hint = _text_fault(found, beside, document.comments.get(path, ""))
    elif kind == "string_pattern_mismatch":
        code, message = "bad-form", f"`{cut_short(str(found))}` is not in the right form"
        hint = _form_hint(str(details.get("ctx", {}).get("pattern")), str(found))
    elif kind in {"tuple_type", "list_type", "dict_type", "model_type", "model_attributes_type"}:
        is_point = any(map(_holds_so_many, _types_at(model, path)))
        code, message, hint = _point_fault() if is_point else _structure_fault(kind, found)
    elif kind in {"missing", "too_short", "too_long"}:
        code, message, hint = _count_fault(details)
    return Problem(code=code, source=place, path=path_text(path), message=message, hint=hint)


_COORDINATES = 2
_SIDES = {
    frozenset({"bottom", "left", "right", "top"}): "; they are the sides of the drawing: with the"
    " house at the bottom, `top` is away from it"
}
"""What is said beside the sides that are allowed: nobody can know them from their names."""
_ONE_OF = frozenset({"enum", "literal_error"})
_FORMS = {
    STATE: "two capital letters, such as OH",
    SLUG: "use small letters, digits and _ , beginning with a letter: pool_deck",
    LANGUAGE: "two small letters that name a folder in content/, such as es",
    EMAIL: "an e-mail address looks like name@place.example",
    r"^#[0-9a-fA-F]{6}$": "a color is # and six digits or letters a-f: #1f4e79",
    r"^[A-Za-z0-9][A-Za-z0-9_.-]{0,30}$": "letters, digits, dot, dash and _ only, such as 2026-041",
}


def _form_hint(pattern: str, found: str) -> str:
    """Return what is right for a pattern, with the text itself where it is nearly so."""
    meant = ""
    if pattern == STATE:
        meant = found.upper()
    elif pattern == SLUG:
        meant = re.sub("[^a-z0-9]+", "_", found.lower()).strip("_")
    form = _FORMS.get(pattern, "see the example jobs")
    return f"type it as `{meant}`" if meant and re.fullmatch(pattern, meant) else form


def _text_fault(found: Any, beside: list[str], comment: str) -> tuple[str, str, str]:
    """Return the fault of a place where one text belongs and none, or more than one, stands.

    Args:
        found: what stands there.
        beside: the keys that may stand next to its key.
        comment: what follows the colon after a #.
    """
    if isinstance(found, str) and comment:
        hint = f'put a text that begins with # in quotes: "{comment}"; or type the value before it'
        return "no-value", "`#` begins a comment, so there is no value after the colon", hint
    if isinstance(found, str):
        return "no-value", "there is no value after the colon", "type the value, or delete the line"
    hint = "type one value alone, without [ ], { } or lines below it"
    if isinstance(found, dict) and found.keys() <= set(beside):
        hint = f"`{'`, `'.join(found)}` stand beside this key, not in it"
    return "not-one-value", f"{_named(found)} stands here; one value belongs here", hint


def _point_fault() -> tuple[str, str, str]:
    return "not-a-point", "this is not a point of the plan", "type two lengths: [12 ft, 0]"


def _count_fault(details: ErrorDetails) -> tuple[str, str, str]:
    most = details.get("ctx", {}).get("max_length")
    if details["type"] == "missing" or most == _COORDINATES:
        return _point_fault()
    if most is not None:
        return "too-many", "there are too many here", f"at most {most} belong here"
    return "empty-list", "the list is empty", "at least one is needed here"


def _structure_fault(kind: str, found: Any) -> tuple[str, str, str]:
    if kind in {"tuple_type", "list_type"}:
        wanted = "a list belongs (lines that begin with -)"
        hint = "begin each line of it with a dash and a blank"
        if isinstance(found, dict) and found:
            hint = (
                f"put a dash and a blank before the first of these lines: `- {next(iter(found))}:`"
            )
        elif isinstance(found, str) and found:
            hint = f"type it as a list: `[{cut_short(found)}]`"
    else:
        wanted = "lines of `key: value` belong"
        hint = "type them on the lines below, each further in than this key"
        if isinstance(found, list) and found:
            hint = "leave the dashes out"
    return "wrong-structure", f"found {_named(found)} where {wanted}", hint


def _named(found: Any) -> str:
    if not found:
        return "nothing"
    if isinstance(found, str):
        return f"`{cut_short(found)}`"
    return "a list" if isinstance(found, list) else "a mapping"


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
    at = _types_at(model, path)
    return next((one for one in at if isinstance(one, type) and issubclass(one, BaseModel)), None)


def _types_at(model: type[BaseModel], path: DocumentPath) -> list[Any]:
    """Follow a path down the annotations to what may stand there."""
    at: list[Any] = [model]
    for part in path:
        at = [inner for one in at for inner in _below(one, part)]
    return at


def _holds_so_many(annotation: Any) -> bool:
    """Whether a type is a list of a fixed number, as a point is."""
    return get_origin(annotation) is tuple and Ellipsis not in get_args(annotation)


def _below(one: Any, part: str | int) -> list[Any]:
    """Return what may stand under a key, or at an index, of a type that is no choice of several."""
    if isinstance(one, type) and issubclass(one, BaseModel):
        fields = {field.alias or name: field for name, field in one.model_fields.items()}
        return _choices(fields[str(part)].annotation) if part in fields else []
    arguments = [each for each in get_args(one) if each is not Ellipsis]
    is_mapping = isinstance(get_origin(one), type) and issubclass(get_origin(one), Mapping)
    if not arguments or is_mapping == isinstance(part, int):
        return []
    return _choices(arguments[-1])


def _choices(annotation: Any) -> list[Any]:
    """Return what an annotation such as `tuple[Shape, ...] | None` leaves to choose from."""
    if get_origin(annotation) is Annotated:
        return _choices(get_args(annotation)[0])
    if get_origin(annotation) in {Union, UnionType}:
        return [one for argument in get_args(annotation) for one in _choices(argument)]
    return [annotation]
