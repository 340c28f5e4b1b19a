"""Wording: numbers, money, dates and fixed words as a homeowner reads them."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.explain.wording import Words
from quotegen.quantity import Length, Unit, Units
from tests.explain.drawn import FONT
from tests.pricing.shop import shared


def _words(units: Units = Units.US) -> Words:
    return Words(labels=shared().content.labels, locale="en_US", units=units, font=FONT)


US, METRIC = _words(), _words(Units.METRIC)


@pytest.mark.parametrize(
    ("amount", "text", "signed"),
    [
        ("0", "$0.00", "$0.00"),
        ("0.00", "$0.00", "$0.00"),
        ("0.01", "$0.01", "+$0.01"),
        ("999.99", "$999.99", "+$999.99"),
        ("1000", "$1,000.00", "+$1,000.00"),
        ("23714.19", "$23,714.19", "+$23,714.19"),
        ("-1825.22", "−$1,825.22", "−$1,825.22"),
    ],
)
def test_money(amount: str, text: str, signed: str):
    """Money has its cents and its thousands; a difference has its sign, and zero has none."""
    assert (US.money(Decimal(amount)), US.signed_money(Decimal(amount))) == (text, signed)


@pytest.mark.parametrize(
    ("amount", "unit", "text"),
    [
        ("1.35", Unit.SQ_FT, "$1.35 / sq ft"),
        ("38", Unit.FT, "$38.00 / ft"),
        ("0.125", Unit.SQ_FT, "$0.125 / sq ft"),
        ("1.350", Unit.SQ_FT, "$1.35 / sq ft"),
        ("265", Unit.EACH, "$265.00 each"),
        ("85", Unit.VISIT, "$85.00 / visit"),
        ("102.26", Unit.M2, "$102.26 / m²"),
        ("180", Unit.LUMP, "lump sum"),
    ],
)
def test_rates(amount: str, unit: Unit, text: str):
    """A rate shows parts of a cent where it has any, and what it is for one of."""
    assert US.rate(Decimal(amount), unit) == text


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        ("1052.2", Unit.SQ_FT, "1,052.2 sq ft"),
        ("200", Unit.SQ_FT, "200.0 sq ft"),
        ("24", Unit.FT, "24.0 ft"),
        ("18.25", Unit.FT, "18.25 ft"),  # typed finer than the takeoff rounds
        ("64.8", Unit.M2, "64.80 m²"),
        ("6", Unit.M3, "6.00 m³"),
        ("5", Unit.VISIT, "5 visits"),
        ("2", Unit.EACH, "2"),
        ("2.5", Unit.EACH, "2.5"),
        ("1", Unit.LUMP, "lump sum"),
    ],
)
def test_quantities(value: str, unit: Unit, text: str):
    """A quantity is written as exactly as it is priced, so that a printed line multiplies out."""
    assert US.quantity(Decimal(value), unit) == text


@pytest.mark.parametrize(
    ("feet", "tape", "meters"),
    [
        ("45.25", "45'-3\"", "13.79 m"),
        ("24.5416666667", "24'-6 1/2\"", "7.48 m"),
        ("0.5", '6"', "0.15 m"),
        ("10.01", "10'-0\"", "3.05 m"),  # to a quarter of an inch
        ("10.02", "10'-0 1/4\"", "3.05 m"),
        ("3.2808398950", "3'-3 1/4\"", "1.00 m"),
    ],
)
def test_lengths(feet: str, tape: str, meters: str):
    """A length reads as the job's tape does: to a quarter of an inch, or a centimeter."""
    exact = Fraction(feet)
    assert (US.feet(exact), METRIC.feet(exact)) == (tape, meters)
    assert US.feet(float(exact)) == tape


def test_a_reading_is_as_it_was_typed():
    """What the tape read is told to a sixteenth, so that who measures again finds the same."""
    typed = Length(Fraction(20) + Fraction(7, 12) + Fraction(5, 8) / 12)
    assert US.length(typed) == "20'-7 5/8\""
    assert METRIC.length(typed) == "6.29 m"


@pytest.mark.parametrize(
    ("inches", "text", "metric"),
    [("4", "4 in", "102 mm"), ("4-3/4", "4-3/4 in", "121 mm"), ("1/2", "1/2 in", "13 mm")],
)
def test_depths(inches: str, text: str, metric: str):
    """A depth is in inches with a fraction, or in millimeters."""
    whole, _, part = inches.rpartition("-")
    depth = Length.of_inches(Fraction(whole or 0) + Fraction(part))
    assert (US.depth(depth), METRIC.depth(depth)) == (text, metric)


@pytest.mark.parametrize(
    ("fall", "us", "metric"),
    [(Fraction(1, 48), "1/4 in per ft", "2.1%"), (Fraction(2, 100), "1/4 in per ft", "2%"),
     (Fraction(1, 96), "1/8 in per ft", "1%")],
)  # fmt: skip
def test_slopes(fall: Fraction, us: str, metric: str):
    """A fall is in sixteenths of an inch a foot, or in per cent."""
    assert US.slope(Length(fall)) == us
    assert METRIC.slope(Length(fall)) == metric


@pytest.mark.parametrize(
    ("share", "text", "signed"),
    [
        (Fraction(0), "0%", "0%"),
        (Fraction(1, 10), "10%", "+10%"),
        (Fraction(-1, 20), "5%", "−5%"),
        (Fraction(1, 8), "12.5%", "+12.5%"),
        (Fraction(1, 3), "33.3%", "+33.3%"),
    ],
)
def test_shares(share: Fraction, text: str, signed: str):
    """A share is in per cent, to a tenth; a change has its sign."""
    assert US.percent(abs(share)) == text
    assert US.signed_percent(share) == signed


def test_dates():
    """Dates have no ambiguous numbers; a stretch of one day is that day."""
    first, last = date(2026, 6, 8), date(2026, 6, 9)
    assert US.day(first) == "June 8, 2026"
    assert US.weekday(first) == "Mon, Jun 8"
    assert US.days(first, first) == "Mon, Jun 8"
    assert US.days(first, last) == "Mon, Jun 8 – Tue, Jun 9"


def test_volumes():
    """Concrete is in cubic yards; in a metric job the yards of the ticket stand beside."""
    assert US.volume(Decimal("12.98765")) == "12.99 cu yd"
    assert METRIC.volume(Decimal("12.98765")) == "9.93 m³ (12.99 cu yd)"


def test_the_step_of_an_area():
    """The clause on measuring names the step that areas of this job are rounded to."""
    assert (US.area_step(), METRIC.area_step()) == ("0.1 sq ft", "0.01 m²")


def test_lists():
    """A list in a sentence has its commas and its `and`."""
    assert US.listing(("a", "b", "c")) == "a, b, and c"
    assert US.listing(("a",)) == "a"
    assert US.joined(("a", "b")) == "a · b"


def test_an_unknown_text_is_a_fault():
    """A text that content/ does not have is never left empty on paper."""
    with pytest.raises(LookupError, match="no_such_text"):
        US("no_such_text")


def test_a_missing_value_is_a_fault():
    """Nor is a text with a hole in it."""
    with pytest.raises(KeyError):
        US("headline", title="Patio")


def test_a_plural_is_that_of_the_language():
    """The text follows the number by the plural rules of the locale (Unicode CLDR, cardinals).

    English has two forms. In Polish 2 is `few` and 5 is `many`; what has no text of its own takes
    the one under `_other`.
    """
    labels = {"days_one": "{number} day", "days_few": "{number} few", "days_other": "{number} days"}
    english = Words(labels=labels, locale="en_US", units=Units.US, font=FONT)
    polish = Words(labels=labels, locale="pl_PL", units=Units.US, font=FONT)
    assert [english.count("days", n) for n in (0, 1, 2)] == ["0 days", "1 day", "2 days"]
    assert [polish.count("days", n) for n in (1, 2, 5)] == ["1 day", "2 few", "5 days"]
    assert english.count("days", Decimal("1.5")) == "1.5 days"
    assert english.count("days", Decimal("1.00")) == "1 day"


def test_numbers_and_dates_are_those_of_the_locale():
    """Separators, the place of the sign and the order of a date follow the locale (CLDR)."""
    german = Words(labels={}, locale="de_DE", units=Units.US, font=FONT)
    assert german.plain_number(Decimal("1234.5")) == "1.234,5"
    assert german.percent(Fraction(1, 8)) == "12,5\u00a0%"
    assert german.weekday(date(2026, 6, 9)) == "Di., 9. Juni"
    assert US.percent(Fraction(1, 8)) == "12.5%"
    assert US.weekday(date(2026, 6, 9)) == "Tue, Jun 9"
    assert US.day_of_year(date(2024, 11, 15)) == "November 15"
