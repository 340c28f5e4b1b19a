"""Outdoor steps of a house by the residential code; local code decides."""

from collections.abc import Sequence
from datetime import date
from fractions import Fraction

from quotegen.trade.book import RuleBook


def risers_even(risers_in: Sequence[Fraction], rules: RuleBook, on: date) -> bool:
    """Whether the steps of one flight differ in height by at most 3/8 in (IRC R311.7.5.1)."""
    return max(risers_in) - min(risers_in) <= rules.exact("riser_variation", on)


def riser_too_high(riser_in: Fraction, rules: RuleBook, on: date) -> bool:
    """Whether one step is higher than 7-3/4 in (IRC R311.7.5.1)."""
    return riser_in > rules.exact("riser_height_max", on)
