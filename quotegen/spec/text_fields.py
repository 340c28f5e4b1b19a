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
from quotegen.quantity import FEET_PER_METRE, INCHES_PER_FOOT, Length, Unit, decimal_from_text

_NUMBER = r"(?:\d+(?:\.\d+)?(?:[- ]\d+/\d+)?|\d+/\d+|\.\d+)"
_FEET = rf"(?P<feet>{_NUMBER})\s*(?:ft\.?|feet|foot|')"
_INCHES = rf"(?P<inches>{_NUMBER})\s*(?:in\.?|inch|inches|\")"
_TAPE = re.compile(
    rf"(?P<sign>-?)\s*(?:{_FEET}(?:\s*-?\s*{_INCHES})?|{_INCHES.replace('inches>', 'only>')})"
)
_METRIC = re.compile(rf"(?P<sign>-?)\s*(?P<number>{_NUMBER})\s*(?P<unit>m|cm|mm)")
_BARE_NUMBER = re.compile(rf"-?\s*{_NUMBER}")
_PRIMES = str.maketrans({"′": "'", "’": "'", "″": '"', "”": '"', "−": "-", "–": "-"})
_METRES = {"m": Fraction(1), "cm": Fraction(1, 100), "mm": Fraction(1, 1000)}
_LENGTH_FORMS = "24 ft 6 in, 24' 6-1/2\" or 7.5 m"
_RATE_UNITS = {
    "sq ft": Unit.SQ_FT, "square foot": Unit.SQ_FT, "ft": Unit.FT, "lin ft": Unit.FT,
    "lineal foot": Unit.FT, "cu yd": Unit.CU_YD, "m2": Unit.M2, "m": Unit.M, "m3": Unit.M3,
    "each": Unit.EACH, "visit": Unit.VISIT, "lump": Unit.LUMP,
}  # fmt: skip


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


def fraction(text: str) -> Fraction:
    """Read `6`, `6.5`, `6-1/2` or `1/2`."""
    return sum((Fraction(part) for part in re.split(r"[- ]", text.strip())), Fraction(0))


def parse_length(text: str) -> Length:
    """Read a length as written from a tape; `0` needs no unit."""
    plain = text.translate(_PRIMES).strip()
    if plain in {"0", "-0"}:
        return Length(Fraction(0))
    try:
        if match := _TAPE.fullmatch(plain):
            feet = fraction(match["feet"] or "0")
            inches = fraction(match["inches"] or match["only"] or "0")
            size = feet + inches / INCHES_PER_FOOT
            return Length(-size if match["sign"] else size)
        if match := _METRIC.fullmatch(plain):
            size = fraction(match["number"]) * _METRES[match["unit"]] * FEET_PER_METRE
            return Length(-size if match["sign"] else size)
    except ZeroDivisionError:
        pass
    raise _length_fault(text, plain)


def _length_fault(text: str, plain: str) -> PydanticCustomError:
    found = {"found": text}
    if "$" in plain:
        return PydanticCustomError(
            "money-for-length",
            f"`{text}` is money where a length belongs; type it like {_LENGTH_FORMS}",
            found,
        )
    if _BARE_NUMBER.fullmatch(plain):
        return PydanticCustomError(
            "missing-unit",
            f"`{text}` has no unit; type `{plain} ft`, `{plain} in` or `{plain} m`",
            found,
        )
    return PydanticCustomError(
        "not-a-length", f"`{text}` is not a length; type it like {_LENGTH_FORMS}", found
    )


def parse_positive_length(text: str) -> Length:
    """Read a length that must be more than nought."""
    length = parse_length(text)
    if length.feet <= 0:
        raise PydanticCustomError(
            "not-positive", f"`{text}` must be more than nought", {"found": text}
        )
    return length


def parse_size(text: str) -> Size:
    """Read `24 ft x 16 ft`."""
    parts = re.split(r"\s+(?:x|by|×)\s+", text.strip())
    if len(parts) != 2:
        raise PydanticCustomError(
            "not-a-size",
            f"`{text}` is not a size; type two lengths like 24 ft x 16 ft",
            {"found": text},
        )
    return Size(parse_positive_length(parts[0]), parse_positive_length(parts[1]))


def parse_rate(text: str) -> Rate:
    """Read `$9.50 / sq ft`, `$210 each` or `$680 lump`."""
    match = re.fullmatch(
        r"(?P<money>\S+)\s*(?:/|per\b)?\s*(?P<unit>[a-z][a-z0-9 ]*)?", text.strip()
    )
    amount = parse_money(match["money"]) if match else None
    if match is None or amount is None:
        raise PydanticCustomError(
            "not-a-rate", f"`{text}` is not a price; type it like $9.50 / sq ft", {"found": text}
        )
    unit = _RATE_UNITS.get((match["unit"] or "").strip())
    if unit is None:
        allowed = "sq ft, ft, cu yd, m2, m, each, visit or lump"
        problem = "has no unit" if not match["unit"] else f"has the unit `{match['unit']}`"
        raise PydanticCustomError(
            "rate-unit",
            f"the price `{text}` {problem}; say what it is for: / {allowed}",
            {"found": text},
        )
    return Rate(amount, unit)


def parse_amount(text: str) -> Decimal:
    """Read a sum of money that is for the whole, such as `$2,400`."""
    amount = parse_money(text)
    if amount is None:
        raise PydanticCustomError(
            "not-money", f"`{text}` is not a sum of money; type it like $2,400", {"found": text}
        )
    return amount


def parse_count(text: str) -> Count:
    """Read `yes`, `2`, `18 ft` or `6 cu yd`."""
    plain = text.strip()
    if plain == "yes":
        return Count(None, None)
    match = re.fullmatch(r"(?P<number>\d+(?:\.\d+)?)\s*(?P<unit>[a-z][a-z0-9 ]*)?", plain)
    unit = _RATE_UNITS.get((match["unit"] or "each").strip()) if match else None
    if match is None or unit is None or decimal_from_text(match["number"]) == 0:
        raise PydanticCustomError(
            "not-a-count",
            f"`{text}` is not a quantity; type yes, or a number like 2, 18 ft or 6 cu yd",
            {"found": text},
        )
    return Count(decimal_from_text(match["number"]), unit)


def parse_share(text: str) -> Fraction:
    """Read `7 %` as 7/100; from nought to a hundred."""
    match = re.fullmatch(r"(?P<number>\d+(?:\.\d+)?)\s*%", text.strip())
    if match is None or Fraction(match["number"]) > 100:
        raise PydanticCustomError(
            "not-a-share",
            f"`{text}` is not a share; type it like 7 %, from 0 % to 100 %",
            {"found": text},
        )
    return Fraction(match["number"]) / 100


def parse_angle_deg(text: str) -> Fraction:
    """Read `90 deg` as degrees, counter-clockwise."""
    match = re.fullmatch(r"(?P<number>-?\d+(?:\.\d+)?)\s*(?:deg|°)", text.strip())
    if match is None:
        raise PydanticCustomError(
            "not-an-angle", f"`{text}` is not an angle; type it like 90 deg", {"found": text}
        )
    return Fraction(match["number"])


def parse_cuyd(text: str) -> Fraction:
    """Read `0.25 cu yd`, more than nought."""
    match = re.fullmatch(r"(?P<number>\d+(?:\.\d+)?|\d+/\d+)\s*cu yd", text.strip())
    try:
        volume = Fraction(match["number"]) if match else Fraction(0)
    except ZeroDivisionError:
        volume = Fraction(0)
    if volume <= 0:
        raise PydanticCustomError(
            "not-a-volume", f"`{text}` is not a volume; type it like 0.25 cu yd", {"found": text}
        )
    return volume


def parse_slope(text: str) -> Length:
    """Read `1/4 in per ft` as the drop in one foot, or `2 %`."""
    plain = text.strip()
    if plain.endswith("%"):
        return Length(parse_share(plain))
    if not plain.endswith("per ft"):
        raise PydanticCustomError(
            "not-a-slope",
            f"`{text}` is not a fall; type it like 1/4 in per ft or 2 %",
            {"found": text},
        )
    return parse_positive_length(plain.removesuffix("per ft"))


def parse_date(text: str) -> date:
    """Read `2026-05-14`."""
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise PydanticCustomError(
            "not-a-date",
            f"`{text}` is not a date; type it year-month-day like 2026-05-14",
            {"found": text},
        ) from None


def parse_whole(text: str) -> int:
    """Read a whole number from nought up."""
    if not re.fullmatch(r"\d{1,6}", text.strip()):
        raise PydanticCustomError(
            "not-a-whole-number", f"`{text}` is not a whole number like 3", {"found": text}
        )
    return int(text)


def parse_yes_no(text: str) -> bool:
    """Read `yes` or `no`."""
    if text.strip() not in {"yes", "no"}:
        raise PydanticCustomError("not-yes-no", f"`{text}` must be yes or no", {"found": text})
    return text.strip() == "yes"
