"""What the concrete must be, by weather and salt."""

from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from quotegen.quantity import decimal_of
from quotegen.trade.book import PER_CENT, Range, RuleBook


class Weathering(StrEnum):
    """How hard frost and wet work on concrete at a place, as the residential code maps it."""

    NEGLIGIBLE = "negligible"
    MODERATE = "moderate"
    SEVERE = "severe"


def strength_psi(weathering: Weathering, *, deicers: bool, rules: RuleBook, on: date) -> Decimal:
    """Least strength at 28 days, in psi, of outdoor flatwork.

    By weathering from IRC Table R402.2 (porches, steps, garage slabs); where melt salt is used,
    at least what ACI 332 asks for class RF3 in the edition of the time. Slabs that carry a
    building, and slabs that an engineer designed, follow other rules.
    """
    by_weather = rules.table("strength_by_weathering", on)[weathering]
    if not deicers:
        return by_weather
    return max(by_weather, rules.number("deicer_strength", on))


def water_cement_max(*, deicers: bool, rules: RuleBook, on: date) -> Decimal | None:
    """Most water by weight of cement, or None where no rule sets it (ACI 332-20, class RF3).

    Raises:
        LookupError: melt salt is used and the date is before the 2020 edition.
    """
    return rules.number("deicer_water_cement", on) if deicers else None


def air_percent(weathering: Weathering, rules: RuleBook, on: date) -> Range | None:
    """Range of entrained air in per cent, or None where frost is negligible (IRC Table R402.2)."""
    if weathering is Weathering.NEGLIGIBLE:
        return None
    return rules.range("exposed_air", on)


def is_cold(lowest_air_f: Decimal, rules: RuleBook, on: date) -> bool:
    """Say whether air this cold (°F) while the slab is protected calls for cold weather care.

    Under 40 °F (ACI 306R-10). Frozen ground is never poured on, whatever the air.
    """
    return lowest_air_f < rules.number("cold_weather_air", on)


def is_too_hot(concrete_f: Decimal, rules: RuleBook, on: date) -> bool:
    """Say whether concrete leaves the truck too hot: over 95 °F (ACI 305.1-14)."""
    return concrete_f > rules.number("hot_concrete_max", on)


def pigment_limit(cement_lb_per_cuyd: Decimal, rules: RuleBook, on: date) -> Decimal:
    """Most pigment in pounds per cubic yard: 10 % of the mass of cement (ASTM C979, 1.4).

    A blend may not pass any one pigment's own limit, which the maker states.
    """
    return decimal_of(Fraction(cement_lb_per_cuyd) * rules.exact("pigment_limit", on) * PER_CENT)


def pigment_allowed(share: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether a pigment dose, as a share of the mass of cement, is within ASTM C979, 1.4."""
    return share <= rules.exact("pigment_limit", on) * PER_CENT


def pigment_lb_per_cuyd(share: Fraction, cement_lb_per_cuyd: Decimal) -> Fraction:
    """Pigment in pounds per cubic yard: a share of the mass of cement."""
    return share * Fraction(cement_lb_per_cuyd)


def air_by_stone(stone_in: Fraction, rules: RuleBook, on: date) -> tuple[Fraction, Fraction]:
    """Least and most total air in per cent, by the largest stone in inches (UFGS 03311 Table 3).

    Raises:
        LookupError: the stone is smaller than 3/8 in.
    """
    least = rules.step("air_least_by_stone", stone_in, on)
    return least, rules.step("air_most_by_stone", stone_in, on)


def weathering_of_index(index: Decimal, rules: RuleBook, on: date) -> Weathering:
    """Return the weathering of a place by its weathering index (ASTM C33, from memory).

    Severe over 500, moderate from 50, else negligible.
    """
    least = rules.table("weathering_index", on)
    if index > least[Weathering.SEVERE]:
        return Weathering.SEVERE
    return Weathering.MODERATE if index >= least[Weathering.MODERATE] else Weathering.NEGLIGIBLE


def weathering_of_state(state: str, rules: RuleBook, on: date) -> Weathering | None:
    """Return the weathering in the harder part of a state, None where we do not know it.

    IRC Figure R301.2, from memory; mountains are harder and coasts milder than their state.
    """
    rank = rules.table("weathering_by_state", on).get(state)
    return None if rank is None else tuple(Weathering)[int(rank)]
