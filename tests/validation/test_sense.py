"""What is usual, against prices and sizes that residential flatwork really has. From memory.

The honest figures are what contractors say in public of such work; they are from memory. Each must
pass, and each of them with its point slipped one place must be asked about.
"""

from datetime import date
from decimal import Decimal

import pytest

from quotegen.quantity import Unit
from quotegen.reading.checks.covers import USUALLY_COVERED
from quotegen.trade.rules import load_rules
from quotegen.trade.sense import is_usual, sqft_a_person_a_day, usual_area_sqft, usual_price

ON = date(2026, 11, 25)
ALL_IN = USUALLY_COVERED


@pytest.mark.parametrize(
    ("unit", "items", "honest"),
    [
        (Unit.SQ_FT, (*ALL_IN, "broom"), ("7.00", "9.40", "14.00")),
        (Unit.SQ_FT, (*ALL_IN, "exposed_aggregate"), ("10.00", "14.20", "20.00")),
        (Unit.SQ_FT, (*ALL_IN, "stamped_pattern"), ("12.00", "18.60", "28.00")),
        (Unit.SQ_FT, ("slab", "placing"), ("3.00", "4.20", "7.00")),
        (Unit.SQ_FT, ("base",), ("1.00", "1.75", "3.00")),
        (Unit.SQ_FT, ("demolition",), ("2.00", "3.10", "6.00")),
        (Unit.FT, ("cast_edge",), ("22.00", "38.00", "60.00")),
        (Unit.FT, ("layout", "forms"), ("3.00", "4.80", "10.00")),
        (Unit.CU_YD, ("placing",), ("20.00", "35.00", "60.00")),
        (Unit.EACH, ("steps",), ("150.00", "265.00", "450.00")),
        (Unit.LUMP, ("travel",), ("85.00", "160.00", "220.00")),
        (Unit.MILE, ("travel",), ("1.10", "1.80", "3.00")),
        (Unit.HOUR, ("travel",), ("45.00", "85.00", "140.00")),
    ],
)
def test_a_point_slipped_is_asked_about(unit: Unit, items: tuple[str, ...], honest: tuple[str]):
    """Honest prices pass, and ten times or a tenth of each does not."""
    usual = usual_price(unit, items, load_rules(), ON)
    assert usual is not None
    for price in map(Decimal, honest):
        found = [is_usual(one, usual) for one in (price / 10, price, price * 10)]
        assert found == [False, True, False], price


def test_dear_and_cheap_work_is_not_asked_about():
    """A plain walk at $4 and a small stamped one at $60 are far apart, and honest."""
    for kind, price in (("broom", "4.00"), ("stamped_pattern", "60.00")):
        usual = usual_price(Unit.SQ_FT, (*ALL_IN, kind), load_rules(), ON)
        assert usual is not None
        assert is_usual(Decimal(price), usual)


def test_feet_typed_as_inches_are_asked_about():
    """A patio of 30 x 20 typed in inches is 4.2 sq ft; a landing of 4 x 4 ft and a pad pass."""
    patio, pad = (usual_area_sqft(use, load_rules(), ON) for use in ("patio", "pad"))
    assert [is_usual(Decimal(area), patio) for area in ("4.2", "16", "600", "38400")] == [
        False, True, True, False]  # fmt: skip
    assert is_usual(Decimal(9), pad)


def test_what_one_person_pours():
    """300 to 600 sq ft for each finisher (from memory) pass; 1,052 by one person do not."""
    assert 600 < sqft_a_person_a_day(load_rules(), ON) < 1052
