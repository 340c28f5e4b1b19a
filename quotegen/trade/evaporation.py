"""How fast water leaves fresh concrete: a guide to within 40 %, never an acceptance limit."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quotegen.quantity import KPA_PER_PSI, NO_QUANTITY, celsius, decimal_of
from quotegen.trade.book import PER_CENT, RuleBook


@dataclass(frozen=True, slots=True, kw_only=True)
class Air:
    """The weather over the slab: °F, per cent, and wind in mph read just above it."""

    concrete_f: Decimal
    air_f: Decimal
    humidity_percent: Decimal
    wind_mph: Decimal


def evaporation_lb(weather: Air, rules: RuleBook, on: date) -> Decimal:
    """Return the evaporation in lb per sq ft per hour (Uno, ACI Materials Journal 95-M34).

    (Tc^2.5 - r Ta^2.5)(1 + 0.4 V) 10^-6; zero where water would condense on the slab instead.
    Always computed in this form and converted to kg/m2, since the rounded metric form differs.
    Overstates by 15 to 24 % in air much colder than the concrete; does not hold below 0 °F.
    """
    numbers = rules.table("evaporation_uno", on)
    share, power = weather.humidity_percent * decimal_of(PER_CENT), numbers["power"]
    heat = weather.concrete_f**power - share * weather.air_f**power
    moved = numbers["still_air"] + numbers["wind"] * weather.wind_mph
    return max(heat * moved * numbers["scale"], NO_QUANTITY)


def evaporation_menzel_lb(weather: Air, rules: RuleBook, on: date) -> Decimal:
    """Return the same from vapor pressures (Menzel 1954, the ACI 305R chart).

    0.44 (e0 - ea)(0.253 + 0.096 V), e in psi. A second opinion, better in cold air.
    """
    numbers = rules.table("evaporation_menzel", on)
    at_slab = vapor_pressure_kpa(celsius(weather.concrete_f), rules, on) / KPA_PER_PSI
    full = vapor_pressure_kpa(celsius(weather.air_f), rules, on) / KPA_PER_PSI
    in_air = full * weather.humidity_percent * decimal_of(PER_CENT)
    moved = numbers["still_air"] + numbers["wind"] * weather.wind_mph
    return max(numbers["scale"] * (at_slab - in_air) * moved, NO_QUANTITY)


def vapor_pressure_kpa(temperature_c: Decimal, rules: RuleBook, on: date) -> Decimal:
    """Return the saturation vapor pressure over water in kPa, at a temperature in °C.

    0.6108 exp(17.27 t / (t + 237.3)) (FAO 56, equation 11), from about freezing to 50 °C.
    """
    numbers = rules.table("vapor_pressure", on)
    lift = numbers["slope"] * temperature_c / (temperature_c + numbers["base"])
    return numbers["scale"] * lift.exp()


def needs_care(evaporation: Decimal, *, low_bleed: bool, rules: RuleBook, on: date) -> bool:
    """Whether the surface needs protection: from 0.2 lb per sq ft per hour (ACI 308-81).

    From 0.1 for a mix that bleeds little water.
    """
    return evaporation >= _limit(low_bleed=low_bleed, rules=rules, on=on)


def may_need_care(evaporation: Decimal, *, low_bleed: bool, rules: RuleBook, on: date) -> bool:
    """Whether the true rate may pass that limit, since it differs by up to 40 % (Hover)."""
    spread = rules.number("evaporation_scatter", on) * decimal_of(PER_CENT)
    return evaporation * (1 + spread) >= _limit(low_bleed=low_bleed, rules=rules, on=on)


def _limit(*, low_bleed: bool, rules: RuleBook, on: date) -> Decimal:
    return rules.number("evaporation_care_low_bleed" if low_bleed else "evaporation_care", on)
