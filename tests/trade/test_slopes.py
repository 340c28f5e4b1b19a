"""Fall of slabs beyond the published cases."""

from datetime import date
from fractions import Fraction

from quotegen.trade import slopes
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_the_usual_fall_is_enough_beside_a_shared() -> None:
    """Our own usual slope satisfies the rule beside a building."""
    assert slopes.drains_from_house(slopes.usual_slope_in_per_ft(RULES, ON), RULES, ON)


def test_just_two_per_cent_is_enough() -> None:
    """0.24 in per ft is 2 % exactly and passes; the least bit under fails."""
    assert slopes.drains_from_house(Fraction("0.24"), RULES, ON)
    assert not slopes.drains_from_house(Fraction("0.2399"), RULES, ON)


def test_fall_grows_with_the_run() -> None:
    """A slab of 12 ft at 1/4 in per ft falls 3 in."""
    assert slopes.fall_in(Fraction(12), Fraction(1, 4)) == Fraction(3)
