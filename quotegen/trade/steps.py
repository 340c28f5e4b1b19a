"""Outdoor steps of a house, as the residential code counts them; local code decides."""

from collections.abc import Sequence
from datetime import date
from fractions import Fraction
from math import ceil

from quotegen.trade.book import RuleBook


def risers_needed(rise_in: Fraction, rules: RuleBook, on: date) -> int:
    """Least number of equal steps for a height in inches (riser 7-3/4 in, IRC R311.7.5.1)."""
    return ceil(rise_in / rules.exact("riser_height_max", on))


def risers_even(risers_in: Sequence[Fraction], rules: RuleBook, on: date) -> bool:
    """Say whether step heights in one flight differ by at most 3/8 in (IRC R311.7.5.1)."""
    return max(risers_in) - min(risers_in) <= rules.exact("riser_variation", on)


def riser_too_high(riser_in: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether one step is higher than 7-3/4 in (IRC R311.7.5.1)."""
    return riser_in > rules.exact("riser_height_max", on)
