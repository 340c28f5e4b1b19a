"""Finds in the source the code of every problem that quotegen can report."""

import ast
import re
from collections.abc import Iterator
from functools import cache

from tests.architecture.tree import calls, modules, name_of, parsed

MAKERS = (
    "Problem", "Fault", "PydanticCustomError", "fault", "warning", "_fault", "_error", "_problem",
    "_refused",
)  # fmt: skip
CODE = re.compile(r"[a-z]+(-[a-z0-9]+)*")


@cache
def codes() -> dict[str, str]:
    """Each code with a module that reports it."""
    found: dict[str, str] = {}
    for path in modules():
        for code in _codes_in(parsed(path)):
            found.setdefault(code, name_of(path))
    return found


def _codes_in(tree: ast.AST) -> Iterator[str]:
    for call, name in calls(tree):
        if name.split(".")[-1] in MAKERS:
            given = [word.value for word in call.keywords if word.arg == "code"]
            yield from _words(*given) if given else _first_word(call)
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign):
            yield from _assigned(node)
        if isinstance(node, ast.FunctionDef) and node.name.endswith("_fault"):
            yield from _returned(node)


def _first_word(call: ast.Call) -> Iterator[str]:
    """The code among the arguments: the first text that is a plain word."""
    texts = [text for text in _words(*call.args) if CODE.fullmatch(text)]
    yield from texts[:1]


def _assigned(node: ast.Assign) -> Iterator[str]:
    """What `code = ...` or `code, message = ..., ...` puts into `code`."""
    for target in node.targets:
        if isinstance(target, ast.Name) and target.id == "code":
            yield from _words(node.value)
        if isinstance(target, ast.Tuple) and isinstance(node.value, ast.Tuple):
            for name, value in zip(target.elts, node.value.elts, strict=True):
                if isinstance(name, ast.Name) and name.id == "code":
                    yield from _words(value)


def _returned(function: ast.FunctionDef) -> Iterator[str]:
    """The first of several texts that a `..._fault` returns together."""
    for node in ast.walk(function):
        if isinstance(node, ast.Return) and isinstance(node.value, ast.Tuple):
            yield from _words(node.value.elts[0])


def _words(*nodes: ast.expr) -> Iterator[str]:
    for node in nodes:
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value
        elif isinstance(node, ast.IfExp):
            yield from _words(node.body, node.orelse)
