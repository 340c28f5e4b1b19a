"""How near a measured area is to the truth, and the rule of thumb for a first visit."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import INCHES_PER_FOOT
from quotegen.trade.book import RuleBook


@dataclass(frozen=True, slots=True, kw_only=True)
class RoughArea:
    """An approximate area, to talk about at a first visit and never to quote or bill by."""

    about_sqft: Fraction


def tape_accuracy_ft(rules: RuleBook, on: date) -> Mapping[str, Fraction]:
    """Return how near one reading comes, in feet, by the way of measuring (common practice).

    One standard deviation. Stops applying where a job says its own accuracy.
    """
    table: Mapping[str, Decimal] = rules.table("tape_accuracy", on)
    return {way: Fraction(inches) / INCHES_PER_FOOT for way, inches in table.items()}


def angle_accuracy_deg(rules: RuleBook, on: date) -> Fraction:
    """Return how near one reading of an angle comes, in degrees (common practice)."""
    return rules.exact("angle_accuracy", on)


def half_range(deviation: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return how far to each side of a figure the truth lies, 95 times in 100.

    Deviation times the coverage factor of the normal distribution (JCGM 100:2008, Table G.1).
    Stops applying where one doubtful reading outweighs all others by far.
    """
    return deviation * rules.exact("area_coverage_factor", on)


def rough_kidney_area(
    width_a_ft: Fraction, width_b_ft: Fraction, length_ft: Fraction, rules: RuleBook, on: date
) -> RoughArea:
    """Return the approximate area of a kidney from its two widths and its length, in square feet.

    0.45 (A + B) L, a rule of thumb. For the first visit only: a quote takes a kidney by an
    outline, offsets or ties.
    """
    share = rules.exact("kidney_area_share", on)
    return RoughArea(about_sqft=share * (width_a_ft + width_b_ft) * length_ft)
