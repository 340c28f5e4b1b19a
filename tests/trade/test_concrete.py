"""Volume and order quantities beyond the published cases."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.trade import concrete
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)
QUARTER = Fraction(1, 4)


@pytest.mark.parametrize(
    ("net", "order"),
    [("8", "8"), ("8.0001", "8.25"), ("7.9999", "8"), ("0", "0"), ("0.01", "0.25")],
)
def test_an_order_rounds_up_once(net: str, order: str) -> None:
    """A quantity on a step stays there, and anything over goes to the next."""
    assert concrete.order_cuyd(Fraction(net), Fraction(0), QUARTER) == Fraction(order)


def test_an_allowance_that_lands_on_a_step_stays() -> None:
    """The allowance is added before rounding: 7.5 and a tenth is 8.25 exactly."""
    assert concrete.order_cuyd(Fraction("7.5"), Fraction(1, 10), QUARTER) == Fraction("8.25")


def test_volume_stays_exact() -> None:
    """Three times a third of a yard is a yard, with nothing lost."""
    third = concrete.net_volume_cuyd(Decimal(27), Fraction(4), RULES, ON)
    assert third == Fraction(1, 3)
