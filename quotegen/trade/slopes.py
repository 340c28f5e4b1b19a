"""Whether a slab falls enough for water to leave it."""

from datetime import date
from fractions import Fraction

from quotegen.quantity import INCHES_PER_FOOT
from quotegen.trade.book import PER_CENT, RuleBook


def slope_share(slope_in_per_ft: Fraction) -> Fraction:
    """Return a slope as a share: 1/4 in per ft is 1/48."""
    return slope_in_per_ft / INCHES_PER_FOOT


def drains_from_house(slope_in_per_ft: Fraction, rules: RuleBook, on: date) -> bool:
    """Whether a fall away from a building is enough: 2 % within 10 ft (IRC R401.3).

    1/8 in per ft is not enough there. An accessible route also limits the cross slope, which
    leaves next to no room: ask the local official.
    """
    return slope_share(slope_in_per_ft) >= rules.exact("slope_by_house", on) * PER_CENT


def drains_from_pool(slope_in_per_ft: Fraction, rules: RuleBook, on: date) -> bool:
    """Whether a fall away from a pool is enough: 1/4 in per ft (COMAR 10.17.01.22).

    Written for public pools; used here as good practice. The local pool code decides.
    """
    return slope_in_per_ft >= Fraction(rules.range("pool_deck_slope", on).least)
