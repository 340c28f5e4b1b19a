"""Sheet 6: what its lines say beside their figures, the tax among them, and the price in parts."""

import re
from collections.abc import Iterator
from decimal import Decimal

from quotegen.explain.sheets.views import CustomerView, PricedRow

CAPPED = (
    "If it costs more, we pay the difference; if it costs less, you pay less. "
    "We show you the bills."
)


def _rows(view: CustomerView) -> Iterator[PricedRow]:
    yield from (*view.change.measured, *view.change.fixed, *view.change.allowances)


def test_each_line_says_what_its_figures_do_not(winter_view: CustomerView):
    """Season, slices, the free miles and what becomes of an allowance stand beside the lines."""
    notes = {row.note for row in _rows(winter_view)} - {""}
    assert notes == {
        "Applies to work that begins from November 15 to March 15.",
        "To your site and back, on each visit. The first 10 miles are free.",
        "The first 150.0 sq ft.",
        "The part above 150.0 sq ft.",
        CAPPED,
    }


def test_the_tax_is_a_line_and_is_said(winter_view: CustomerView):
    """The lines are 557 and the tax 8.875 % of it; sheet 1 says that it is in the price."""
    (tax,) = winter_view.change.taxes
    # 200 plain, 100 cold, 2 x 4 x 2 miles x $2, 150 + 25 hand work, 50 lawn
    assert tax.note == "8.875% of $557.00, rounded once on the sum."
    assert (tax.amount, winter_view.change.total) == ("$49.43", "$606.43")
    assert "Sales tax of $49.43 is in the price." in winter_view.price.sentence
    assert "for each square foot, before tax" in winter_view.price.sentence
    assert "Tax is worked out on the sum and rounded once" in winter_view.change.rounding
    assert all("tax" not in row.name.lower() for row in _rows(winter_view))


def test_subtotals_are_prices_of_parts(winter_view: CustomerView):
    """A line of two scope items stands under the first, with the other named."""
    assert [row.name for row in winter_view.change.by_placement] == ["Patio", "For the whole job"]
    assert ("Placing", "with finish", "$175.00") in [
        (row.name, row.text, row.amount) for row in winter_view.change.by_scope
    ]
    assert winter_view.change.by_scope[-1].amount == "$49.43"


def test_what_follows_other_lines_says_of_what(followed_view: CustomerView):
    """430 of base and 170 of travel bear the fuel; the discount is of 1697; the total is round."""
    notes = {row.name: (row.amount, row.note) for row in _rows(followed_view) if row.note}
    assert notes == {
        "Fuel": ("$27.00", "4.5% of the lines for travel and base; it follows them."),
        "Neighbors pour together": (
            "−$50.91", "3% of the price, taken off before tax; it follows the price.",
        ),
    }  # fmt: skip
    (rounding,) = followed_view.change.round_total
    # 1646.09 and 8.875 % of it, 146.09, are 1792.18
    assert (rounding.amount, followed_view.change.total) == ("−$2.18", "$1,790.00")
    assert rounding.note.startswith("To the nearest $10.00, up from the half.")
    assert "rounded to the nearest $10.00" in followed_view.change.rounding


def test_the_lines_of_the_sheet_add_up(followed_view: CustomerView):
    """All lines, tax and rounding included, are the total, and so are the subtotals by scope."""
    change = followed_view.change
    lines = (*_rows(followed_view), *change.taxes, *change.round_total)
    for shown in (lines, change.by_scope, change.by_placement):
        assert sum(_dollars(row.amount) for row in shown) == _dollars(change.total)
    assert [row.name for row in change.by_scope[-3:]] == ["Discount", "Tax", "Rounding"]


def _dollars(amount: str) -> Decimal:
    return Decimal(re.sub(r"[$,]", "", amount).replace("−", "-"))


def test_the_price_by_area_counts_the_share(followed_view: CustomerView):
    """7.3688475 is told as about $7.37, with the fuel in it and without the trips."""
    (row,) = followed_view.change.area_prices
    assert row.amount == "about $7.37"
    assert "pays for base, slab, finish, and fuel, and not for trip" in str(row.text)
    assert "for each square foot, before tax and rounding" in str(row.text)
