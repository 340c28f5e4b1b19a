"""Outdoor steps."""

from datetime import date
from fractions import Fraction

from quotegen.trade import steps
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_steps_must_be_alike() -> None:
    """3/8 in between tallest and lowest passes, and 7/16 in does not."""
    assert steps.risers_even([Fraction(7), Fraction("7.375")], RULES, ON)
    assert not steps.risers_even([Fraction(7), Fraction("7.4375")], RULES, ON)
