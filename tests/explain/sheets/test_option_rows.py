"""What each option moves the price by."""

from quotegen.explain.sheets.views import CustomerView


def test_options_have_their_prices_with_tax(winter_view: CustomerView):
    """What an option moves is the difference of two totals, and so holds its tax."""
    (extra,) = winter_view.finishes.extras
    assert (extra.amount, extra.text.endswith(", and the tax on it")) == ("+$108.88", True)
    (alternate,) = winter_view.finishes.alternates
    assert alternate.name == "Patio: Fancy"
    (color,) = winter_view.finishes.colors
    assert color.text == "With Plain: color mixed into the concrete."
    assert color.amount == "+$217.75"
