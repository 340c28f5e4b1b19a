"""Quantities: exact lengths, one door from float to Decimal, and the tape."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from quotegen.quantity import (
    CUFT_PER_CUYD,
    FEET_PER_METER,
    M3_PER_CUYD,
    SQFT_PER_M2,
    Length,
    decimal_from_text,
    decimal_of,
    decimal_places,
    mixed_number,
    nearest,
    rounded,
    tape,
)


def test_conversions_against_pint():
    """The factors are those of pint, a library of units that shares no code with ours."""
    units: Any = pint.UnitRegistry()
    assert float(FEET_PER_METER) == pytest.approx(units("1 m").to("ft").magnitude, rel=1e-12)
    assert float(SQFT_PER_M2) == pytest.approx(units("1 m**2").to("ft**2").magnitude, rel=1e-12)
    assert float(M3_PER_CUYD) == pytest.approx(units("1 yd**3").to("m**3").magnitude, rel=1e-12)
    assert units("1 yd**3").to("ft**3").magnitude == pytest.approx(CUFT_PER_CUYD)


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [
        (41.05, 1, "41.1"),  # held as 41.04999..., written as 41.05
        (41.0499, 1, "41.0"),
        (Fraction(1, 3), 2, "0.33"),
        (Fraction(1, 8), 2, "0.13"),
        (Fraction(-1, 8), 2, "-0.12"),  # half-up goes up, for a fraction
        (Decimal("2.675"), 2, "2.68"),
        (Decimal("2.665"), 2, "2.67"),
        (1052.15, 1, "1052.2"),
        (0.0, 1, "0.0"),
        (Fraction(5), 0, "5"),
        (Decimal("1E+2"), 0, "100"),
    ],
)
def test_rounded(value: float | Fraction | Decimal, places: int, text: str):
    """Half goes up, and a float that stands for a typed number rounds as that number."""
    assert str(rounded(value, places)) == text


@given(st.integers(min_value=0, max_value=10**7))
def test_a_float_of_a_short_decimal_rounds_as_written(thousandths: int):
    """However a number with three decimals is held, it rounds as the same digits would."""
    written = Decimal(thousandths) / 1000
    assert rounded(float(written), 2) == rounded(written, 2) == rounded(Fraction(written), 2)


@pytest.mark.parametrize(
    ("feet", "parts", "text"),
    [
        ("24", 16, "24'-0\""),
        ("24.5", 16, "24'-6\""),
        ("24.541666666667", 16, "24'-6 1/2\""),
        ("0", 16, '0"'),
        ("0.5", 16, '6"'),
        ("0.0052083333", 16, '1/16"'),
        ("0.0026", 16, '0"'),  # less than half a sixteenth
        ("0.00261", 16, '1/16"'),
        ("11.999", 16, "12'-0\""),  # carried into the next foot
        ("0.999", 16, "1'-0\""),
        ("3.28084", 4, "3'-3 1/4\""),
        ("-2.25", 16, "-2'-3\""),
        ("-0.02083333333", 16, '-1/4"'),
    ],
)
def test_tape(feet: str, parts: int, text: str):
    """A length is printed as a tape reads it, carried over at a whole inch and a whole foot."""
    assert tape(Decimal(feet), parts=parts) == text


@pytest.mark.parametrize("feet", [45.25, 24.541666666666668, 0.1, 100.03125])
def test_tape_reads_a_float_like_its_digits(feet: float):
    """A float and the decimal with the same digits print alike."""
    assert tape(feet) == tape(Decimal(repr(feet)))


@given(st.integers(min_value=0, max_value=16 * 12 * 200))
def test_the_tape_loses_no_sixteenth(sixteenths: int):
    """What is a whole number of sixteenths is printed exactly, and can be read back."""
    printed = tape(Fraction(sixteenths, 16 * 12))
    feet, _, inches = printed.rpartition("'-")
    read = Fraction(feet or 0) * 12 + sum(Fraction(part) for part in inches.strip('"').split())
    assert read * 16 == sixteenths


@pytest.mark.parametrize(
    ("value", "text"),
    [("0", "0"), ("12", "12"), ("1/4", "1/4"), ("9/8", "1-1/8"), ("31/4", "7-3/4"), ("2/3", "2/3")],
)
def test_mixed_number(value: str, text: str):
    """What is more than one is printed as a whole number and a fraction, never as `9/8`."""
    assert mixed_number(Fraction(value)) == text
    assert mixed_number(Fraction(value), between=" ") == text.replace("-", " ")


@pytest.mark.parametrize(
    ("value", "parts", "found"),
    [("0.25", 16, "1/4"), ("1/32", 16, "1/16"), ("1/33", 16, "0"), ("1.13", 8, "9/8")],
)
def test_nearest(value: str, parts: int, found: str):
    """A number is rounded half-up to the nearest part of one."""
    assert nearest(Fraction(value), parts) == Fraction(found)


@pytest.mark.parametrize(("value", "places"), [("2", 0), ("2.50", 1), ("18.25", 2), ("200", 0)])
def test_decimal_places(value: str, places: int):
    """A value needs as many decimals as it has without the zeros at its end."""
    assert decimal_places(Decimal(value)) == places


@pytest.mark.parametrize("text", ["", "1e3", "nan", "1.", ".5", "1,000", "--1", "0x10"])
def test_plain_numbers_only(text: str):
    """Anything but a plain number is refused."""
    with pytest.raises(ValueError, match="plain number"):
        decimal_from_text(text)


def test_a_length_is_exact():
    """A third of a foot stays a third, and inches and meters are worked out from it exactly."""
    third = Length.of_inches(Fraction(4))
    assert third.feet == Fraction(1, 3)
    assert third.inches == 4
    assert third.meters == Fraction("0.1016")
    assert decimal_of(Fraction(1, 4)) == Decimal("0.25")
