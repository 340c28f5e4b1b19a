"""What the mix must be, by weathering, salt, temperature and pigment."""

from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from quotegen.quantity import decimal_of
from quotegen.trade.book import PER_CENT, RuleBook


class Weathering(StrEnum):
    """How hard frost and wet are on concrete at a place, as the residential code maps it."""

    NEGLIGIBLE = "negligible"
    MODERATE = "moderate"
    SEVERE = "severe"


def strength_psi(weathering: Weathering, *, deicers: bool, rules: RuleBook, on: date) -> Decimal:
    """Return the least strength of outdoor flatwork at 28 days, in psi.

    By weathering from IRC Table R402.2 (porches, steps, garage slabs); where deicing salt is
    used, at least what ACI 332 asks for class RF3 in the edition in force. Slabs that carry a
    building, and slabs designed by an engineer, follow other rules.
    """
    by_weather = rules.table("strength_by_weathering", on)[weathering]
    if not deicers:
        return by_weather
    return max(by_weather, rules.number("deicer_strength", on))


def least_air(weathering: Weathering, rules: RuleBook, on: date) -> Decimal | None:
    """Return the least air of outdoor flatwork in per cent: 5 where frost comes (IRC Table R402.2).

    None where it does not come.
    """
    frost = weathering is not Weathering.NEGLIGIBLE
    return rules.range("exposed_air", on).least if frost else None


def is_cold(lowest_air_f: Decimal, rules: RuleBook, on: date) -> bool:
    """Whether air this cold (°F) while the slab is protected calls for cold weather care.

    Under 40 °F (ACI 306R-10). Nobody pours on frozen ground, whatever the air.
    """
    return lowest_air_f < rules.number("cold_weather_air", on)


def is_too_hot(concrete_f: Decimal, rules: RuleBook, on: date) -> bool:
    """Whether concrete leaves the truck too hot: over 95 °F (ACI 305.1-14)."""
    return concrete_f > rules.number("hot_concrete_max", on)


def pigment_limit(cement_lb_per_cuyd: Decimal, rules: RuleBook, on: date) -> Decimal:
    """Return the most pigment in pounds per cubic yard.

    10 % of the cement by mass (ASTM C979, 1.4). A blend may not exceed any one pigment's own
    limit, which the maker states.
    """
    return decimal_of(Fraction(cement_lb_per_cuyd) * rules.exact("pigment_limit", on) * PER_CENT)


def pigment_allowed(share: Fraction, rules: RuleBook, on: date) -> bool:
    """Whether a pigment dose, as a share of the cement by mass, is within ASTM C979, 1.4."""
    return share <= rules.exact("pigment_limit", on) * PER_CENT


def pigment_lb_per_cuyd(share: Fraction, cement_lb_per_cuyd: Decimal) -> Fraction:
    """Return the pigment in pounds per cubic yard: a share of the cement by mass."""
    return share * Fraction(cement_lb_per_cuyd)


def weathering_of_state(state: str, rules: RuleBook, on: date) -> Weathering | None:
    """Return the weathering in the harsher part of a state; None where we do not know it.

    IRC Figure R301.2, for most states from memory. Mountains are harsher and coasts milder than
    their state.
    """
    rank = rules.table("weathering_by_state", on).get(state)
    return None if rank is None else tuple(Weathering)[int(rank)]
