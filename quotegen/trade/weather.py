"""Cold, heat, and how long the surface of a slab can be worked."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from math import ceil

from quotegen.quantity import decimal_of
from quotegen.trade.book import RuleBook, Step


def float_wait_hours(air_f: Decimal, rules: RuleBook, on: date) -> Decimal | None:
    """Hours from placing until finishing can begin, by air in °F (ASCC Position Statement 15).

    4.25 h at 50, 2.75 h at 70, 1.75 h at 90 °F; between these, along a straight line. None
    outside of what the survey covers. No promise: mix, wind and base move it.
    """
    return _between(rules.steps("float_wait", on), air_f)


def set_hours(air_f: Decimal, rules: RuleBook, on: date) -> Decimal | None:
    """Hours from placing until concrete has set, by air in °F (trade table, from memory).

    None outside of 30 to 100 °F.
    """
    return _between(rules.steps("set_time", on), air_f)


def finishing_hours(air_f: Decimal, rules: RuleBook, on: date) -> Decimal | None:
    """Hours in which the surface takes a finish: from ready to float until it has set.

    A guide from two tables that measure two events; the crew goes by the print of a boot.
    """
    ready, is_set = float_wait_hours(air_f, rules, on), set_hours(air_f, rules, on)
    return None if ready is None or is_set is None else is_set - ready


def parts_needed(area_sqft: Decimal, an_hour_sqft: Fraction, hours: Decimal) -> int:
    """In how many parts a slab is placed so that a crew finishes each within its window.

    Area over what the crew finishes in the window, rounded up. Trucks spaced by the window do
    the same as pours on two days.
    """
    return ceil(Fraction(area_sqft) / finished_sqft(an_hour_sqft, hours))


def finished_sqft(an_hour_sqft: Fraction, hours: Decimal) -> Fraction:
    """Area in square feet that a crew finishes in so many hours."""
    return an_hour_sqft * Fraction(hours)


def was_cold_by_the_old_rule(daily_means_f: tuple[Decimal, ...], rules: RuleBook, on: date) -> bool:
    """Say whether every daily mean in °F is under 40, as the rule before 2010 asked.

    For showing where the two rules disagree; `mix.is_cold` is the one that is used.
    """
    return max(daily_means_f) < rules.number("cold_mean_old", on)


def least_mixed_f(air_f: Decimal, rules: RuleBook, on: date) -> Fraction:
    """Least temperature in °F of concrete as mixed, thin sections (ACI 306R Table 3.1, memory)."""
    return rules.step("cold_concrete_mixed", Fraction(air_f), on)


def placed_too_cold(concrete_f: Decimal, rules: RuleBook, on: date) -> bool:
    """Say whether concrete is colder than 55 °F as placed (ACI 306R Table 3.1, from memory).

    For sections under 12 in, in cold weather.
    """
    return concrete_f < rules.number("cold_concrete_placed", on)


def protection_days(*, exposed: bool, accelerated: bool, rules: RuleBook, on: date) -> int:
    """Days of protection in cold weather without load (ACI 306R Table 5.1, from memory)."""
    row = ("exposed" if exposed else "not exposed") + (" accelerated" if accelerated else "")
    return int(rules.table("cold_protection", on)[row])


def heat_risk(heat_index_f: Decimal, rules: RuleBook, on: date) -> str:
    """Return the risk of work at a heat index in °F: lower, moderate, high, extreme (OSHA)."""
    reached = [
        name for name, least in rules.table("heat_risk", on).items() if heat_index_f >= least
    ]
    return reached[-1] if reached else "lower"


def _between(steps: tuple[Step, ...], at: Decimal) -> Decimal | None:
    """Return the value along straight lines from step to step, None outside of them."""
    for low, high in pairwise(steps):
        if low.at_least <= at <= high.at_least:
            part = Fraction(at - low.at_least) / Fraction(high.at_least - low.at_least)
            return low.value + decimal_of(part * Fraction(high.value - low.value))
    return None
