"""Fall of slabs beyond the published cases."""

from datetime import date
from fractions import Fraction

from quotegen.trade import slopes
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_just_two_per_cent_is_enough() -> None:
    """0.24 in per ft is 2 % exactly and passes; the least bit under fails."""
    assert slopes.drains_from_house(Fraction("0.24"), RULES, ON)
    assert not slopes.drains_from_house(Fraction("0.2399"), RULES, ON)
