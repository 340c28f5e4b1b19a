"""What a person may type for a length, a price, a share, an angle: text to exact values.

Each parser takes the text and returns the value, or raises a PydanticCustomError that says what
was found and what is allowed; the error's type becomes the code of the problem.
"""

import re
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from pydantic_core import PydanticCustomError

from quotegen.money import parse_money
from quotegen.quantity import (
    FEET_PER_METER,
    INCHES_PER_FOOT,
    LEAST_AREA_SQFT,
    SQFT_PER_M2,
    Length,
    Unit,
    decimal_from_text,
    decimal_of,
)

_WHOLE = r"\d{1,7}"
_PLAIN = rf"{_WHOLE}(?:\.\d{{1,9}})?"
_NUMBER = rf"(?:{_PLAIN}(?:[- ]{_WHOLE}/{_WHOLE})?|{_WHOLE}/{_WHOLE}|\.\d{{1,9}})"
_FEET = rf"(?P<feet>{_NUMBER})\s*(?:ft\.?|feet|foot|lf|')"
_INCHES = rf"(?P<inches>{_NUMBER})\s*(?:in\.?|inch|inches|\")"
_TAPE = re.compile(
    rf"(?P<sign>-?)\s*(?:{_FEET}(?:\s*-?\s*{_INCHES})?|{_INCHES.replace('inches>', 'only>')})"
)
_METRIC = re.compile(rf"(?P<sign>-?)\s*(?P<number>{_NUMBER})\s*(?P<unit>m|cm|mm)")
_BARE_NUMBER = re.compile(rf"-?\s*{_NUMBER}")
_BY = re.compile(r"\s*[xX×]\s*|\s+by\s+")
_RATE = re.compile(r"(?P<money>\$?[\d.,]+)\s*(?P<per>/|per\b|\ba\b)?\s*(?P<unit>[a-z][a-z0-9 ]*)?")
_COUNT = re.compile(rf"(?P<number>{_PLAIN})\s*(?P<unit>[a-z][a-z0-9 ]*)?")
_A_POINT_FOR_A_COMMA = re.compile(r"\$?[1-9]\d{0,2}\.\d{3}")
_AREA = re.compile(r"(?P<number>\d[\d,]{0,9}(?:\.\d{1,4})?)\s*(?P<unit>sq ft|sf|m2)")
_TYPED_AS = str.maketrans({
    "′": "'", "’": "'", "‘": "'", "″": '"', "”": '"', "“": '"', "−": "-", "–": "-", "⁄": "/",
    "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
    "²": "2", "³": "3",
})  # fmt: skip
_METERS = {"m": Fraction(1), "cm": Fraction(1, 100), "mm": Fraction(1, 1000)}
_LENGTH_FORMS = "24 ft 6 in, 24' 6-1/2\" or 7.5 m"
_RATE_UNITS = {
    "sq ft": Unit.SQ_FT, "square foot": Unit.SQ_FT, "sf": Unit.SQ_FT, "ft": Unit.FT,
    "lin ft": Unit.FT, "lineal foot": Unit.FT, "lf": Unit.FT, "cu yd": Unit.CU_YD,
    "cy": Unit.CU_YD, "ea": Unit.EACH, "m2": Unit.M2, "m": Unit.M, "m3": Unit.M3,
    "each": Unit.EACH, "visit": Unit.VISIT, "lump": Unit.LUMP, "hour": Unit.HOUR,
    "hours": Unit.HOUR, "mile": Unit.MILE, "miles": Unit.MILE, "km": Unit.KM,
}  # fmt: skip
MOST_DAYS = 999
MOST_DOLLARS = 100_000_000
FIRST_YEAR, LAST_YEAR = 1950, 2100
_MOST_SHOWN = 40
_LONGEST, _LONGEST_TEXT = 100, 4_000
_LEAST_SQFT = decimal_of(LEAST_AREA_SQFT)
_RESERVED = frozenset({
    "con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10)),
    "ballpark", "specimen",
})  # fmt: skip
_ODD_DIGIT = re.compile(r"[^\D0-9]|[0-9]\s*[²³]")
_YEAR_MONTH_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_DAY = re.compile(r"(?P<month>\d{1,2})-(?P<day>\d{1,2})")
_LEAP_YEAR = 2000


@dataclass(frozen=True, slots=True)
class Size:
    """Two lengths at right angles, as in `24 ft x 16 ft`."""

    length: Length
    width: Length


@dataclass(frozen=True, slots=True)
class Rate:
    """A price for one of something."""

    amount: Decimal
    unit: Unit


@dataclass(frozen=True, slots=True)
class Count:
    """How much of a rate a job has: a number and its unit, or `yes` for what the takeoff gives."""

    amount: Decimal | None
    unit: Unit | None


@dataclass(frozen=True, slots=True, order=True)
class DayOfYear:
    """A day that comes back every year."""

    month: int
    day: int

    def __str__(self) -> str:
        return f"{self.month:02}-{self.day:02}"


def number_text(text: str) -> str:
    """Return a text that a value is read from: not too long for one, its digits plain.

    The patterns below take any digit that Unicode knows; what is no plain 0 to 9 may mean another
    number to its reader than to us, as `1²` does.
    """
    if len(text) > _LONGEST:
        raise _error("value-too-long", text, f"is too long; a value has at most {_LONGEST} letters")
    if _ODD_DIGIT.search(text):
        raise _error("odd-digit", text, "has a digit that is not one of 0 to 9; type those alone")
    return text


def shown_text(text: str) -> str:
    """Return a text that a page shows: not so long that none could hold it."""
    if len(text) > _LONGEST_TEXT:
        said = f"is too long; a text has at most {_LONGEST_TEXT:,} letters"
        raise _error("value-too-long", text, said)
    return text


def folder_name(text: str) -> str:
    """Return a word that can name a folder on every system, and that is none of our own folders.

    Windows keeps some names for devices, whatever stands behind their first point, and takes a
    point off an end (Microsoft, "Naming Files, Paths, and Namespaces"; from memory).
    """
    if text.endswith(".") or text.lower().partition(".")[0] in _RESERVED:
        raise _error(
            "number-reserved", text, "cannot name a folder on every machine; take another number"
        )
    return text


def fraction(text: str) -> Fraction:
    """Read `6`, `6.5`, `6-1/2` or `1/2`."""
    return sum((Fraction(part) for part in re.split(r"[- ]", text.strip())), Fraction(0))


def parse_length(text: str) -> Length:
    """Read a length as written from a tape; `0` needs no unit."""
    plain = _plain(text)
    if plain in {"0", "-0"}:
        return Length(Fraction(0))
    try:
        if match := _TAPE.fullmatch(plain):
            feet = fraction(match["feet"] or "0")
            inches = fraction(match["inches"] or match["only"] or "0")
            size = feet + inches / INCHES_PER_FOOT
            return Length(-size if match["sign"] else size)
        if match := _METRIC.fullmatch(plain):
            size = fraction(match["number"]) * _METERS[match["unit"]] * FEET_PER_METER
            return Length(-size if match["sign"] else size)
    except ZeroDivisionError:
        pass
    if "$" in plain:
        said = f"is money where a length belongs; type it like {_LENGTH_FORMS}"
        raise _error("money-for-length", text, said)
    if re.fullmatch(rf"-?\s*{_NUMBER}\s*(?:yd|yards?)", plain):
        raise _error("not-a-length", text, "is in yards; type it in feet, three to the yard")
    if _BARE_NUMBER.fullmatch(plain):
        said = f"has no unit; type `{plain} ft`, `{plain} in` or `{plain} m`"
        raise _error("missing-unit", text, said)
    raise _error("not-a-length", text, f"is not a length; type it like {_LENGTH_FORMS}")


def parse_positive_length(text: str) -> Length:
    """Read a length that must be more than zero."""
    length = parse_length(text)
    if length.feet <= 0:
        said = "must be more than zero; where there is none, leave the line out"
        raise _error("not-positive", text, said)
    return length


def parse_size(text: str) -> Size:
    """Read `24 ft x 16 ft`."""
    parts = _BY.split(text.strip())
    if len(parts) != 2 or not all(parts):
        raise _error("not-a-size", text, "is not a size; type two lengths like 24 ft x 16 ft")
    return Size(parse_positive_length(parts[0]), parse_positive_length(parts[1]))


def parse_rate(text: str) -> Rate:
    """Read `$9.50 / sq ft`, `$210 each` or `$680 lump`."""
    match = _RATE.fullmatch(_plain(text))
    amount = _money(match["money"], text) if match else None
    if match is None or amount is None or not ("$" in text or match["per"]):
        raise _error("not-a-rate", text, "is not a price; type it like $9.50 / sq ft")
    unit = _RATE_UNITS.get((match["unit"] or "").strip())
    if unit is None:
        found = f"has the unit `{match['unit']}`" if match["unit"] else "has no unit"
        allowed = "sq ft, ft, cu yd, each, visit, hour, mile or lump"
        raise _error("rate-unit", text, f"{found}; a price is for one {allowed}{_yards(text)}")
    return Rate(amount, unit)


def parse_amount(text: str) -> Decimal:
    """Read a sum of money that is for the whole, such as `$2,400`."""
    amount = _money(text, text)
    if amount is None:
        raise _error("not-money", text, "is not a sum of money; type it like $2,400")
    if _A_POINT_FOR_A_COMMA.fullmatch(_plain(text)):
        raise _error("point-for-comma", text, "has a point where a comma parts thousands: $2,400")
    return amount


def parse_count(text: str) -> Count:
    """Read `yes`, `2`, `18 ft` or `6 cu yd`."""
    plain = _plain(text)
    if plain == "yes":
        return Count(None, None)
    match = _COUNT.fullmatch(plain)
    unit = _RATE_UNITS.get((match["unit"] or "each").strip()) if match else None
    if match is None or unit is None or decimal_from_text(match["number"]) == 0:
        said = f"is not a quantity; type yes, or a number like 2, 18 ft or 6 cu yd{_yards(plain)}"
        raise _error("not-a-count", text, said)
    return Count(decimal_from_text(match["number"]), unit)


def parse_share(text: str) -> Fraction:
    """Read `7 %` as 7/100; from zero to a hundred."""
    match = re.fullmatch(rf"(?P<number>{_PLAIN})\s*%", text.strip())
    if match is not None and Fraction(match["number"]) > 100:
        said = "is more than the whole; a share is from 0% to 100%"
        raise _error("not-a-share", text, said)
    if match is None:
        raise _error("not-a-share", text, "is not a share; type it like 7%, from 0% to 100%")
    return Fraction(match["number"]) / 100


def parse_angle_deg(text: str) -> Fraction:
    """Read `90 deg` as degrees, counter-clockwise."""
    match = re.fullmatch(rf"(?P<number>-?{_PLAIN})\s*(?:deg|°)", _plain(text))
    if match is None:
        raise _error("not-an-angle", text, "is not an angle; type it like 90 deg")
    return Fraction(match["number"])


def parse_cuyd(text: str) -> Fraction:
    """Read `0.25 cu yd`, more than zero."""
    match = re.fullmatch(rf"(?P<number>{_PLAIN}|{_WHOLE}/{_WHOLE})\s*(?:cu yd|cy|yd)", _plain(text))
    try:
        volume = Fraction(match["number"]) if match else Fraction(0)
    except ZeroDivisionError:
        volume = Fraction(0)
    if volume <= 0:
        raise _error("not-a-volume", text, "is not a volume; type it like 0.25 cu yd")
    return volume


def parse_slope(text: str) -> Length:
    """Read `1/4 in per ft` as the drop in one foot, or `2 %`."""
    plain = _plain(text)
    if plain.endswith("%"):
        return Length(parse_share(plain))
    match = re.fullmatch(r"(?P<drop>.+?)\s*(?:per|/)\s*(?:ft|foot)", plain)
    drop = match["drop"] if match else plain
    if _BARE_NUMBER.fullmatch(drop):
        raise _error(
            "missing-unit", text, f"has no unit; type `{drop} in per ft`, or a share like 2%"
        )
    if match is None:
        meant = f"{plain} per ft" if _TAPE.fullmatch(plain) else "1/4 in per ft"
        raise _error("not-a-slope", text, f"is not a fall; type it like {meant} or 2%")
    return parse_positive_length(drop)


def parse_date(text: str) -> date:
    """Read `2026-05-14`."""
    typed = _YEAR_MONTH_DAY.fullmatch(text.strip())  # Python also reads weeks, and no dashes
    try:
        day = date.fromisoformat(typed[0]) if typed else None
    except ValueError:
        day = None
    if day is None:
        said = "is not a date; type it year-month-day like 2026-05-14"
        raise _error("not-a-date", text, said)
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        said = f"is far off; type a year from {FIRST_YEAR} to {LAST_YEAR}"
        raise _error("year-far-off", text, said)
    return day


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


def parse_whole(text: str) -> int:
    """Read a whole number from zero up."""
    if not re.fullmatch(r"\d{1,6}", text.strip()):
        raise _error("not-a-whole-number", text, "is not a whole number like 3")
    return int(text)


def parse_days(text: str) -> int:
    """Read a number of days, less than a thousand."""
    days = parse_whole(text)
    if days > MOST_DAYS:
        raise _error("too-many-days", text, f"is too many days; at most {MOST_DAYS} are counted")
    return days


def parse_yes_no(text: str) -> bool:
    """Read `yes` or `no`."""
    plain = _plain(text)
    if plain not in {"yes", "no"}:
        raise _error("not-yes-no", text, "must be yes or no")
    return plain == "yes"


def parse_area_sqft(text: str) -> Fraction:
    """Read `1,071.4 sq ft` or `96.52 m2` as exact square feet, more than zero."""
    match = _AREA.fullmatch(_plain(text))
    area = Fraction(match["number"].replace(",", "")) if match else Fraction(0)
    if match is None or area == 0:
        raise _error("not-an-area", text, "is not an area; type it like 1,071.4 sq ft or 96.52 m2")
    area_sqft = area if match["unit"] != "m2" else area * SQFT_PER_M2
    if area_sqft < LEAST_AREA_SQFT:
        said = f"is less than {_LEAST_SQFT} sq ft, to which areas are rounded; check the point"
        raise _error("area-too-small", text, said)
    return area_sqft


def parse_signed_amount(text: str) -> Decimal:
    """Read `$320` or `-$150`."""
    plain = _plain(text)
    amount = parse_amount(plain.removeprefix("-").removeprefix("+"))
    return -amount if plain.startswith("-") else amount


def cut_short(text: str) -> str:
    """Return a text as a message repeats it, a long one cut."""
    return text if len(text) <= _MOST_SHOWN else f"{text[:_MOST_SHOWN]}..."


def _yards(text: str) -> str:
    """Return what to say of a yard, which is a volume to who orders and a length to a tape."""
    return "; a yard of concrete is 1 cu yd" if re.search(r"\b(?:yd|yards?)\b", text) else ""


def _plain(text: str) -> str:
    """Return the text as if it were typed in plain characters and small letters."""
    return " ".join(text.translate(_TYPED_AS).replace("''", '"').lower().split())


def _money(money: str, text: str) -> Decimal | None:
    amount = parse_money(money)
    if amount is not None and amount > MOST_DOLLARS:
        said = f"is more than a job can cost; at most ${MOST_DOLLARS:,} is read"
        raise _error("money-too-large", text, said)
    return amount


def _error(code: str, text: str, said: str) -> PydanticCustomError:
    return PydanticCustomError(code, f"`{cut_short(text)}` {said}")
