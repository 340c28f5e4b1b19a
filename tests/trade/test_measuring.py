"""The accuracy of readings, and the range that follows from it."""

from datetime import date
from fractions import Fraction

from quotegen.trade import measuring
from quotegen.trade.measuring import paced_factors
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 25)


def test_accuracy_is_in_feet():
    """The table is in inches, geometry in feet."""
    found = measuring.tape_accuracy_ft(RULES, ON)
    table = RULES.table("tape_accuracy", ON)
    assert {method: feet * 12 for method, feet in found.items()} == {
        method: Fraction(inches) for method, inches in table.items()
    }


def test_two_sides_of_a_deviation():
    """The range reaches 1.96 deviations to each side (normal distribution, 95 %)."""
    assert measuring.half_range(Fraction(10), RULES, ON) == Fraction("19.6")


def test_a_paced_side_may_be_too_short_or_too_long():
    """The factors lie evenly around the side as paced."""
    short, long = paced_factors(load_rules(), date(2026, 11, 25))
    assert (short, long) == (Fraction(95, 100), Fraction(105, 100))
