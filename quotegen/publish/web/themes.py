"""Themes: folders of templates and styles, one of which may build on another."""

import re
from dataclasses import dataclass
from functools import cache
from importlib.resources.abc import Traversable
from typing import Any

import yaml

from quotegen.resources import themes_folder

_ROOT = re.compile(r"(@media print \{\s*)?:root \{(.*?)\}", re.DOTALL)
_SET = re.compile(r"(--[\w-]+):\s*([^;]+);")


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """One token, with its value on a wide screen and on paper."""

    name: str
    screen: str
    paper: str

    @property
    def key(self) -> str:
        """Its name without the dashes before it, as a class of the specimen."""
        return self.name.removeprefix("--")

    @property
    def group(self) -> str:
        """What it is about: the first word of its name."""
        return self.key.partition("-")[0]


def tokens_of(css: str) -> tuple[Token, ...]:
    """Return every token in the order in which it is first set; the last value holds."""
    screen: dict[str, str] = {}
    paper: dict[str, str] = {}
    for for_paper, body in _ROOT.findall(css):
        (paper if for_paper else screen).update(_SET.findall(body))
    return tuple(
        Token(name=name, screen=value, paper=paper.get(name, value))
        for name, value in screen.items()
    )


def layers(theme: Traversable) -> tuple[Traversable, ...]:
    """Return a theme and what it builds on, the nearest first."""
    below = _own(theme).get("builds_on")
    return (theme, *layers(themes_folder() / below)) if below else (theme,)


def found(theme: Traversable, name: str) -> Traversable:
    """Return a file of a theme: its own, or that of the theme that it builds on.

    Raises:
        FileNotFoundError: none of them has it.
    """
    files = [layer.joinpath(*name.split("/")) for layer in layers(theme)]
    for file in files:
        if file.is_file():
            return file
    raise FileNotFoundError(name)


def text(theme: Traversable, name: str) -> str:
    """Return the text of a file of a theme."""
    return found(theme, name).read_text(encoding="utf-8")


def listed(theme: Traversable, part: str) -> dict[str, Any]:
    """Return what a part of theme.yaml lists, the nearest theme's word first."""
    merged: dict[str, Any] = {}
    for layer in reversed(layers(theme)):
        merged |= _own(layer).get(part) or {}
    return merged


def fonts(theme: Traversable) -> tuple[str, ...]:
    """Return the name of each font file."""
    folders = [layer / "fonts" for layer in layers(theme)]
    return tuple(sorted({
        file.name for folder in folders if folder.is_dir()
        for file in folder.iterdir() if file.name.endswith(".woff2")
    }))  # fmt: skip


def _own(theme: Traversable) -> dict[str, Any]:
    return _parsed((theme / "theme.yaml").read_text(encoding="utf-8"))


@cache  # a page asks for it dozens of times, and reading YAML is slow
def _parsed(text: str) -> dict[str, Any]:
    parsed: dict[str, Any] = yaml.safe_load(text)
    return parsed
