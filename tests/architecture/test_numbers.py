"""Numbers have one door each: money and quantities in code, facts in dated data."""

import ast
from collections.abc import Iterator

from jinja2 import Environment, nodes

from tests.architecture.tree import PACKAGE, REPO, Offence, calls, modules, name_of
from tests.architecture.tree import offences as found

DOORS = {PACKAGE / "money.py", PACKAGE / "quantity.py"}
ARITHMETIC = (
    nodes.Add, nodes.Sub, nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow, nodes.Neg,
)  # fmt: skip
COMPUTING_FILTERS = {"abs", "float", "int", "max", "min", "round", "sum"}


def test_rounding_and_conversion_have_one_door():
    """Floats become decimals, and money becomes cents, in money.py and quantity.py alone."""
    elsewhere = [path for path in modules() if path not in DOORS]
    assert found(elsewhere, _converting) == []


def test_no_rule_number_is_typed_into_python():
    """A number of the trade stands in its dated data with its source, never in the code."""
    assert found(modules("trade"), _numbers) == []


def test_no_template_or_page_does_arithmetic():
    """A template shows what the core worked out: no operator and no computing filter in it."""
    templates = sorted((REPO / "themes").rglob("*.j2"))
    pages = sorted(path for path in (REPO / "content").rglob("*") if path.is_file())
    assert templates, "no template in themes/"
    assert pages, "no page in content/"
    broken = []
    for path in templates + pages:
        text = path.read_text(encoding="utf-8")
        if path in templates or "{{" in text or "{%" in text:
            broken += [f"{name_of(path)}:{line}: {what}" for line, what in _template_sums(text)]
    assert broken == []


def _converting(tree: ast.AST) -> Iterator[Offence]:
    for call, name in calls(tree):
        parts = name.split(".")
        if parts[-1] == "quantize" or name in {"float", "round"} or "Decimal" in parts:
            yield call, f"calls {name}"


def _numbers(tree: ast.AST) -> Iterator[Offence]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant):
            number = type(node.value) in {int, float, complex}
            if number and (isinstance(node.value, float) or node.value not in {0, 1, 2}):
                yield node, f"has the number {node.value!r}"


def _template_sums(text: str) -> Iterator[tuple[int, str]]:
    tree = Environment(extensions=["jinja2.ext.do", "jinja2.ext.loopcontrols"]).parse(text)
    for operation in tree.find_all(ARITHMETIC):
        yield operation.lineno, f"computes with {type(operation).__name__}"
    for step in tree.find_all(nodes.Filter):
        if step.name in COMPUTING_FILTERS:
            yield step.lineno, f"computes with the filter {step.name}"
