"""What is usual: sums of what is paid for, and the ends of each range."""

from datetime import date
from decimal import Decimal

import pytest

from quotegen.quantity import Unit
from quotegen.trade.rules import load_rules
from quotegen.trade.sense import (
    is_usual,
    lacks_area_code,
    more_than_due,
    usual_material,
    usual_price,
)

ON = date(2026, 5, 14)


def test_a_price_for_several_items_is_held_against_their_sum():
    """Stone at 1.70 and concrete at 4.00 are 5.70: a fifth is 1.14, five times 28.50."""
    usual = usual_price(Unit.SQ_FT, ("base", "slab"), load_rules(), ON)
    assert usual is not None
    assert (usual.least, usual.most) == (Decimal("1.14"), Decimal("28.50"))
    assert [is_usual(Decimal(one), usual) for one in ("1.13", "1.14", "28.50", "28.51")] == [
        False, True, True, False]  # fmt: skip


@pytest.mark.parametrize(
    ("unit", "item"), [(Unit.SQ_FT, "private_lines"), (Unit.FT, "wash"), (Unit.M2, "slab")]
)
def test_what_nobody_knows_is_not_judged(unit: Unit, item: str):
    """An item that has no common price by a unit has no range."""
    assert usual_price(unit, (item,), load_rules(), ON) is None


def test_a_check_rounded_up_is_no_mistake():
    """$1,500 for $1,467 passes; a twentieth more than is due is the end of it."""
    due, rules = Decimal(1000), load_rules()
    assert not more_than_due(Decimal(1500), Decimal(1467), rules, ON)
    assert not more_than_due(Decimal("1050.00"), due, rules, ON)
    assert more_than_due(Decimal("1050.01"), due, rules, ON)


@pytest.mark.parametrize(
    ("phone", "lacks"),
    [("555-0142", True), ("231-555-0142", False), ("(231) 555-0142 x 7", False),
     ("+47 55 50 14", False), ("on the yard sign", False)],
)  # fmt: skip
def test_seven_digits_lack_an_area_code(phone: str, lacks: bool):
    """Ten digits are a number of the North American plan, and + begins one of another country."""
    assert lacks_area_code(phone, load_rules(), ON) is lacks


@pytest.mark.parametrize(
    ("what", "honest"),
    [("strength", "4500"), ("air", "6"), ("cement", "564"), ("fiber", "1.5"), ("hardener", "60"),
     ("release", "3.5"), ("coverage", "200"), ("coats", "2"), ("load", "10"), ("allowance", "7")],
)  # fmt: skip
def test_a_material_that_is_ordered_every_day_is_usual(what: str, honest: str):
    """What examples and handbooks have passes, and twenty times as much does not."""
    usual = usual_material(f"{what}_usual", load_rules(), ON)
    assert is_usual(Decimal(honest), usual)
    assert not is_usual(20 * Decimal(honest), usual) or what == "fiber"  # of steel
