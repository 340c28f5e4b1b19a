"""What a person may type for each kind of field."""

from collections.abc import Callable
from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
from pydantic_core import PydanticCustomError

from quotegen.quantity import FEET_PER_METER, Unit
from quotegen.reading.fields import text_fields as text

HALF_INCH = Fraction(1, 24)


def _code(parser: Callable[[str], object], typed: str) -> str:
    with pytest.raises(PydanticCustomError) as fault:
        parser(typed)
    return fault.value.type


@pytest.mark.parametrize(
    "typed",
    ["24 ft 6-1/2 in", "24 ft 6 1/2 in", "24ft 6.5in", "24' 6-1/2\"", "24'6-1/2\"", "24'-6 1/2\"",
     "24' - 6 1/2\"", "24’ 6 1/2”", "24′ 6½″", "24' 6 ½\"", "24' 6-1/2''", "24 feet 6.5 inches",
     "24 FT 6-1/2 IN", "24 ft. 6-1/2 in.", "294-1/2 in", '294.5"', "  24 ft   6-1/2 in  "],
)  # fmt: skip
def test_one_length_in_many_hands(typed: str):
    """Twenty-four feet six and a half is the same however it is written."""
    assert text.parse_length(typed).feet == 24 + Fraction(6) / 12 + HALF_INCH


@pytest.mark.parametrize(
    ("typed", "feet"),
    [
        ("24 ft 6 in", Fraction(49, 2)),
        ("24' 6\"", Fraction(49, 2)),
        ("24'", Fraction(24)),
        ("1 foot", Fraction(1)),
        ("5'6\"", Fraction(11, 2)),
        ("6-1/2 in", Fraction(13, 24)),
        ("1 inch", Fraction(1, 12)),
        ("1/2 in", HALF_INCH),
        ("½ in", HALF_INCH),
        (".5 ft", Fraction(1, 2)),
        ("0", Fraction(0)),
        ("0 ft", Fraction(0)),
        ("-3 ft 6 in", Fraction(-7, 2)),
        ("−3 ft", Fraction(-3)),
        ("7.5 m", Fraction(15, 2) * FEET_PER_METER),
        ("750 mm", Fraction(3, 4) * FEET_PER_METER),
        ("75 cm", Fraction(3, 4) * FEET_PER_METER),
        ("7.5m", Fraction(15, 2) * FEET_PER_METER),
    ],
)
def test_lengths_are_exact(typed: str, feet: Fraction):
    """A length is a fraction of feet that loses nothing."""
    assert text.parse_length(typed).feet == feet


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("24", "missing-unit"),
        ("6-1/2", "missing-unit"),
        ("-4.5", "missing-unit"),
        ("$24", "money-for-length"),
        ("$9.50 / ft", "money-for-length"),
        ("24 yards", "not-a-length"),
        ("24 ft 6", "not-a-length"),
        ("6 in 24 ft", "not-a-length"),
        ("24 ft 6 m", "not-a-length"),
        ("1/0 in", "not-a-length"),
        ("1e3 ft", "not-a-length"),
        ("1,200 ft", "not-a-length"),
        ("nan ft", "not-a-length"),
        ("9" * 5_000 + " ft", "not-a-length"),
        ("ft", "not-a-length"),
    ],
)
def test_what_is_no_length(typed: str, code: str):
    """A bare number is asked for its unit; money and the rest are told apart."""
    assert _code(text.parse_length, typed) == code


@pytest.mark.parametrize("typed", ["0", "0 ft", "-1 in", "0/3 in"])
def test_a_size_is_more_than_zero(typed: str):
    """Nought and less is no size of anything."""
    assert _code(text.parse_positive_length, typed) == "not-positive"


@pytest.mark.parametrize(
    "typed",
    ["24 ft x 16 ft", "24' x 16'", "24'x16'", "24 ft by 16 ft", "24 ft × 16 ft", "288 in X 16 ft"],
)
def test_sizes(typed: str):
    """Two lengths with an x or a `by` between them."""
    size = text.parse_size(typed)
    assert (size.length.ft, size.width.ft) == (24.0, 16.0)


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("24 ft", "not-a-size"),
        ("24 ft x 16 ft x 4 in", "not-a-size"),
        ("x", "not-a-size"),
        ("24 ft x", "not-a-size"),
        ("24 x 16", "missing-unit"),
        ("24 ft x 0", "not-positive"),
    ],
)
def test_what_is_no_size(typed: str, code: str):
    """It takes two lengths, each with its unit."""
    assert _code(text.parse_size, typed) == code


@pytest.mark.parametrize(
    ("typed", "amount", "unit"),
    [
        ("$9.50 / sq ft", "9.50", Unit.SQ_FT),
        ("$9.50/sq ft", "9.50", Unit.SQ_FT),
        ("$9.50 per square foot", "9.50", Unit.SQ_FT),
        ("9.50 / sq ft", "9.50", Unit.SQ_FT),
        ("$0.125 / sq ft", "0.125", Unit.SQ_FT),
        ("$4.80 / ft", "4.80", Unit.FT),
        ("$4.80 / lin ft", "4.80", Unit.FT),
        ("$58 / cu yd", "58", Unit.CU_YD),
        ("$45 / m²", "45", Unit.M2),
        ("$210 each", "210", Unit.EACH),
        ("$85 / visit", "85", Unit.VISIT),
        ("$1,680 lump", "1680", Unit.LUMP),
    ],
)
def test_rates(typed: str, amount: str, unit: Unit):
    """A price says what it is for; what was typed is kept to the digit."""
    assert text.parse_rate(typed) == text.Rate(Decimal(amount), unit)


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("$9.50", "rate-unit"),
        ("$9.50 / day", "rate-unit"),
        ("12 ft", "not-a-rate"),
        ("7 %", "not-a-rate"),
        ("$9,50 / sq ft", "not-a-rate"),
        ("$-9.50 / sq ft", "not-a-rate"),
        ("€9.50 / sq ft", "not-a-rate"),
        ("free", "not-a-rate"),
        ("$1e3 / sq ft", "not-a-rate"),
        ("$999,999,999 / sq ft", "money-too-large"),
        ("$" + "9" * 5_000 + " / sq ft", "money-too-large"),
    ],
)
def test_what_is_no_rate(typed: str, code: str):
    """A length, a share or another currency is no price."""
    assert _code(text.parse_rate, typed) == code


@pytest.mark.parametrize(
    ("typed", "amount"), [("$2,400", "2400"), ("2400", "2400"), ("$0.50", "0.50")]
)
def test_amounts(typed: str, amount: str):
    """A sum of money for the whole."""
    assert text.parse_amount(typed) == Decimal(amount)


@pytest.mark.parametrize("typed", ["24 ft", "$24.", "$1,00", "-5", "two", "$2,400 / visit"])
def test_what_is_no_amount(typed: str):
    """A sum of money has no unit and no sign."""
    assert _code(text.parse_amount, typed) == "not-money"


@pytest.mark.parametrize(
    ("typed", "amount", "unit"),
    [
        ("yes", None, None),
        ("Yes", None, None),
        ("2", Decimal(2), Unit.EACH),
        ("2 each", Decimal(2), Unit.EACH),
        ("18 ft", Decimal(18), Unit.FT),
        ("6.5 cu yd", Decimal("6.5"), Unit.CU_YD),
        ("6 m3", Decimal(6), Unit.M3),
    ],
)
def test_counts(typed: str, amount: Decimal | None, unit: Unit | None):
    """`yes` takes what the takeoff gives; a number has its unit, or counts."""
    assert text.parse_count(typed) == text.Count(amount, unit)


@pytest.mark.parametrize("typed", ["no", "0", "0 ft", "-2", "two", "18 yards", "18 ft 6 in", "1/2"])
def test_what_is_no_count(typed: str):
    """What is not wanted is left out, so `no` and zero are refused."""
    assert _code(text.parse_count, typed) == "not-a-count"


@pytest.mark.parametrize(
    ("typed", "share"),
    [("7 %", Fraction(7, 100)), ("7%", Fraction(7, 100)), ("2.5 %", Fraction(1, 40)),
     ("0 %", Fraction(0)), ("100 %", Fraction(1))],
)  # fmt: skip
def test_shares(typed: str, share: Fraction):
    """A share is typed in per cent and held exactly."""
    assert text.parse_share(typed) == share


@pytest.mark.parametrize(
    "typed", ["7", "0.07", "101 %", "100.1 %", "-1 %", "% 7", "9" * 5_000 + "%"]
)
def test_what_is_no_share(typed: str):
    """Without the sign, or beyond the whole, it is no share."""
    assert _code(text.parse_share, typed) == "not-a-share"


@pytest.mark.parametrize(
    ("typed", "drop_ft"),
    [("1/4 in per ft", Fraction(1, 48)), ('1/4" per ft', Fraction(1, 48)),
     ("1/4 in / ft", Fraction(1, 48)), ("1/4 in per foot", Fraction(1, 48)),
     ("2 %", Fraction(1, 50)), ("2%", Fraction(1, 50))],
)  # fmt: skip
def test_slopes(typed: str, drop_ft: Fraction):
    """A fall is the drop in one foot of run."""
    assert text.parse_slope(typed).feet == drop_ft


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("1/4 in", "not-a-slope"),
        ("1/4", "missing-unit"),
        ("1:50", "not-a-slope"),
        ("gentle", "not-a-slope"),
        ("per ft", "not-a-slope"),
        ("1/4 per ft", "missing-unit"),
        ("0 in per ft", "not-positive"),
        ("120 %", "not-a-share"),
    ],
)
def test_what_is_no_slope(typed: str, code: str):
    """A fall needs both of its lengths, or the sign."""
    assert _code(text.parse_slope, typed) == code


@pytest.mark.parametrize(
    ("parser", "typed", "value"),
    [
        (text.parse_date, "2026-05-14", date(2026, 5, 14)),
        (text.parse_date, " 2024-02-29 ", date(2024, 2, 29)),
        (text.parse_angle_deg, "90 deg", Fraction(90)),
        (text.parse_angle_deg, "-22.5°", Fraction(-45, 2)),
        (text.parse_cuyd, "0.25 cu yd", Fraction(1, 4)),
        (text.parse_cuyd, "1/4 cu yd", Fraction(1, 4)),
        (text.parse_whole, "0", 0),
        (text.parse_whole, " 4500 ", 4500),
        (text.parse_days, "999", 999),
        (text.parse_yes_no, "yes", True),
        (text.parse_yes_no, "no", False),
    ],
)
def test_other_fields(parser: Callable[[str], object], typed: str, value: object):
    """Dates, angles, volumes, whole numbers and answers as they are typed."""
    assert parser(typed) == value


@pytest.mark.parametrize(
    ("parser", "typed", "code"),
    [
        (text.parse_date, "2026-02-30", "not-a-date"),
        (text.parse_date, "5/14/2026", "not-a-date"),
        (text.parse_date, "9999-12-31", "year-far-off"),
        (text.parse_date, "0026-05-14", "year-far-off"),
        (text.parse_angle_deg, "90", "not-an-angle"),
        (text.parse_cuyd, "0 cu yd", "not-a-volume"),
        (text.parse_cuyd, "1/0 cu yd", "not-a-volume"),
        (text.parse_cuyd, "7 cu ft", "not-a-volume"),
        (text.parse_whole, "3.5", "not-a-whole-number"),
        (text.parse_whole, "-1", "not-a-whole-number"),
        (text.parse_whole, "9" * 5_000, "not-a-whole-number"),
        (text.parse_days, "1000", "too-many-days"),
        (text.parse_yes_no, "true", "not-yes-no"),
    ],
)
def test_what_other_fields_refuse(parser: Callable[[str], object], typed: str, code: str):
    """Each says what it would have liked."""
    assert _code(parser, typed) == code


@pytest.mark.parametrize("typed", ["٣٠ ft", "３０ ft", "३० ft", "1² ft", "2 ³ ft", "2026-0６-08"])
def test_digits_are_0_to_9(typed: str):
    """A digit of another script (Unicode, category Nd) or a raised one is never read."""
    assert _code(text.number_text, typed) == "odd-digit"


@pytest.mark.parametrize("typed", ["$5 / m²", "7.5 m3", "24′ 6½″", "6 cu yd", "84 °F"])
def test_what_people_type_for_a_value(typed: str):
    """Raised units, primes and fractions of a keyboard are no odd digits."""
    assert text.number_text(typed) == typed


@pytest.mark.parametrize("typed", ["20260614", "2026-W25-1", "2026-6-14", "2026-165"])
def test_a_date_is_typed_one_way(typed: str):
    """Of what ISO 8601 allows only year-month-day with dashes is read."""
    assert _code(text.parse_date, typed) == "not-a-date"


def test_a_long_text_is_not_repeated_whole():
    """A message shows the beginning of what was typed, not a page of it."""
    with pytest.raises(PydanticCustomError) as fault:
        text.parse_date("x" * 9_000)
    assert len(str(fault.value)) < 200


def test_braces_are_text():
    """What was typed is never taken for a gap to fill."""
    with pytest.raises(PydanticCustomError) as fault:
        text.parse_length("{found} ft")
    assert "`{found} ft` is not a length" in fault.value.message()
