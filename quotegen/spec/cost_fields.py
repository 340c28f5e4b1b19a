"""Costs as typed: crew hours for so much work, and the price of what the order list buys."""

import re
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from pydantic_core import PydanticCustomError

from quotegen.money import parse_money
from quotegen.quantity import Unit
from quotegen.spec.text_fields import Rate, cut_short

_NUMBER = r"\d{1,4}(?:\.\d{1,4})?"
_HOURS = re.compile(rf"(?P<number>{_NUMBER})\s*(?:hours?|h)")
_WORK = re.compile(
    rf"(?P<number>{_NUMBER})\s*(?:hours?|h)\s*(?:(?:/|per)\s*(?P<of>{_NUMBER})?\s*)?"
    r"(?P<unit>sq ft|ft|cu yd|each|visit|mile|lump)"
)
_BOUGHT = re.compile(r"(?P<money>\$[\d,.]+)\s*(?:(?:/|per)\s*)?(?P<unit>[a-z ]+)")


class HoursFor(NamedTuple):
    """Crew hours, all people together, for so many of a unit: 1.2 for 100 sq ft."""

    hours: Fraction
    of: Fraction
    unit: Unit


class Bought(NamedTuple):
    """The price of one of what the order list buys: $31 for a ton."""

    amount: Decimal
    unit: str


def parse_hours(text: str) -> Fraction:
    """Read `2.5 hours`: of one person, or of several together."""
    match = _HOURS.fullmatch(text.strip().lower())
    if match is None:
        raise _error("not-hours", text, "is not a number of hours; type it like 2.5 hours")
    return Fraction(match["number"])


def parse_hours_for(text: str) -> HoursFor:
    """Read `1.2 hours / 100 sq ft`, `0.07 hours / ft` or `1.5 hours each`."""
    match = _WORK.fullmatch(" ".join(text.lower().split()))
    of = Fraction(match["of"] or 1) if match else Fraction(0)
    if match is None or not of:
        said = "is no rate of work; type it like 1.2 hours / 100 sq ft, 0.07 hours / ft or 2 h each"
        raise _error("not-hours-for", text, said)
    return HoursFor(Fraction(match["number"]), of, Unit(match["unit"]))


def parse_bought(text: str) -> Bought:
    """Read `$172 / cu yd`, `$31 / ton` or `$1.10 each`."""
    match = _BOUGHT.fullmatch(" ".join(text.lower().split()))
    amount = parse_money(match["money"]) if match else None
    if match is None or amount is None:
        said = "is not the price of a material; type it like $172 / cu yd, $31 / ton or $1.10 each"
        raise _error("not-bought", text, said)
    return Bought(amount, match["unit"])


def per_hour(rate: Rate) -> Rate:
    """Refuse a wage that is not for one hour."""
    return _per(rate, Unit.HOUR)


def per_mile(rate: Rate) -> Rate:
    """Refuse a cost of the road that is not for one mile."""
    return _per(rate, Unit.MILE)


def _per(rate: Rate, unit: Unit) -> Rate:
    if rate.unit is not unit:
        message = f"this is per {rate.unit.value}; it belongs per {unit.value}"
        raise PydanticCustomError("cost-per", message)
    return rate


def _error(code: str, text: str, said: str) -> PydanticCustomError:
    return PydanticCustomError(code, f"`{cut_short(text)}` {said}")
