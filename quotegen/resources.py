"""Where themes and content pages are: in the installed package, or beside it in a clone."""

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

_CLONE = Path(__file__).resolve().parent.parent


def _folder(name: str) -> Traversable:
    installed = files("quotegen") / "_data" / name
    return installed if installed.is_dir() else _CLONE / name


def themes_folder() -> Traversable:
    """Return the folder that holds one folder for each theme."""
    return _folder("themes")


def theme_names() -> tuple[str, ...]:
    """Return the name of each theme."""
    folders = themes_folder().iterdir()
    return tuple(sorted(f.name for f in folders if (f / "theme.yaml").is_file()))


def content_folder(language: str = "en") -> Traversable:
    """Return the folder of content pages in a language, such as `en`."""
    return _folder("content") / language
