"""The small-job minimum: a job under it is topped up by a line of its own."""

from decimal import Decimal

import pytest

from tests.pricing import shop
from tests.world import EXAMPLES


@pytest.mark.parametrize(
    ("minimum", "top_up"),
    [
        ("$199.99", None),
        ("$200.00", None),  # just reached
        ("$200.01", "0.01"),
        ("$3,200", "3000.00"),
    ],
)
def test_at_and_either_side(tmp_path, minimum: str, top_up: str | None):
    """200 sq ft at a dollar: the minimum bites from the first cent above $200."""
    priced = shop.quote(tmp_path, shop.job(), rate_book=shop.book(minimum=minimum))
    line = shop.by_id(priced.chosen).get("minimum")
    assert (line and str(line.amount)) == top_up
    if line is not None:
        assert line.scope == ("minimum",)
        assert priced.chosen.lines[-1] is line
        assert priced.chosen.total == Decimal(minimum.strip("$").replace(",", ""))


def test_tax_comes_on_top_of_the_minimum(tmp_path):
    """The minimum is a price before tax: $200 of work is topped up to $500, and 10 % is $50."""
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    tax = {"id": "s", "name": "Tax", "rate": "10 %", "round": "whole invoice"}
    company += shop.as_yaml({"tax": [{**tax, "covers": ["everything"]}]})
    priced = shop.quote(tmp_path, shop.job(), rate_book=shop.book(minimum="$500"), company=company)
    assert shop.amounts(priced.chosen) == {
        "plain.patio": "200.00", "minimum": "300.00", "tax.s": "50.00"}  # fmt: skip
    assert str(priced.chosen.total) == "550.00"


def test_its_working(tmp_path):
    """The working of the top-up is the smallest job less all other lines."""
    priced = shop.quote(tmp_path, shop.job(), rate_book=shop.book(minimum="$350"))
    smallest, so_far = shop.by_id(priced.chosen)["minimum"].working.inputs
    assert smallest.value - so_far.value == Decimal("150.00")


def test_each_finish_has_its_own(tmp_path):
    """At $450 the plain finish is topped up; the fancy one costs more than that."""
    finishes = {"plain": shop.PLAIN, "fancy": shop.FANCY}
    priced = shop.quote(
        tmp_path,
        shop.job(compare=["fancy"]),
        rate_book=shop.book(shop.RINSE_AND_FILM, finishes, minimum="$450"),
    )
    assert [str(finish.total) for finish in priced.finishes] == ["450.00", "460.00"]


def test_no_minimum_no_line(tmp_path):
    """A book without a minimum tops up nothing."""
    assert set(shop.by_id(shop.quote(tmp_path, shop.job(), rate_book=shop.book()).chosen)) == {
        "plain.patio"}  # fmt: skip
