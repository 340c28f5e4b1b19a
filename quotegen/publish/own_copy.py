"""A copy of a page, or of a file of a theme, that an owner wants to make their own."""

import re
from collections.abc import Iterable
from pathlib import Path

from babel import localedata

from quotegen.problem import Problem
from quotegen.publish.write import Files
from quotegen.reading.content.content import LANGUAGE_FILE, digest_of
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.near import near_miss
from quotegen.resources import content_folder, themes_folder

_NUMBER = re.compile(r"^\d+-")
"""What begins the file names of pages that are read in an order."""
_WORDS = ("labels", "sentences", "glossary")
_SIGNED = {".j2": "{{# of: {} #}}\n", ".css": "/* of: {} */\n"}
"""How a copy of a theme's file begins; a page says it in its front matter."""


def own_copies(
    names: tuple[str, ...], language: str | None = None
) -> tuple[Files, tuple[Problem, ...]]:
    """Return the copies by their place beside company.yaml, and the names that nothing has.

    Args:
        names: of pages, such as `clauses/warranty`, or of files of a theme, such as
            `shop/styles/tokens.css`. A copy says of which version of ours it was made. `labels`,
            `sentences` and `glossary` are our fixed words.
        language: whose folder in content/ gets the copies of pages and words, to be translated, and
            its way of writing; all of them where none is named.
    """
    pages, themes = content_folder(), themes_folder()
    said = {f"{one.parent.name}/{_NUMBER.sub('', one.stem)}": one for one in pages.glob("*/*.md")}
    said |= {name: pages / f"{name}.yaml" for name in _WORDS}
    looks = {
        one.relative_to(themes).as_posix(): one
        for one in themes.rglob("*")
        if one.suffix in _SIGNED
    }
    ours, names = {**said, **looks}, names or tuple(said if language else ())
    problems = tuple(_unknown(name, ours) for name in names if name not in ours)
    room = "content" if language is None else f"content/{language}"
    made = dict(_copy(name, ours[name], room) for name in names if name in ours)
    if language is not None:
        made[f"{room}/{LANGUAGE_FILE}"] = f"locale: {_locale(language)}\n".encode()
    return made, problems


def _locale(language: str) -> str:
    """Return how a language is written where our papers are: with the dates and money of the US."""
    here = f"{language}_US"
    return here if localedata.exists(here) else language


def _copy(name: str, file: Path, room: str) -> tuple[str, bytes]:
    data = file.read_bytes()
    if file.suffix == ".md":
        of = f"---\nof: {digest_of(data)}\n".encode()
        return f"{room}/{name}.md", of + data.removeprefix(b"---\n")
    if file.suffix == ".yaml":
        return f"{room}/{name}.yaml", data
    return f"themes/{name}", _SIGNED[file.suffix].format(digest_of(data)).encode() + data


def _unknown(name: str, ours: Iterable[str]) -> Problem:
    said = f"there is no page and no file of a theme `{name}`"
    return Places(name).fault((), "own-page-unknown", said, near_miss(name, ours))
