"""What a person may type for the road to a site: miles, or a time."""

import re
from dataclasses import dataclass
from fractions import Fraction

from pydantic_core import PydanticCustomError

from quotegen.quantity import KM_PER_MILE
from quotegen.reading.fields.text_fields import cut_short

MINUTES_PER_HOUR = 60
_ROAD_NUMBER = r"\d{1,4}(?:\.\d{1,3})?"
_MILES = re.compile(rf"(?P<number>{_ROAD_NUMBER})\s*(?P<unit>miles?|km)")
_HOURS = re.compile(
    rf"(?:(?P<hours>{_ROAD_NUMBER})\s*(?:hours?|h))?\s*(?:(?P<minutes>{_ROAD_NUMBER})\s*(?:minutes?|min))?"
)


@dataclass(frozen=True, slots=True)
class Road:
    """How far it is to a site one way: in miles, or in hours of driving."""

    miles: Fraction | None = None
    hours: Fraction | None = None


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
