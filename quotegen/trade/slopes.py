"""Fall of a slab, so that water leaves it."""

from datetime import date
from fractions import Fraction

from quotegen.quantity import INCHES_PER_FOOT
from quotegen.trade.book import PER_CENT, RuleBook


def fall_in(run_ft: Fraction, slope_in_per_ft: Fraction) -> Fraction:
    """Inches that a slab falls over a run in feet."""
    return run_ft * slope_in_per_ft


def slope_share(slope_in_per_ft: Fraction) -> Fraction:
    """Slope as a share: 1/4 in per ft is 1/48."""
    return slope_in_per_ft / INCHES_PER_FOOT


def usual_slope_in_per_ft(rules: RuleBook, on: date) -> Fraction:
    """Usual fall of outdoor flatwork, in inches per foot (UFGS 03300N 3.8.3, 1/48)."""
    return rules.exact("slope_usual", on)


def drains_from_house(slope_in_per_ft: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether a fall away from a building is enough: 2 % within 10 ft (IRC R401.3).

    1/8 in per ft is not enough there. Accessible routes have an upper limit on cross slope
    besides, which leaves next to no room; those need the local official.
    """
    return slope_share(slope_in_per_ft) >= rules.exact("slope_by_house", on) * PER_CENT


def pool_deck_fall_in(width_ft: Fraction, rules: RuleBook, on: date) -> tuple[Fraction, Fraction]:
    """Least and most fall in inches of a deck away from the pool over its width in feet.

    1/4 to 1/2 in per ft (COMAR 10.17.01.22, written for public pools; used here as good
    practice). The local pool code decides.
    """
    slope = rules.range("pool_deck_slope", on)
    return fall_in(width_ft, Fraction(slope.least)), fall_in(width_ft, Fraction(slope.most))


def drains_from_pool(slope_in_per_ft: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether a fall away from a pool is enough: 1/4 in per ft (COMAR 10.17.01.22).

    Written for public pools; used here as good practice. The local pool code decides.
    """
    return slope_in_per_ft >= Fraction(rules.range("pool_deck_slope", on).least)


def is_accessible(along: Fraction, across: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether slopes, as shares, suit an accessible walk (ADA 403.3): 1:20 and 1:48.

    1/4 in per ft is 1:48 just so, and also what a building asks, so nothing is left for error.
    """
    steep = along > rules.exact("accessible_running_slope", on) * PER_CENT
    return not steep and across * rules.exact("accessible_cross_run", on) <= 1


def ground_falls_enough(fall_inches: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether the ground falls enough in its first 10 ft from a building: 6 in (IRC R401.3)."""
    return fall_inches >= rules.exact("ground_fall", on)
