"""The way to a site and the days of a year as typed: text to exact values."""

import re
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from pydantic_core import PydanticCustomError

from quotegen.quantity import KM_PER_MILE
from quotegen.spec.text_fields import cut_short

MINUTES_PER_HOUR = 60
_NUMBER = r"\d{1,4}(?:\.\d{1,3})?"
_MILES = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>miles?|km)")
_HOURS = re.compile(
    rf"(?:(?P<hours>{_NUMBER})\s*(?:hours?|h))?\s*(?:(?P<minutes>{_NUMBER})\s*(?:minutes?|min))?"
)
_DAY = re.compile(r"(?P<month>\d{1,2})-(?P<day>\d{1,2})")
_LEAP_YEAR = 2000


@dataclass(frozen=True, slots=True)
class Road:
    """How far it is to a site one way: in miles, or in hours of driving."""

    miles: Fraction | None = None
    hours: Fraction | None = None


@dataclass(frozen=True, slots=True, order=True)
class DayOfYear:
    """A day that comes back every year."""

    month: int
    day: int

    def __str__(self) -> str:
        return f"{self.month:02}-{self.day:02}"


def parse_distance(text: str) -> Road:
    """Read `14 miles` or `22.5 km`."""
    match = _MILES.fullmatch(text.strip().lower())
    if match is None:
        message = f"`{cut_short(text)}` is not a distance; type it like 14 miles or 22 km"
        raise PydanticCustomError("not-a-distance", message)
    number = Fraction(match["number"])
    return Road(miles=number / KM_PER_MILE if match["unit"] == "km" else number)


def parse_drive_time(text: str) -> Road:
    """Read `35 min`, `1 hour 10 min` or `1.5 hours`."""
    match = _HOURS.fullmatch(text.strip().lower())
    if match is None or not (match["hours"] or match["minutes"]):
        message = f"`{cut_short(text)}` is not a time on the road; type it like 35 min or 1.5 hours"
        raise PydanticCustomError("not-a-drive-time", message)
    minutes = Fraction(match["minutes"] or 0)
    return Road(hours=Fraction(match["hours"] or 0) + minutes / MINUTES_PER_HOUR)


def parse_road(text: str) -> Road:
    """Read a distance, or a time on the road."""
    return parse_distance(text) if re.search("mile|km", text.lower()) else parse_drive_time(text)


def parse_day_of_year(text: str) -> DayOfYear:
    """Read `11-15` as the fifteenth of November."""
    match = _DAY.fullmatch(text.strip())
    try:
        day = date(_LEAP_YEAR, int(match["month"]), int(match["day"])) if match else None
    except ValueError:
        day = None
    if day is None:
        message = f"`{cut_short(text)}` is not a day of the year; type it month-day like 11-15"
        raise PydanticCustomError("not-a-day-of-the-year", message)
    return DayOfYear(day.month, day.day)
