"""Sheet 6: what its lines say beside their figures, the tax among them, and the price in parts."""

from collections.abc import Iterator

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
    assert "before tax for each square foot" in winter_view.price.sentence
    assert "Tax is worked out on the sum and rounded once" in winter_view.change.rounding
    assert all("tax" not in row.name.lower() for row in _rows(winter_view))


def test_subtotals_are_prices_of_parts(winter_view: CustomerView):
    """A line of two scope items stands under the first, with the other named."""
    assert [row.name for row in winter_view.change.by_placement] == ["Patio", "For the whole job"]
    assert ("Placing", "with finish", "$175.00") in [
        (row.name, row.text, row.amount) for row in winter_view.change.by_scope
    ]
    assert winter_view.change.by_scope[-1].amount == "$49.43"
