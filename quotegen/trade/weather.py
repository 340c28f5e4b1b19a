"""Cold, heat, and how long the surface of a slab can be finished."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from math import ceil

from quotegen.quantity import decimal_of
from quotegen.trade.book import RuleBook, Step
from quotegen.trade.mix import Weathering, weathering_of_state


def float_wait_hours(air_f: Decimal, rules: RuleBook, on: date) -> Decimal | None:
    """Return the hours from placing until finishing can begin, by air in °F.

    4.25 h at 50, 2.75 h at 70, 1.75 h at 90 °F, and along straight lines between (ASCC Position
    Statement 15). None outside what the survey covers. No promise: mix, wind and base change it.
    """
    return _between(rules.steps("float_wait", on), air_f)


def set_hours(air_f: Decimal, rules: RuleBook, on: date) -> Decimal | None:
    """Return the hours from placing until concrete has set, by air in °F.

    A trade table. None outside 30 to 100 °F.
    """
    return _between(rules.steps("set_time", on), air_f)


def finishing_hours(air_f: Decimal, rules: RuleBook, on: date) -> Decimal | None:
    """Return the hours in which the surface takes a finish: from ready to float until it has set.

    A guide from two tables that measure two events; the crew goes by a boot print.
    """
    ready, is_set = float_wait_hours(air_f, rules, on), set_hours(air_f, rules, on)
    return None if ready is None or is_set is None else is_set - ready


def parts_needed(area_sqft: Decimal, an_hour_sqft: Fraction, hours: Decimal) -> int:
    """Return in how many parts to place a slab so that a crew can finish each in its window.

    Area over what the crew finishes in the window, rounded up. Trucks spaced by the window do
    as well as pours on two days.
    """
    return ceil(Fraction(area_sqft) / finished_sqft(an_hour_sqft, hours))


def finished_sqft(an_hour_sqft: Fraction, hours: Decimal) -> Fraction:
    """Return the area in square feet that a crew finishes in so many hours."""
    return an_hour_sqft * Fraction(hours)


def least_mixed_f(air_f: Decimal, rules: RuleBook, on: date) -> Fraction:
    """Return the least temperature of concrete as mixed, in °F, by air in °F.

    For thin sections (ACI 306R, as adapted in a handbook).
    """
    return rules.step("cold_concrete_mixed", Fraction(air_f), on)


def placed_too_cold(concrete_f: Decimal, rules: RuleBook, on: date) -> bool:
    """Whether concrete is colder than 55 °F as placed (ACI 306R, as adapted in a handbook).

    For sections under 12 in, in cold weather.
    """
    return concrete_f < rules.number("cold_concrete_placed", on)


def protection_days(*, exposed: bool, accelerated: bool, rules: RuleBook, on: date) -> int:
    """Return the days of protection in cold weather, no load (ACI 306R Table 5.1, from memory)."""
    row = ("exposed" if exposed else "not exposed") + (" accelerated" if accelerated else "")
    return int(rules.table("cold_protection", on)[row])


def frost_counted_on(day: date, state: str, rules: RuleBook, on: date) -> bool:
    """Whether frost is counted on: December to February where weathering is severe.

    Common practice, and no climate record. Nothing is counted on in a state that is not known.
    """
    months = rules.table("winter_months", on)
    winter = day.month >= months["first"] or day.month <= months["last"]
    return winter and weathering_of_state(state, rules, on) is Weathering.SEVERE


def heat_risk(heat_index_f: Decimal, rules: RuleBook, on: date) -> str:
    """Return the risk of working at a heat index in °F: lower, moderate, high, extreme (OSHA)."""
    reached = [
        name for name, least in rules.table("heat_risk", on).items() if heat_index_f >= least
    ]
    return reached[-1] if reached else "lower"


def _between(steps: tuple[Step, ...], at: Decimal) -> Decimal | None:
    """Return the value along straight lines from step to step, None outside them."""
    for low, high in pairwise(steps):
        if low.at_least <= at <= high.at_least:
            part = Fraction(at - low.at_least) / Fraction(high.at_least - low.at_least)
            return low.value + decimal_of(part * Fraction(high.value - low.value))
    return None
