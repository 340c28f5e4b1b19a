"""The weather forecast for the day of the pour, as the owner types it: text to °F and mph."""

import re
from decimal import Decimal
from fractions import Fraction
from typing import Annotated

from pydantic_core import PydanticCustomError

from quotegen.quantity import KM_PER_MILE, decimal_of
from quotegen.reading.fields.text_fields import cut_short
from quotegen.reading.fields.typed_fields import DateField, Model, ShareField, YesNoField, typed_as

_DEGREES = re.compile(r"(?P<number>-?\d{1,3}(?:\.\d)?)\s*°?\s*(?P<unit>[fc])")
_WIND = re.compile(r"(?P<number>\d{1,3}(?:\.\d)?)\s*(?P<unit>mph|km/h)")
_HOTTEST_F = 150


def parse_temperature(typed: str) -> Decimal:
    """Read `84 F` or `29 C` as °F; from 0 °F up, since no rule of pouring goes below."""
    match = _DEGREES.fullmatch(typed.strip().lower())
    if match is not None:
        number = Fraction(match["number"])
        fahrenheit = number * 9 / 5 + 32 if match["unit"] == "c" else number
        if 0 <= fahrenheit <= _HOTTEST_F:
            return decimal_of(fahrenheit)
    message = f"`{cut_short(typed)}` is not a temperature; type it like 84 F, from 0 F to 150 F"
    raise PydanticCustomError("not-a-temperature", message)


def parse_wind(typed: str) -> Decimal:
    """Read `11 mph` or `18 km/h` as miles per hour."""
    match = _WIND.fullmatch(typed.strip().lower())
    if match is None:
        message = f"`{cut_short(typed)}` is not a wind; type it like 11 mph or 18 km/h"
        raise PydanticCustomError("not-a-wind", message)
    number = Fraction(match["number"])
    return decimal_of(number if match["unit"] == "mph" else number / KM_PER_MILE)


Temperature = Annotated[Decimal, *typed_as(parse_temperature, "A temperature", "84 F", "29 C")]
Wind = Annotated[Decimal, *typed_as(parse_wind, "A wind", "11 mph", "18 km/h")]


class Forecast(Model):
    """The weather that is expected, for the owner's day sheet.

    Attributes:
        air: while the surface is worked; `low` is the coldest while the slab is protected.
        wind: the average, as read low over the slab.
        concrete: as the truck brings it.
        low_bleed: the mix bleeds little water, as with silica fume.
    """

    date: DateField
    air: Temperature
    low: Temperature | None = None
    humidity: ShareField
    wind: Wind
    concrete: Temperature
    rain: YesNoField = False
    low_bleed: YesNoField = False
