"""What is wrong with a theme of the owner's own, before a page is made with it."""

import re
from collections.abc import Iterator
from pathlib import Path

import yaml

from quotegen.problem import Problem, Source
from quotegen.publish.web import themes
from quotegen.reading.content.content import digest_of
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.near import near_miss
from quotegen.resources import own_themes, theme_names, themes_folder

PARTS = frozenset({"name", "builds_on", "styles", "paper_sizes", "scripts", "font", "fields"})
_OF = re.compile(rb"\A(?:\{#|/\*) of: ([0-9a-f]{8}) ")
"""How a copy begins, in a template and in a style sheet: of which file of ours it was made."""


def own_theme_faults(job: JobSpec) -> tuple[Problem, ...]:
    """Return the faults of the theme that a company chose, none where it is ours as it stands."""
    theme = themes.theme_of(job)
    own = own_themes(Path(job.company_places.file))
    if theme.parent != own:
        return ()
    return tuple(_lineage(own, theme.name, ())) or tuple(_files(theme))


def _lineage(own: Path, name: str, above: tuple[str, ...]) -> Iterator[Problem]:
    """Yield what is wrong with theme.yaml of a theme and of those that it builds on."""
    file, is_ours = own / name / "theme.yaml", (themes_folder() / name).is_dir()
    if not file.is_file():
        if not is_ours:
            said, hint = "a theme of your own has no theme.yaml", f"name: {name}, builds_on: shop"
            yield _fault(file, 1, said, f"write one that says {hint}, each on a line")
        return
    read = _said(file)
    if read is None:
        hint = f"allowed here: {', '.join(sorted(PARTS))}; compare ours"
        yield _fault(file, 1, "this is not what theme.yaml may say", hint)
        return
    parent, known = read.get("builds_on"), {*theme_names(own)} - {name, *above}
    if parent is None and is_ours:
        return
    if parent not in known:
        yield _fault(file, 1, f"it cannot build on `{parent}`", near_miss(str(parent), known))
    elif (own / str(parent)).is_dir():
        yield from _lineage(own, str(parent), (*above, name))


def _said(file: Path) -> dict[str, object] | None:
    """Return what a theme.yaml says, None where it is no such file."""
    try:
        said = yaml.safe_load(file.read_text(encoding="utf-8"))
    except (yaml.YAMLError, UnicodeDecodeError):
        return None
    if not isinstance(said, dict) or not said.keys() <= PARTS:
        return None
    parts = (said.get(part, {}) for part in PARTS - {"name", "builds_on"})
    return said if all(isinstance(part, dict) for part in parts) else None


def _files(theme: Path) -> Iterator[Problem]:
    """Yield the faults of single files: templates that are none, sheets that are not there."""
    layers = themes.with_parents(theme)
    fields = themes.settings(theme, "fields")
    for file in sorted(one for one in theme.rglob("*") if one.suffix in {".j2", ".css"}):
        same = (one / file.relative_to(theme) for one in layers[1:])
        copied = next((one for one in same if one.is_file()), None)
        if copied is not None:
            yield from _behind(file, copied)
        if file.suffix == ".j2":
            yield from _template(file, fields)
    for template, sheets in themes.settings(theme, "styles").items():
        for name in (template, *(f"styles/{one}" for part in sheets.values() for one in part)):
            if not any((one / name).is_file() for one in layers):
                said, hint = f"there is no file `{name}`", "check the name in theme.yaml"
                yield _fault(theme / "theme.yaml", 1, said, hint)


def _behind(file: Path, copied: Path) -> Iterator[Problem]:
    """Yield a warning where a copy says that it was made of another version of our file."""
    of, now = _OF.match(file.read_bytes()), digest_of(copied.read_bytes())
    if of and of[1].decode() != now:
        said = "our file has changed since yours was made of it"
        hint = f"compare the two; when yours is right, begin it with `of: {now}`"
        yield Places(str(file)).warning((), "own-page-behind", said, hint)


def _template(file: Path, fields: dict[str, str]) -> Iterator[Problem]:
    """Yield where a template cannot be read, and each part of a view that there is not."""
    from jinja2 import Environment, TemplateSyntaxError, nodes

    hint = "compare the template of ours that it stands in for"
    try:
        tree = Environment(autoescape=True).parse(file.read_text(encoding="utf-8"))
    except UnicodeDecodeError:
        yield _fault(file, 1, "the template is not UTF-8 text", hint)
        return
    except TemplateSyntaxError as error:
        yield _fault(file, error.lineno, f"the template cannot be read: {error.message}", hint)
        return
    for part in tree.find_all(nodes.Getattr):
        of_view = isinstance(part.node, nodes.Name) and part.node.name == "view"
        if of_view and part.attr not in fields:
            said = f"there is nothing like `view.{part.attr}`"
            yield _fault(file, part.lineno, said, near_miss(part.attr, fields))


def _fault(file: Path, line: int, said: str, hint: str) -> Problem:
    source = Source(file=str(file), line=line)
    return Problem(code="own-theme", source=source, message=said, hint=hint)
