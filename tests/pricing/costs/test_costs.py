"""Costs: the same lines at the company's cost, for the owner alone."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from quotegen.money import ZERO
from quotegen.pricing.costs.records import FinishCosts
from tests.pricing import shop
from tests.pricing.costed import ORDER, RATES, owner

COSTED = {**shop.PLAIN, "cost": "$0.60 / sq ft"}


def _costs(folder: Path, rates: shop.Typed, job: str | None = None, **more) -> FinishCosts:
    made = shop.figured(folder, job or shop.job(), rate_book=shop.book(
        rates, {"plain": COSTED}, **more))  # fmt: skip
    assert made.owner is not None
    (costs,) = made.owner.finishes
    return costs


def test_price_less_cost_is_the_margin(tmp_path):
    """200 sq ft: finish 200 - 120, base 350 - 236, lump 100 - 80."""
    costs = _costs(tmp_path, {
        "base": shop.rate("$1.75 / sq ft", cost="$1.18 / sq ft"),
        "lump": shop.rate("$100 lump", cost="$80 lump")})  # fmt: skip
    assert {line.line: (str(line.cost), str(line.margin)) for line in costs.lines} == {
        "base.patio": ("236.00", "114.00"),
        "lump": ("80.00", "20.00"),
        "plain.patio": ("120.00", "80.00"),
    }
    assert (str(costs.price), str(costs.cost), str(costs.margin)) == ("650.00", "436.00", "214.00")
    assert costs.margin_share == Fraction(214, 650)
    assert costs.without_cost == ()


def test_a_line_without_a_cost_is_named(tmp_path):
    """What the book has no cost for is named, and is not taken to be free."""
    costs = _costs(tmp_path, {"base": shop.rate("$1.75 / sq ft")})
    assert costs.without_cost == ("Item at $1.75 / sq ft, Patio",)
    (line,) = (line for line in costs.lines if line.line == "base.patio")
    assert (line.cost, line.margin) == (None, None)


def test_the_minimum_costs_nothing(tmp_path):
    """The top-up to the smallest job has no work behind it: all margin, and no gap in the book."""
    costs = _costs(tmp_path, {}, minimum="$500")
    (line,) = (line for line in costs.lines if line.line == "minimum")
    assert (line.cost, line.margin) == (ZERO, Decimal("300.00"))
    assert costs.without_cost == ()


def test_the_cost_is_that_of_the_thickness(tmp_path):
    """A thicker slab is costed at its own step."""
    steps = {"slab": {"name": "Slab", "covers": ["slab"], "by_thickness": [
        {"thickness": "4 in", "rate": "$4 / sq ft", "cost": "$3 / sq ft"},
        {"thickness": "6 in", "rate": "$6 / sq ft", "cost": "$5 / sq ft"}]}}  # fmt: skip
    for thickness, cost in (("5 in", "600.00"), ("6 in", "1000.00")):
        made = _costs(
            tmp_path, steps, shop.job(shop.placement("20 ft x 10 ft", thickness=thickness))
        )
        (line,) = (line for line in made.lines if line.line == "slab.patio")
        assert str(line.cost) == cost


def test_a_metric_cost_is_converted_like_the_price(tmp_path):
    """1.18 a sq ft is 12.70 a m2 to the cent, times 18.58 m2."""
    rates = {"base": shop.rate("$1.75 / sq ft", cost="$1.18 / sq ft")}
    costs = _costs(tmp_path, rates, shop.job(units="metric"))
    (line,) = (line for line in costs.lines if line.line == "base.patio")
    assert str(line.cost) == "235.97"


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_costs_of_the_examples(job_file: Path):
    """Every finish has its costs; lines, price, cost and margin agree with the quote."""
    made = shop.example(job_file)
    quote = shop.example_results(job_file).quote
    assert made.owner is not None
    assert [costs.finish for costs in made.owner.finishes] == [
        finish.id for finish in quote.finishes
    ]
    for costs, finish in zip(made.owner.finishes, quote.finishes, strict=True):
        assert costs.price == finish.total
        assert costs.cost == sum((item.amount for item in costs.items), ZERO)
        on_lines = sum((item.amount for item in costs.items if item.lines), ZERO)
        assert on_lines == sum((ln.cost for ln in costs.lines if ln.cost is not None), ZERO)
        assert costs.margin == costs.price - costs.cost
        assert [line.line for line in costs.lines] == [line.id for line in finish.lines]
        assert costs.without_cost == () or not costs.is_known


def test_a_line_bears_what_is_for_it_alone(tmp_path):
    """Base: 4 h and two days of the plate; slab: concrete, truck and short load."""
    costs = {line.line: line.cost for line in owner(tmp_path).chosen.lines}
    assert costs == {
        "base.patio": Decimal("170.00"), "slab.patio": Decimal("425.00"), "plain.patio": None,
    }  # fmt: skip


def test_what_is_not_known_is_said(tmp_path):
    """The finish has no cost, stone and compound no price; a book without costs says that first."""
    missing = [(m.kind.value, m.name) for m in owner(tmp_path).chosen.missing]
    assert missing == [("line", "Plain, Patio"), ("material", "base_tons"),
                       ("material", "curing")]  # fmt: skip


def test_a_book_without_costs_still_prices(tmp_path):
    """No costs at all: the price stands, and the sheet says that nothing is known."""
    made = shop.figured(tmp_path, shop.job(), rate_book=shop.book(RATES, order=ORDER))
    assert made.owner is not None
    costs = made.owner.chosen
    assert (str(costs.price), str(costs.cost)) == ("6200.00", "0.00")
    assert [m.kind.value for m in costs.missing] == ["costs", "line", "line", "line"]
    assert costs.floors == ()


def test_concrete_is_shared_by_the_prices_of_its_lines(tmp_path):
    """One order for two slabs: each line bears its part, and the parts add up."""
    job = shop.job(shop.placement("30 ft x 10 ft", "a"),
                   shop.placement("10 ft x 10 ft", "b", at="40 ft"))  # fmt: skip
    costs = {line.line: line.cost for line in owner(tmp_path, job).chosen.lines}
    whole = sum((item.amount for item in owner(tmp_path, job).chosen.items
                 if "slab.a" in item.lines), ZERO)  # fmt: skip
    a, b = costs["slab.a"], costs["slab.b"]
    assert a is not None
    assert b is not None
    assert a + b == whole
    assert abs(a - 3 * b) <= Decimal("0.05")


BASE = {"base": shop.rate("$1.75 / sq ft", cost="$1.18 / sq ft")}  # 350, 236 of it cost


class TestSharesAndDiscounts:
    """What follows from other lines, against cost."""

    def test_a_share_costs_its_part_of_the_same_lines(self, tmp_path):
        """3 % for cards are 16.50 of 550; a bank that takes 2.9 % of the 550 takes 15.95."""
        card = shop.share("3 %", "everything", cost_share="2.9 %")
        costs = _costs(tmp_path, {**BASE, "card": card})
        (line,) = (line for line in costs.lines if line.line == "card")
        assert (str(line.price), str(line.cost)) == ("16.50", "15.95")
        assert costs.without_cost == ()

    def test_a_share_without_a_cost_is_named(self, tmp_path):
        """Nobody is told that it costs nothing; 0 % says so."""
        costs = _costs(tmp_path, {**BASE, "card": shop.share("3 %", "everything")})
        assert costs.without_cost == ("Fuel",)
        free = shop.share("3 %", "everything", cost_share="0 %")
        assert _costs(tmp_path, {**BASE, "card": free}).without_cost == ()

    def test_a_discount_and_a_rounding_are_all_margin(self, tmp_path):
        """550 less 40 cost 356 as before: 154 are left, and nothing is missing in the book."""
        job = shop.job(discount={"name": "Neighbors", "amount": "$40"})
        made = shop.figured(tmp_path, job, rate_book=shop.book(BASE, {"plain": COSTED}),
                            company=shop.company(round_total_to="$50"))  # fmt: skip
        assert made.owner is not None
        (costs,) = made.owner.finishes  # 510 is rounded to 500
        assert (str(costs.price), str(costs.cost), str(costs.margin)) == (
            "500.00", "356.00", "144.00")  # fmt: skip
        assert costs.without_cost == ()
