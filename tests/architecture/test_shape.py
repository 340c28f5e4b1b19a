"""The code stays small, its records frozen, and README and DEVELOPERS.md true to it."""

import ast
import re
from collections.abc import Iterator
from importlib import import_module

import pytest

from tests.architecture.tree import PACKAGE, REPO, STAGES, Offence, dotted, modules, name_of, parsed
from tests.architecture.tree import offences as found

LONGEST = 400
AFTER_READING = [room for room in STAGES if room != "reading"]


def _lines() -> dict[str, int]:
    return {
        name_of(path): len(path.read_text(encoding="utf-8").splitlines())
        for path in modules()
        if path.name != "__init__.py"
    }


def test_no_module_is_long():
    """A module of more than 400 lines is two things."""
    assert {name: lines for name, lines in _lines().items() if lines > LONGEST} == {}


def test_records_are_frozen():
    """What one stage hands to the next cannot be changed, nor gain a field by a typing slip."""
    assert found(modules(), _loose_records) == []


def test_records_after_reading_hold_no_open_containers():
    """From the takeoff on a record holds tuples and named records, not lists or loose mappings."""
    later = [*modules(*AFTER_READING), PACKAGE / "pipeline.py"]
    assert found(later, _open_fields) == []


@pytest.mark.parametrize(("room", "number"), STAGES.items())
def test_each_stage_says_its_number(room: str, number: int):
    """The first words of a room's docstring are its stage number."""
    docstring = ast.get_docstring(parsed(PACKAGE / room / "__init__.py")) or ""
    assert re.match(rf"Stage {number}\b", docstring), f"{room}: {docstring[:60]!r}"


def test_developers_page_lists_the_stages_in_order():
    """DEVELOPERS.md lists the stages once, by number and room."""
    page = (REPO / "DEVELOPERS.md").read_text(encoding="utf-8")
    lines = [
        re.search(rf"^\W*(?:Stage )?{number}\b.*\b{room}\b", page, re.MULTILINE)
        for room, number in STAGES.items()
    ]
    missing = [room for room, line in zip(STAGES, lines, strict=True) if line is None]
    assert missing == []
    places = [line.start() for line in lines if line]
    assert places == sorted(places)


def test_readme_names_each_command():
    """Whoever reads the README meets every quotegen command."""
    readme = (REPO / "README.md").read_text(encoding="utf-8")
    commands = import_module("quotegen.cli").commands.commands
    assert commands
    assert [name for name in commands if f"quotegen {name}" not in readme] == []


def test_readme_names_each_word_of_run():
    """Whoever reads the README and its page of commands meets everything that ./run can do."""
    readme = "".join(
        (REPO / page).read_text(encoding="utf-8") for page in ("README.md", "docs/commands.md")
    )
    script = (REPO / "run").read_text(encoding="utf-8")
    words = re.findall(r"^([a-z]+)\)", script, re.MULTILINE)
    assert {"demo", "test", "check", "bench", "fuzz", "quotegen"} <= set(words)
    assert [word for word in words if f"./run {word}" not in readme] == []


def _dataclasses(tree: ast.AST) -> Iterator[tuple[ast.ClassDef, ast.expr]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.ClassDef):
            for decorator in node.decorator_list:
                name = decorator.func if isinstance(decorator, ast.Call) else decorator
                if dotted(name).split(".")[-1] == "dataclass":
                    yield node, decorator


def _loose_records(tree: ast.AST) -> Iterator[Offence]:
    for record, decorator in _dataclasses(tree):
        keywords = decorator.keywords if isinstance(decorator, ast.Call) else []
        true = {
            keyword.arg
            for keyword in keywords
            if isinstance(keyword.value, ast.Constant) and keyword.value.value is True
        }
        if not {"frozen", "slots"} <= true:
            yield record, f"{record.name} lacks frozen=True and slots=True"


def _open_fields(tree: ast.AST) -> Iterator[Offence]:
    for record, _ in _dataclasses(tree):
        for field in record.body:
            if isinstance(field, ast.AnnAssign):
                shown = ast.unparse(field.annotation)
                if re.search(r"\b(?:list|List)\b|\b(?:dict|Dict|Mapping)\[.*\bAny\b", shown):
                    yield field, f"{record.name} holds {shown}"
