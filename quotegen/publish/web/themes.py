"""Themes: folders of templates and styles, one of which may build on another."""

from functools import cache
from pathlib import Path
from typing import Any

import yaml

from quotegen.resources import themes_folder


def find(theme: Path, name: str) -> Path:
    """Return a file of a theme: its own, or the nearest one among the themes that it builds on.

    Raises:
        FileNotFoundError: none of them has it.
    """
    for one in with_parents(theme):
        if (one / name).is_file():
            return one / name
    raise FileNotFoundError(name)


def read(theme: Path, name: str) -> str:
    """Return the text of a file of a theme."""
    return find(theme, name).read_text(encoding="utf-8")


def settings(theme: Path, part: str) -> dict[str, Any]:
    """Return one part of theme.yaml, such as `styles`; a theme's own word comes first."""
    merged: dict[str, Any] = {}
    for one in reversed(with_parents(theme)):
        merged |= _theme_yaml(one).get(part) or {}
    return merged


def fonts(theme: Path) -> tuple[str, ...]:
    """Return the name of each font file that a style sheet of the theme may ask for."""
    folders = (one / "fonts" for one in with_parents(theme))
    return tuple(sorted({file.name for folder in folders for file in folder.glob("*.woff2")}))


@cache  # a package asks for it hundreds of times, and reading YAML is slow
def with_parents(theme: Path) -> tuple[Path, ...]:
    """Return a theme and the themes that it builds on, the nearest first."""
    parent = _theme_yaml(theme).get("builds_on")
    return (theme, *with_parents(themes_folder() / parent)) if parent else (theme,)


@cache
def _theme_yaml(theme: Path) -> dict[str, Any]:
    parsed: dict[str, Any] = yaml.safe_load((theme / "theme.yaml").read_text(encoding="utf-8"))
    return parsed
