"""What the customer's view says of taxes, seasons, slices, allowances, options and subtotals."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.views import CustomerView, PricedRow
from tests.pricing import shop
from tests.world import EXAMPLES

RATES = {
    **shop.RINSE_AND_FILM,
    "cold": shop.rate("$100 lump", "curing", season={"first": "11-15", "last": "03-15"}),
    "far": shop.rate("$2 / mile", "travel", travel={"free": "10 miles", "both_ways": "yes"}),
    "hand": {"name": "Hand work", "covers": ["placing", "finish"], "by_slice": [
        {"to": "150 sq ft", "rate": "$1.00 / sq ft"},
        {"from": "150 sq ft", "rate": "$0.50 / sq ft"}]},
    "lawn": shop.rate("$50 lump", "protection", basis="allowance",
                      exceeded={"rule": "capped"}),
    "drain": shop.rate("$10 / ft", "drain", applies="asked"),
    "sand": shop.rate("$1 / sq ft", "finish", applies="with color", color="integral"),
}  # fmt: skip
FINISHES = {"plain": {**shop.PLAIN, "colors": ["sand"]}, "fancy": shop.FANCY}
CAPPED = (
    "If it costs more, we pay the difference; if it costs less, you pay less. "
    "We show you the bills."
)
TAX = {"id": "sales", "name": "Sales tax", "rate": "8.875 %", "covers": ["everything"],
       "round": "whole invoice"}  # fmt: skip


@pytest.fixture
def view(tmp_path: Path) -> CustomerView:
    """The view of a winter job with a tax and every kind of option."""
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    site = {"address": "1 Test Lane", "town": "Harrow Bend", "distance": "14 miles"}
    job = shop.job(shop.placement("20 ft x 10 ft", alternates=["fancy"]), start="2026-12-01",
                   site=site, extras={"drain": "10 ft"}, colors=[{"base": "sand"}])  # fmt: skip
    return customer_view(
        shop.results(tmp_path, job, company=company + shop.as_yaml({"tax": [TAX]}),
                     rate_book=shop.book(RATES, FINISHES))
    )  # fmt: skip


def _rows(view: CustomerView) -> Iterator[PricedRow]:
    yield from (*view.change.measured, *view.change.fixed, *view.change.allowances)


def test_each_line_says_what_its_figures_do_not(view: CustomerView):
    """Season, slices, the free miles and what becomes of an allowance stand beside the lines."""
    notes = {row.note for row in _rows(view)} - {""}
    assert notes == {
        "Applies to work that begins from November 15 to March 15.",
        "To your site and back, on each visit. The first 10 miles are free.",
        "The first 150.0 sq ft.",
        "The part above 150.0 sq ft.",
        CAPPED,
    }


def test_the_tax_is_a_line_and_is_said(view: CustomerView):
    """The lines are 557 and the tax 8.875 % of it; sheet 1 says that it is in the price."""
    (tax,) = view.change.taxes
    # 200 plain, 100 cold, 2 x 4 x 2 miles x $2, 150 + 25 hand work, 50 lawn
    assert tax.note == "8.875% of $557.00, rounded once on the sum."
    assert (tax.amount, view.change.total) == ("$49.43", "$606.43")
    assert "Sales tax of $49.43 is in the price." in view.price.sentence
    assert "before tax for each square foot" in view.price.sentence
    assert "Tax is worked out on the sum and rounded once" in view.change.rounding
    assert all("tax" not in row.name.lower() for row in _rows(view))


def test_options_have_their_prices_with_tax(view: CustomerView):
    """What an option moves is the difference of two totals, and so holds its tax."""
    (extra,) = view.extras
    assert (extra.amount, extra.text.endswith(", and the tax on it")) == ("+$108.88", True)
    (alternate,) = view.alternates
    assert alternate.name == "Patio: Fancy"
    (color,) = view.colors
    assert color.text == "On Plain: color mixed into the concrete."
    assert color.amount == "+$217.75"


def test_subtotals_are_prices_of_parts(view: CustomerView):
    """A line of two scope items stands under the first, with the other named."""
    assert [row.name for row in view.change.by_placement] == ["Patio", "For the whole job"]
    assert ("Placing", "with finish", "$175.00") in [
        (row.name, row.text, row.amount) for row in view.change.by_scope
    ]
    assert view.change.by_scope[-1].amount == "$49.43"
