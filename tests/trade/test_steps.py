"""Outdoor steps."""

from datetime import date
from fractions import Fraction

from quotegen.trade import steps
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_steps_for_a_height() -> None:
    """15-1/2 in is two steps of the greatest height, and a sixteenth more makes three."""
    assert steps.risers_needed(Fraction("15.5"), RULES, ON) == 2
    assert steps.risers_needed(Fraction("15.5625"), RULES, ON) == 3


def test_steps_must_be_alike() -> None:
    """3/8 in between tallest and lowest passes, and 7/16 in does not."""
    assert steps.risers_even([Fraction(7), Fraction("7.375")], RULES, ON)
    assert not steps.risers_even([Fraction(7), Fraction("7.4375")], RULES, ON)
