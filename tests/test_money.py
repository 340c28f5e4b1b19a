"""Money: Decimal from text, and the only rounding to cents."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quotegen.money import ZERO, Money, down_to_cents, parse_money, to_cents, total

AMOUNTS = st.decimals(min_value=0, max_value=1_000_000, places=6)
CENTS = st.integers(min_value=0, max_value=10**9).map(lambda cents: Money(Decimal(cents) / 100))


@pytest.mark.parametrize(
    ("amount", "up", "down"),
    [
        ("0", "0.00", "0.00"),
        ("1.004", "1.00", "1.00"),
        ("1.0049999", "1.00", "1.00"),
        ("1.005", "1.01", "1.00"),
        ("1.015", "1.02", "1.01"),
        ("1.025", "1.03", "1.02"),  # half to even would give 1.02
        ("1.0150001", "1.02", "1.01"),
        ("1.009", "1.01", "1.00"),
        ("-1.005", "-1.01", "-1.00"),  # away from zero
        ("1E+3", "1000.00", "1000.00"),
    ],
)
def test_rounding_at_and_either_side_of_half_a_cent(amount: str, up: str, down: str):
    """A line is rounded half-up; a share that must not be passed is rounded down."""
    assert str(to_cents(Decimal(amount))) == up
    assert str(down_to_cents(Decimal(amount))) == down


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("$9.50", "9.50"), ("9.50", "9.50"), ("$9,500", "9500"), ("1,234,567.89", "1234567.89"),
        ("$0.125", "0.125"), (" $3 ", "3"), ("0", "0"), ("00.10", "0.10"),
    ],
)  # fmt: skip
def test_money_that_is_read(text: str, amount: str):
    """Money is read from its text, parts of a cent and all, and never passes through a float."""
    assert parse_money(text) == Decimal(amount)


@pytest.mark.parametrize(
    "text",
    ["", "$", "-3", "$-3", "1,23", "12,34,567", "1.2.3", "9.", ".50", "1e3", "$ 5", "nan", "inf",
     "5 $", "1_000", "$9,50"],
)  # fmt: skip
def test_money_that_is_not(text: str):
    """Anything but a sum of money is refused rather than guessed at."""
    assert parse_money(text) is None


@given(AMOUNTS)
def test_a_cent_is_the_most_that_rounding_moves(amount: Decimal):
    """Half-up moves by half a cent at most, and down never adds."""
    assert abs(to_cents(amount) - amount) <= Decimal("0.005")
    assert 0 <= amount - down_to_cents(amount) < Decimal("0.01")


@given(st.lists(CENTS, max_size=30))
def test_a_total_of_cents_is_exact(amounts: list[Money]):
    """A sum of cents is that many cents, in any order, and needs no rounding."""
    assert total(tuple(amounts)) == total(tuple(reversed(amounts))) == sum(amounts, ZERO)
    assert to_cents(total(tuple(amounts))) == total(tuple(amounts))


def test_nothing_adds_up_to_zero():
    """An empty sum is zero dollars and zero cents."""
    assert str(total(())) == "0.00"
