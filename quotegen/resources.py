"""Where themes, content and examples are: in the installed package, or beside it in a clone."""

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


def own_themes(company: Path) -> Path:
    """Return the folder in which the themes of a company lie, beside its file."""
    return company.parent / "themes"


def theme_names(own: Path | None = None) -> tuple[str, ...]:
    """Return the name of each theme, ours and those in a company's folder, by the alphabet."""
    names = {file.parent.name for file in themes_folder().glob("*/theme.yaml")}
    if own is not None and own.is_dir():
        names |= {one.name for one in own.iterdir() if one.is_dir() and one.name[0] != "."}
    return tuple(sorted(names))


def content_folder(language: str = "en") -> Path:
    """Return the folder of content pages in a language, such as `en`."""
    return _folder("content") / language


def example_folder(name: str) -> Path:
    """Return the folder of a made-up company, such as `all_in`."""
    return _folder("example_jobs") / name
