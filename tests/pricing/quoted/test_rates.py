"""Rates: the price by thickness, the metric rate, what moves a line, and how much there is."""

from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.pricing.quoted.rates import basis_of, rate_at, shown_rate
from quotegen.quantity import METRIC, Length, Unit, Units
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.rate_book import Basis, BookRate
from tests.pricing.shop import (
    FANCY,
    PLAIN,
    RINSE_AND_FILM,
    book,
    by_id,
    job,
    placement,
    quote,
    rate,
)

STEPS = BookRate.model_validate({
    "name": "Concrete", "covers": ["slab"],
    "by_thickness": [
        {"thickness": "3-1/2 in", "rate": "$3.85 / sq ft"},
        {"thickness": "4 in", "rate": "$4.20 / sq ft"},
        {"thickness": "4-3/4 in", "rate": "$4.95 / sq ft"},
    ],
})  # fmt: skip

COLD = {"cold": rate("$100 lump", "curing", season={"first": "11-15", "last": "03-15"})}

SQUARE = Fraction("0.09290304")  # m2 in a sq ft, 0.3048 x 0.3048
FOOT = Fraction("0.3048")  # m
YARD = Fraction("0.764554857984")  # m3 in a cu yd, 0.9144 cubed


@pytest.mark.parametrize(
    ("inches", "price"),
    [
        ("3", "3.85"),  # thinner than every step: the first
        ("3-7/16", "3.85"),
        ("3-1/2", "3.85"),
        ("3-9/16", "3.85"),
        ("3-15/16", "3.85"),
        ("4", "4.20"),
        ("4-1/16", "4.20"),
        ("4-11/16", "4.20"),
        ("4-3/4", "4.95"),
        ("4-13/16", "4.95"),
        ("12", "4.95"),  # thicker than every step: the last
    ],
)
def test_price_by_thickness_at_and_either_side_of_each_step(inches: str, price: str):
    """A slab takes the thickest step that is not thicker than it."""
    whole, _, part = inches.partition("-")
    thickness = Length.of_inches(Fraction(whole) + Fraction(part or "0"))
    assert rate_at(STEPS, thickness).amount == Decimal(price)


def test_without_a_thickness_the_first_step_counts():
    """A line for the whole job has no thickness, and takes the first step."""
    assert rate_at(STEPS, None).amount == Decimal("3.85")


@pytest.mark.parametrize(
    ("millimeters", "price"), [("100", "3.85"), ("101", "3.85"), ("102", "4.20")]
)
def test_a_metric_slab_is_compared_exactly(millimeters: str, price: str):
    """100 mm is less than 4 inches (101.6 mm), so it takes the step below."""
    meters = Fraction(millimeters) / 1000
    assert rate_at(STEPS, Length(meters / FOOT)).amount == Decimal(price)


@pytest.mark.parametrize(
    ("price", "unit", "metric_price", "metric_unit"),
    [
        ("9.50", Unit.SQ_FT, "102.26", Unit.M2),  # 9.50 x 10.76391 = 102.2571
        ("1.35", Unit.SQ_FT, "14.53", Unit.M2),  # 14.5313
        ("4.80", Unit.FT, "15.75", Unit.M),  # 4.80 x 3.28084 = 15.7480
        ("58", Unit.CU_YD, "75.86", Unit.M3),  # 58 x 1.307951 = 75.8611
        ("85", Unit.VISIT, "85", Unit.VISIT),
        ("265", Unit.EACH, "265", Unit.EACH),
        ("180", Unit.LUMP, "180", Unit.LUMP),
    ],
)
def test_a_metric_rate_is_converted_once_to_the_cent(
    price: str, unit: Unit, metric_price: str, metric_unit: Unit
):
    """A price by area, length or volume is converted and rounded; any other stays."""
    shown = shown_rate(Rate(Decimal(price), unit), Units.METRIC)
    assert (str(shown.amount), shown.unit) == (metric_price, metric_unit)
    assert shown_rate(Rate(Decimal(price), unit), Units.US) == Rate(Decimal(price), unit)


@pytest.mark.parametrize(
    ("unit", "size"), [(Unit.SQ_FT, SQUARE), (Unit.FT, FOOT), (Unit.CU_YD, YARD)]
)
def test_the_metric_rate_is_the_book_rate_to_half_a_cent(unit: Unit, size: Fraction):
    """Turned back, a metric rate differs from the book's by half a cent for a unit at most."""
    for cents in range(1, 5000, 37):
        price = Decimal(cents) / 100
        shown = shown_rate(Rate(price, unit), Units.METRIC)
        assert shown.unit is METRIC[unit]
        assert abs(Fraction(shown.amount) - Fraction(price) / size) <= Fraction(1, 200)


@pytest.mark.parametrize(
    ("typed", "unit", "basis"),
    [
        ("$1 / sq ft", Unit.SQ_FT, Basis.MEASURED),
        ("$1 / ft", Unit.FT, Basis.MEASURED),
        ("$1 / cu yd", Unit.CU_YD, Basis.MEASURED),
        ("$1 / cu yd", Unit.M3, Basis.MEASURED),
        ("$1 / visit", Unit.VISIT, Basis.FIXED),
        ("$1 each", Unit.EACH, Basis.FIXED),
        ("$1 lump", Unit.LUMP, Basis.FIXED),
    ],
)
def test_what_is_measured_in_the_forms_moves(typed: str, unit: Unit, basis: Basis):
    """A price by area, length or volume follows the forms, and the rest is fixed."""
    assert basis_of(BookRate.model_validate(rate(typed)), unit) is basis


@pytest.mark.parametrize("basis", Basis)
def test_the_book_may_say_another_basis(basis: Basis):
    """A basis in the book counts before the usual one, for an allowance above all."""
    said = BookRate.model_validate(rate("$260 lump", basis=basis.value))
    assert basis_of(said, Unit.LUMP) is basis


class TestWhereARateApplies:
    """A rate may be for some uses, some reinforcement, or some finishes only."""

    def _ids(self, tmp_path, rates, *placements, finish="plain", **more) -> set[str]:
        finishes = {"plain": PLAIN, "fancy": FANCY}
        rate_book = book({**RINSE_AND_FILM, **rates}, finishes)
        return set(by_id(quote(tmp_path, job(*placements, finish=finish, **more),
                               rate_book=rate_book).chosen))  # fmt: skip

    def test_uses(self, tmp_path):
        """A rate with `uses` is on the placements of that use and no other."""
        drive = placement("10 ft x 10 ft", "drive", at="30 ft", use="drive")
        found = self._ids(tmp_path, {"edge": rate("$1 / sq ft", uses=["drive"])},
                          placement("20 ft x 10 ft"), drive)  # fmt: skip
        assert found == {"edge.drive", "plain.patio", "plain.drive"}

    def test_uses_of_a_lump(self, tmp_path):
        """A lump for a use is charged once when there is such a placement, and else not."""
        rates = {"mats": rate("$50 lump", uses=["drive"])}
        drive = placement("10 ft x 10 ft", "drive", use="drive")
        assert self._ids(tmp_path, rates, drive) == {"mats", "plain.drive"}
        assert self._ids(tmp_path, rates) == {"plain.patio"}

    def test_reinforcement(self, tmp_path):
        """A rate with `reinforcement` is on the placements that have it."""
        rates = {"steel": rate("$1 / sq ft", "reinforcement", reinforcement="bars"),
                 "fiber": rate("$2 / sq ft", "reinforcement", reinforcement="fiber")}  # fmt: skip
        barred = placement("10 ft x 10 ft", "pad", at="30 ft", reinforcement="bars")
        found = self._ids(tmp_path, rates, placement("20 ft x 10 ft"), barred)
        assert found == {"fiber.patio", "steel.pad", "plain.patio", "plain.pad"}

    def test_with_finish(self, tmp_path):
        """What a finish brings comes with it and goes with it."""
        assert self._ids(tmp_path, {}) == {"plain.patio"}
        assert self._ids(tmp_path, {}, finish="fancy") == {
            "rinse.patio", "film.patio", "fancy.patio"}  # fmt: skip

    def test_if_found_is_no_part_of_the_price(self, tmp_path):
        """A price for what may lie in the ground is no line of the quote."""
        rates = {"soft": rate("$96 / cu yd", applies="if found")}
        assert self._ids(tmp_path, rates) == {"plain.patio"}

    def test_an_edge_that_is_not_there_has_no_line(self, tmp_path):
        """Nought feet of pool edge make no line."""
        rates = {"coping": rate("$38 / ft", "cast_edge", of="pool edge")}
        assert self._ids(tmp_path, rates) == {"plain.patio"}


@pytest.mark.parametrize(
    ("start", "applies"),
    [
        ("2026-11-14", False),
        ("2026-11-15", True),
        ("2026-12-31", True),
        ("2027-03-15", True),
        ("2027-03-16", False),
    ],
)
def test_a_season_over_new_year(tmp_path, start: str, applies: bool):
    """Both ends of a season are in it; the day is the one on which the work begins."""
    priced = quote(tmp_path, job(start=start), rate_book=book(COLD))
    assert ("cold" in by_id(priced.chosen)) == applies
