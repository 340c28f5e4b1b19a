"""The printed working of the examples, worked out a second time."""

from pathlib import Path

import pytest

from quotegen.publish.terminal.working import working_text
from quotegen.trade.rules import load_rules
from tests.pricing import shop
from tests.pricing.calculator import agrees

(ORCHARD,) = (path for path in shop.JOBS if "orchard" in path.name)


@pytest.mark.parametrize("job_file", shop.JOBS + shop.ALL_IN, ids=lambda path: path.stem)
def test_every_example_comes_out_the_same(job_file: Path):
    """Each figure of each example is right by its own printed numbers, to the cent."""
    assert len(agrees(shop.example_results(job_file)).results) > 20


def test_each_figure_names_its_place():
    """A rate is printed with its line in the rate book, a quantity with its line in the job."""
    text = working_text(shop.example_results(ORCHARD))
    book = (ORCHARD.parent.parent / "rate-book.yaml").read_text(encoding="utf-8").splitlines()
    line = next(one for one in text.splitlines() if "rate `curing`" in one)
    place = int(line.rpartition("rate-book.yaml:")[2].split(":")[0])
    assert book[place - 1].strip() == "rate: $0.25 / sq ft"


def test_each_rule_that_is_named_is_a_rule():
    """The rules beside the figures are rules of the trade's book."""
    text = working_text(shop.example_results(ORCHARD))
    named = {word for line in text.splitlines() if " = " in line
             for word in line.rpartition("(")[2].rstrip(")").split("; ")[1:]}  # fmt: skip
    assert named == {"line_rounding", "payment_rounding"}
    assert named <= load_rules().rules.keys()
