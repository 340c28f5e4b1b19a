"""How rough a ballpark price is."""

from datetime import date
from fractions import Fraction

from quotegen.trade.pacing import paced_factors
from quotegen.trade.rules import load_rules


def test_a_paced_side_may_be_too_short_or_too_long():
    """The factors lie evenly around the side as paced."""
    short, long = paced_factors(load_rules(), date(2026, 11, 25))
    assert (short, long) == (Fraction(95, 100), Fraction(105, 100))
