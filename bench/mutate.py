"""Mutation testing of the arithmetic: change one small thing, and see whether a test notices.

Run it with `./run mutate`, or `./run mutate quotegen/pricing/quoted/tax.py --sample 0`. It prints
the share of the changes that was caught, and lists the rest. DEVELOPERS.md says why
this is a program of our own. A change is one that a number or a decision depends on.
"""

import argparse
import ast
import importlib
import os
import random
import signal
import sys
import tempfile
import tomllib
from importlib.machinery import SourceFileLoader
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from unittest.mock import patch

import pytest

REPO = Path(__file__).resolve().parent.parent
LIBRARIES = ("babel.dates", "holidays", "jinja2", "pydantic", "shapely", "yaml")
_PAIRS: tuple[tuple[type[Any], type[Any]], ...] = (
    (ast.Add, ast.Sub), (ast.Mult, ast.Div), (ast.Lt, ast.LtE), (ast.Gt, ast.GtE),
    (ast.Eq, ast.NotEq), (ast.Is, ast.IsNot), (ast.In, ast.NotIn), (ast.And, ast.Or),
)  # fmt: skip
OPERATORS = {**dict(_PAIRS), **{other: one for one, other in _PAIRS}}
CALLS = {"min": "max", "max": "min", "any": "all", "all": "any", "ceil": "int"}
LEFT_ALONE = {
    "code", "formula", "frozen", "hint", "kw_only", "message", "name", "path", "rules", "slots",
    "title", "unit",
}  # fmt: skip
LIMIT_S = 300
NO_NUMBERS = (ast.JoinedStr, ast.Tuple, ast.List)


class Changes(ast.NodeTransformer):
    """Numbers every change below a node, and makes one of them; texts are left alone."""

    def __init__(self, wanted: int = -1) -> None:
        self.wanted = wanted
        self.seen: list[tuple[int, str, str]] = []

    def visit(self, node: ast.AST) -> Any:
        """Pass a node on, changed if it is the wanted one."""
        if isinstance(node, ast.JoinedStr) or getattr(node, "arg", None) in LEFT_ALONE:
            return node
        if new := _changed(node):
            self.seen.append((getattr(node, "lineno", 0), ast.unparse(node), ast.unparse(new)))
            node = ast.copy_location(new, node) if len(self.seen) - 1 == self.wanted else node
        return self.generic_visit(node)


def _changed(node: ast.AST) -> ast.AST | None:
    match node:
        case ast.BinOp(left=left, op=op, right=right) if type(op) in OPERATORS:
            text = isinstance(left, NO_NUMBERS) or isinstance(right, NO_NUMBERS)
            return None if text else ast.BinOp(left, OPERATORS[type(op)](), right)
        case ast.Compare(left=left, ops=[op], comparators=others) if type(op) in OPERATORS:
            return ast.Compare(left, [OPERATORS[type(op)]()], others)
        case ast.BoolOp(op=op, values=values):
            return ast.BoolOp(OPERATORS[type(op)](), values)
        case ast.UnaryOp(op=ast.Not() | ast.USub(), operand=operand):
            return operand
        case ast.Constant(value=int(value)):
            return ast.Constant(not value if isinstance(value, bool) else value + 1)
        case ast.Call(func=ast.Name(id=name), args=args, keywords=keywords) if name in CALLS:
            return ast.Call(ast.Name(CALLS[name], ast.Load()), args, keywords)
        case ast.IfExp(test=test, body=body, orelse=other):
            return ast.IfExp(test, other, body)
    return None


def tests_of(module: Path) -> list[str]:
    """Return the tests that answer for a module: its own, then those that pyproject.toml names."""
    settings = tomllib.loads((REPO / "pyproject.toml").read_text(encoding="utf-8"))
    beside, inside = settings["tool"]["mutate"]["beside"], module.relative_to("quotegen")
    own = Path("tests") / inside.with_name(f"test_{inside.name}")
    more = [test for place in (inside, *inside.parents) for test in beside.get(str(place), ())]
    return [test for test in dict.fromkeys((str(own), *more)) if (REPO / test).exists()]


def _fork(module: Path, number: int) -> int:
    """Make one change in a child process, and run the tests that answer for the module."""
    if pid := os.fork():
        return pid
    os.environ["QUOTEGEN_TEST_RUN"] = f"mutant-{os.getpid()}"  # shares no result with another run
    tree = Changes(number).visit(ast.parse((REPO / module).read_text(encoding="utf-8")))
    code = compile(ast.fix_missing_locations(tree), str(REPO / module), "exec")
    usual, name = SourceFileLoader.get_code, ".".join(module.with_suffix("").parts)
    patch.object(
        SourceFileLoader,
        "get_code",
        lambda own, asked: code if asked == name else usual(own, asked),
    ).start()
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    os.dup2(1, 2)
    signal.alarm(LIMIT_S)
    os._exit(int(pytest.main(["-x", "-q", "-p", "no:cacheprovider", *tests_of(module)])))


def _missed(tried: list[tuple[Path, int, tuple[int, str, str]]]) -> list[str]:
    for module in dict.fromkeys(one[0] for one in tried):
        if os.waitpid(_fork(module, -1), 0)[1]:
            sys.exit(f"{module}: without any change they fail: {' '.join(tests_of(module))}")
    left, running, missed = tried[::-1], dict[int, str](), list[str]()
    while left or running:
        if left and len(running) < (os.cpu_count() or 1):
            module, number, (line, before, after) = left.pop()
            child = _fork(module, number)
            running[child] = f"{module}:{line}: {before}  ->  {after}"
        else:
            child, status = os.wait()
            missed += [] if status else [running[child]]
            print("." if status else "!", end="", flush=True)
            del running[child]
    return missed


def main() -> None:
    """Try the changes, as many at a time as there are cores, and print what nothing caught."""
    asked = argparse.ArgumentParser(prog="./run mutate")
    asked.add_argument("where", nargs="*", help="modules or folders; else pricing/ and takeoff/")
    asked.add_argument("--sample", type=int, default=60, help="how many changes; 0 for all")
    asked.add_argument("--seed", type=int, default=1, help="which sample")
    typed = asked.parse_args()
    for library in LIBRARIES:
        importlib.import_module(library)
    places = [Path(place) for place in typed.where or ("quotegen/pricing", "quotegen/takeoff")]
    every = []
    for module in sorted(f for p in places for f in (p.rglob("*.py") if p.is_dir() else [p])):
        (found := Changes()).visit(ast.parse(module.read_text(encoding="utf-8")))
        if found.seen and not tests_of(module):
            print(f"left out, since no tests answer for it: {module}")
        every += [(module, *one) for one in enumerate(found.seen) if tests_of(module)]
    chance = random.Random(typed.seed)  # noqa: S311 - a sample, not secrets
    tried = chance.sample(every, min(typed.sample or len(every), len(every)))
    with TemporaryDirectory() as tempfile.tempdir:  # for all that the tests leave behind
        missed = _missed(tried)
    print(f"\ncaught {len(tried) - len(missed)} of {len(tried)} changes; nothing caught")
    print("\n".join(sorted(missed)) or "none: all were caught")


if __name__ == "__main__":
    main()
