"""Where themes and content pages are: inside the installed package, or beside it in a clone."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent
_INSTALLED = _PACKAGE / "_data"  # pyproject.toml puts them there when it builds the wheel


def _folder(name: str) -> Path:
    installed = _INSTALLED / name
    return installed if installed.is_dir() else _PACKAGE.parent / name


def program_folder() -> Path:
    """Return the folder of our own code and rules."""
    return _PACKAGE


def themes_folder() -> Path:
    """Return the folder that holds one folder for each theme."""
    return _folder("themes")


def theme_names() -> tuple[str, ...]:
    """Return the name of each theme, in the order of the alphabet."""
    return tuple(sorted(file.parent.name for file in themes_folder().glob("*/theme.yaml")))


def content_folder(language: str = "en") -> Path:
    """Return the folder of content pages in a language, such as `en`."""
    return _folder("content") / language
