"""No two modules need each other, so that each can be read and moved by itself."""

import ast
from collections.abc import Mapping
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

from tests.architecture.tree import PACKAGE, imported, modules, parsed

Graph = Mapping[str, frozenset[str]]


def test_no_import_goes_in_a_circle():
    """Following imports never leads back, those for type checking and inside functions included."""
    graph = _graph()
    assert len(graph) > 200
    assert _circle(graph) == []


def test_the_search_for_circles_can_fail():
    """A circle of three modules is found; two modules that import the same third are no circle."""
    assert _circle({"a": frozenset("bc"), "b": frozenset("c"), "c": frozenset()}) == []
    circle = _circle({"a": frozenset("b"), "b": frozenset("c"), "c": frozenset("a")})
    assert set(circle) == set("abc")


def test_every_way_of_importing_is_seen():
    """A name of a module, a module of a room, an import for types, an import in a function."""
    source = """
import quotegen.money
from quotegen.problem import Problem
from quotegen import pipeline
if TYPE_CHECKING:
    from quotegen.takeoff.records import Takeoff
def late():
    from quotegen.publish.package import package
"""
    known = ("money", "problem", "pipeline", "takeoff.records", "publish.package")
    names = frozenset(f"quotegen.{name}" for name in known)
    assert _imports(ast.parse(source), names) == names


def _graph() -> Graph:
    paths = {_module(path): path for path in modules()}
    names = frozenset(paths)
    return {name: _imports(parsed(path), names) - {name} for name, path in paths.items()}


def _imports(tree: ast.AST, known: frozenset[str]) -> frozenset[str]:
    """The modules that a tree names; `from a.b import c` names a.b.c where that is a module."""
    found = set()
    for _, name in imported(tree):
        module = name if name in known else name.rpartition(".")[0]
        if module in known:
            found.add(module)
    return frozenset(found)


def _circle(graph: Graph) -> list[str]:
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        circle: list[str] = error.args[1]
        return circle
    return []


def _module(path: Path) -> str:
    name = ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts)
    return name.removesuffix(".__init__")
