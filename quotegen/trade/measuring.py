"""How close a measured area comes to the true one, and how rough a ballpark is."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import INCHES_PER_FOOT
from quotegen.trade.book import PER_CENT, RuleBook


def tape_accuracy_ft(rules: RuleBook, on: date) -> Mapping[str, Fraction]:
    """Return the accuracy of one reading in feet for each method of measuring (common practice).

    One standard deviation. A job may give its own instead.
    """
    table: Mapping[str, Decimal] = rules.table("tape_accuracy", on)
    return {method: Fraction(inches) / INCHES_PER_FOOT for method, inches in table.items()}


def angle_accuracy_deg(rules: RuleBook, on: date) -> Fraction:
    """Return the accuracy of one reading of an angle, in degrees (common practice)."""
    return rules.exact("angle_accuracy", on)


def half_range(deviation: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return how far from the stated figure the true one may lie, 95 times in 100.

    Deviation times the coverage factor of the normal distribution (JCGM 100:2008, Table G.1).
    Does not hold where one doubtful reading far outweighs all others.
    """
    return deviation * rules.exact("area_coverage_factor", on)


def paced_factors(rules: RuleBook, on: date) -> tuple[Fraction, Fraction]:
    """Return the factors from a paced side to the shortest and longest it may be: 0.95 and 1.05.

    Common practice, for sides paced on open, fairly level ground.
    """
    spread = rules.exact("paced_side_spread", on) * PER_CENT
    return 1 - spread, 1 + spread


def rough_step(rules: RuleBook, on: date) -> Decimal:
    """Return the dollars that a ballpark price is rounded out to, such as 100. Common practice."""
    return rules.number("rough_price_step", on)
