"""Reads quotegen's own source, so that a test can hold its shape."""

import ast
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

REPO = Path(__file__).resolve().parents[2]
PACKAGE = REPO / "quotegen"

STAGES = {"reading": 1, "takeoff": 2, "pricing": 3, "schedule": 4, "explain": 5, "publish": 6}
PURE_ROOMS = ("takeoff", "pricing", "schedule", "explain")

Offence = tuple[ast.AST, str]


def modules(*folders: str) -> list[Path]:
    """The modules of these rooms, or of the whole package."""
    roots = [PACKAGE / folder for folder in folders] or [PACKAGE]
    return sorted(path for root in roots for path in root.rglob("*.py"))


@cache
def parsed(path: Path) -> ast.Module:
    """The syntax tree of a module, parsed once."""
    return ast.parse(path.read_text(encoding="utf-8"), str(path))


def name_of(path: Path) -> str:
    """The path as seen from the top of the repository."""
    return path.relative_to(REPO).as_posix()


def imported(tree: ast.AST) -> Iterator[Offence]:
    """Each import with the full dotted name of what it brings in."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((node, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and not node.level and node.module:
            yield from ((node, f"{node.module}.{alias.name}") for alias in node.names)


def dotted(node: ast.expr) -> str:
    """`a.b.c` for a name or a chain of attributes; an unnamed start is left out."""
    if isinstance(node, ast.Attribute):
        return f"{dotted(node.value)}.{node.attr}".lstrip(".")
    return node.id if isinstance(node, ast.Name) else ""


def calls(tree: ast.AST) -> Iterator[tuple[ast.Call, str]]:
    """Each call with the dotted name of what is called."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            yield node, dotted(node.func)


def offences(paths: list[Path], rule: Callable[[ast.AST], Iterator[Offence]]) -> list[str]:
    """`file:line: what` for each place where a rule is broken."""
    return [
        f"{name_of(path)}:{getattr(node, 'lineno', 1)}: {what}"
        for path in paths
        for node, what in rule(parsed(path))
    ]
