"""The trade's rules and functions: each one reaches a quote, or it goes."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
import yaml

from quotegen.trade.rules import load_rules
from tests.architecture.tree import PACKAGE, REPO, calls, dotted, imported, modules, name_of, parsed

TRADE = PACKAGE / "trade"
PLACEHOLDER = re.compile(r"\{\{ rule\.(\w+) \}\}")


def _public(tree: ast.Module) -> Iterator[ast.FunctionDef]:
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield node


def _names(tree: ast.AST) -> set[str]:
    """Every name that is read in a piece of code, also behind a dot."""
    read = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    return read | {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)}


@cache
def _used_by(path: Path) -> tuple[frozenset[str], frozenset[str]]:
    """What a module imports, and every `a.b` in it."""
    tree = parsed(path)
    chains = {dotted(node) for node in ast.walk(tree) if isinstance(node, ast.Attribute)}
    return frozenset(name for _, name in imported(tree)), frozenset(chains)


def _asked_for(module: str) -> set[str]:
    """The names of a module of trade/ that other modules use."""
    place, used = f"quotegen.trade.{module}", set()
    for path in modules():
        if path == TRADE / f"{module}.py":
            continue
        names, chains = _used_by(path)
        used |= {name.removeprefix(f"{place}.") for name in names if name.startswith(place)}
        if place in names:
            used |= {chain.removeprefix(f"{module}.") for chain in chains}
    return used


@pytest.mark.parametrize("module", [path.stem for path in modules("trade")])
def test_a_quote_uses_every_function_of_the_trade(module: str):
    """A public function of trade/ is called from another module, or by a function that is."""
    tree = parsed(TRADE / f"{module}.py")
    bodies = {node.name: _names(node) for node in tree.body if isinstance(node, ast.FunctionDef)}
    elsewhere = [node for node in tree.body if not isinstance(node, ast.FunctionDef)]
    reached = _asked_for(module) | set().union(*map(_names, elsewhere))
    grows = True
    while grows:
        more = set().union(*(names for name, names in bodies.items() if name in reached))
        grows = not more <= reached
        reached |= more
    assert [node.name for node in _public(tree) if node.name not in reached] == []


def _named_in_content() -> set[str]:
    named: set[str] = set()
    for page in (REPO / "content" / "en").rglob("*.md"):
        _, front, body = page.read_text(encoding="utf-8").split("---\n", 2)
        named |= set(yaml.load(front, Loader=yaml.BaseLoader).get("rules", ()))
        named |= set(PLACEHOLDER.findall(body))
    return named


def _named_in_code() -> set[str]:
    return {
        node.value
        for path in modules()
        for node in ast.walk(parsed(path))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }


def _named_in_law() -> set[str]:
    folder = REPO / "quotegen" / "trade" / "law"
    return {word for file in folder.glob("*.yaml") for word in file.read_text("utf-8").split()}


def test_a_quote_uses_every_rule():
    """Each rule of trade/data is named in the code, in a law or on a page of content/."""
    named = _named_in_code() | _named_in_law() | _named_in_content()
    assert sorted(set(load_rules().rules) - named) == []


def test_code_looks_up_rules_that_exist():
    """Each rule that the program asks for by name is in trade/data."""
    asked = {"number", "exact", "range", "table", "step", "steps", "text", "rule"}
    known, unknown = load_rules().rules, []
    for path in modules():
        for call, name in calls(parsed(path)):
            owner, _, method = name.rpartition(".")
            if method not in asked or owner.rpartition(".")[2] not in {"rules", "_rules"}:
                continue
            first = call.args[0] if call.args else None
            if isinstance(first, ast.Constant) and first.value not in known:
                unknown.append(f"{name_of(path)}:{call.lineno}: {first.value!r}")
    assert unknown == []
