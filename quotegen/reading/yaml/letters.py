"""The letters that our bundled fonts have: a page is set in no other, so no text may need one."""

from collections.abc import Iterator, Mapping
from functools import cache
from io import BytesIO
from pathlib import Path

from fontTools.ttLib import TTFont
from pydantic import BaseModel

from quotegen.problem import Problem
from quotegen.reading.yaml.located import DocumentPath, Places
from quotegen.resources import themes_folder

_LINES = frozenset("\n\t")


def letter_faults(value: BaseModel, places: Places) -> Iterator[Problem]:
    """Yield each text of a file that has a letter which the fonts lack, once a text."""
    for path, text in _texts(value, ()):
        if text.isascii():
            continue
        lacking = next((letter for letter in text if letter not in bundled_letters()), None)
        if lacking is not None:
            shown = f"`{lacking}`" if lacking.isprintable() else "an invisible letter"
            said = f"{shown} (U+{ord(lacking):04X}) is not among the letters of the pages"
            hint = "leave it out, or write it in Latin letters: a page is set in its own font alone"
            yield places.fault(path, "letter-unknown", said, hint)


@cache
def bundled_letters() -> frozenset[str]:
    """Return the letters that every font of every theme has, and what ends a line."""
    fonts = sorted(themes_folder().glob("*/fonts/*.woff2"))
    return frozenset.intersection(*map(_letters_of, fonts)) | _LINES


def _letters_of(font: Path) -> frozenset[str]:
    opened = TTFont(BytesIO(font.read_bytes()), lazy=True)
    return frozenset(map(chr, opened.getBestCmap()))


def _texts(value: object, path: DocumentPath) -> Iterator[tuple[DocumentPath, str]]:
    """Yield each text of a typed file with its path; what was read as a number is none."""
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, BaseModel):
        for name, field in type(value).model_fields.items():
            yield from _texts(getattr(value, name), (*path, field.alias or name))
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            yield from _texts(inner, (*path, str(key)))
    elif isinstance(value, tuple):
        for index, inner in enumerate(value):
            yield from _texts(inner, (*path, index))
