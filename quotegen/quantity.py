"""Lengths, areas and volumes: read from text, printed for people, and the one float door.

Lengths are held in feet as exact fractions, so `24' 6-1/2"` and `7.5 m` lose nothing
until geometry needs a float. Floats come back through `rounded` and nowhere else.
"""

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum
from fractions import Fraction

INCHES_PER_FOOT = 12
INCH_PARTS = 16  # the finest mark of a tape is a sixteenth
FEET_PER_METER = Fraction(10_000, 3_048)  # 1 ft = 0.3048 m exactly, international yard 1959
SQFT_PER_M2 = FEET_PER_METER**2
LEAST_AREA_SQFT = Fraction(1, 10)  # less may print as nothing, in square feet or square meters
CUFT_PER_CUYD = 27
M3_PER_CUYD = CUFT_PER_CUYD / FEET_PER_METER**3
KM_PER_MILE = Fraction(1_609_344, 1_000_000)  # 5,280 ft exactly
KG_PER_LB = Fraction(45_359_237, 100_000_000)  # international pound 1959
LB_PER_TON = 2000  # the short ton
LITRES_PER_GAL = Fraction(3_785_411_784, 1_000_000_000)  # 231 cubic inches exactly
KPA_PER_PSI = Decimal("6.894757293")  # pound force per square inch
ONE = Decimal(1)
NO_QUANTITY = Decimal(0)


class Unit(StrEnum):
    """What a price is for one of."""

    SQ_FT = "sq ft"
    FT = "ft"
    CU_YD = "cu yd"
    M2 = "m2"
    M = "m"
    M3 = "m3"
    EACH = "each"
    VISIT = "visit"
    HOUR = "hour"
    MILE = "mile"
    KM = "km"
    LUMP = "lump"


METRIC = {Unit.SQ_FT: Unit.M2, Unit.FT: Unit.M, Unit.CU_YD: Unit.M3, Unit.MILE: Unit.KM}
"""The metric unit that stands for each US one."""


class Units(StrEnum):
    """The system in which a job is shown and priced."""

    US = "us"
    METRIC = "metric"

    @property
    def area_unit(self) -> Unit:
        """What areas are shown and priced in."""
        return Unit.SQ_FT if self is Units.US else Unit.M2


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """An exact length."""

    feet: Fraction

    @classmethod
    def of_inches(cls, inches: Fraction) -> "Length":
        """Return the length of so many inches."""
        return cls(inches / INCHES_PER_FOOT)

    @property
    def inches(self) -> Fraction:
        return self.feet * INCHES_PER_FOOT

    @property
    def meters(self) -> Fraction:
        return self.feet / FEET_PER_METER

    @property
    def ft(self) -> float:
        """The length for geometry, in feet."""
        return float(self.feet)


def celsius(fahrenheit: Decimal) -> Decimal:
    """Return a temperature in °C: 32 °F is 0, and 9 °F are 5 °C."""
    return (fahrenheit - 32) * 5 / 9


def kg_per_m2(lb_per_sqft: Decimal) -> Decimal:
    """Turn pounds on a square foot into kilograms on a square meter."""
    return lb_per_sqft * decimal_of(KG_PER_LB * SQFT_PER_M2)


def decimal_from_text(text: str) -> Decimal:
    """Turn plain digits such as `0.25` into a Decimal.

    Raises:
        ValueError: the text is no plain number.
    """
    if not re.fullmatch(r"-?\d+(\.\d+)?", text.strip()):
        message = f"{text!r} is not a plain number"
        raise ValueError(message)
    return Decimal(text.strip())


def rounded(value: float | Fraction | Decimal, places: int) -> Decimal:
    """Round half-up to so many decimal places: the one door from float to Decimal.

    A float is first cut to nine decimals, so that 41.05 held as 41.04999... rounds as written.
    """
    if isinstance(value, float):
        value = Decimal(repr(value)).quantize(Decimal("1e-9"), rounding=ROUND_HALF_UP)
    if isinstance(value, Fraction):
        scaled = value * 10**places
        whole = (2 * scaled.numerator + scaled.denominator) // (2 * scaled.denominator)
        return Decimal(whole).scaleb(-places)
    return value.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)


def decimal_of(value: Fraction) -> Decimal:
    """Turn an exact fraction into a Decimal of full working precision."""
    return Decimal(value.numerator) / Decimal(value.denominator)


def decimal_places(value: Decimal) -> int:
    """Return how many decimals a value needs: none for 2, two for 18.25."""
    exponent = value.normalize().as_tuple().exponent
    return max(0, -exponent) if isinstance(exponent, int) else 0


def tape(feet: float | Fraction | Decimal, *, parts: int = INCH_PARTS) -> str:
    """Print a length as a tape reads it, such as `24'-6 1/2"`, to a sixteenth of an inch.

    A length under a foot is printed in inches alone.
    """
    exact = Fraction(feet) if not isinstance(feet, float) else Fraction(repr(feet))
    sign = "-" if exact < 0 else ""
    whole_feet, inches = divmod(nearest(abs(exact) * INCHES_PER_FOOT, parts), INCHES_PER_FOOT)
    shown = mixed_number(inches, between=" ")
    if not whole_feet:
        return f'{sign}{shown}"'
    no_inches = "0 " if 0 < inches < 1 else ""
    return f"{sign}{whole_feet}'-{no_inches}{shown}\""


def mixed_number(value: Fraction, *, between: str = "-") -> str:
    """Print a number that is not below zero with its fraction: `12`, `1/4`, `7-3/4`."""
    whole, part = divmod(value, 1)
    if not part:
        return str(whole)
    return f"{whole}{between}{part}" if whole else str(part)


def nearest(value: Fraction, parts: int = INCH_PARTS) -> Fraction:
    """Round half-up to the nearest sixteenth, or to another part of one."""
    return Fraction(
        (2 * value.numerator * parts + value.denominator) // (2 * value.denominator), parts
    )
