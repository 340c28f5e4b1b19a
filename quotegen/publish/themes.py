"""Themes: folders of templates and styles, one of which may build on another."""

from functools import cache
from importlib.resources.abc import Traversable
from typing import Any

import yaml

from quotegen.resources import themes_folder


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
