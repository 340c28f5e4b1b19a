"""Themes: folders of templates and styles, one of which may build on another.

Beside company.yaml, `themes/<name>/` of the owner stands before ours of that name, file by file.
"""

from functools import cache
from pathlib import Path
from typing import Any

import yaml

from quotegen.reading.records import JobSpec
from quotegen.resources import own_themes, theme_names, themes_folder


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


def theme_of(job: JobSpec, name: str = "") -> Path:
    """Return the folder of the theme that a company chose, or of another: its own before ours."""
    return _layer(own_themes(Path(job.company_places.file)), name or job.company.theme)


def themes_for(job: JobSpec) -> tuple[str, ...]:
    """Return the name of each theme that a company may choose: ours, and its own."""
    return theme_names(own_themes(Path(job.company_places.file)))


def _layer(own: Path, name: str) -> Path:
    return own / name if (own / name).is_dir() else themes_folder() / name


@cache  # a package asks for it hundreds of times, and reading YAML is slow
def with_parents(theme: Path) -> tuple[Path, ...]:
    """Return a theme, ours of its name, and the themes that it builds on, the nearest first."""
    both = dict.fromkeys((theme, themes_folder() / theme.name))
    layers = tuple(layer for layer in both if layer.is_dir())
    parents = (_theme_yaml(layer).get("builds_on") for layer in layers)
    parent = next((name for name in parents if name), None)
    return (*layers, *with_parents(_layer(theme.parent, parent))) if parent else layers


@cache
def _theme_yaml(theme: Path) -> dict[str, Any]:
    file = theme / "theme.yaml"
    if not file.is_file():  # an owner's folder that changes single files of a theme of ours
        return {}
    parsed: dict[str, Any] = yaml.safe_load(file.read_text(encoding="utf-8"))
    return parsed
