"""Revised payments: what is already paid stays paid, and a deposit is not raised."""

import pytest

from tests.pricing import shop
from tests.pricing.signed import BOOK, contract, measured


def test_paid_stays_paid(tmp_path):
    """A payment that came in keeps its sum, even where it is not what was asked."""
    made = contract(
        tmp_path,
        paid=[{"payment": "deposit", "date": "2026-05-20", "amount": "$95.00"}],
        measured=measured("300"),
    )
    assert made.remeasure is not None
    first = made.remeasure.payments[0]
    assert (str(first.after), str(first.paid)) == ("95.00", "95.00")
    assert (str(made.paid), str(made.balance)) == ("95.00", "1305.00")


def test_a_deposit_is_not_raised(tmp_path):
    """The total rises by $300; the unpaid deposit stays at its $110.00."""
    adjusted = contract(tmp_path, measured=measured("300")).remeasure
    assert adjusted is not None
    assert str(adjusted.payments[0].after) == "110.00"


def test_a_deposit_may_fall(tmp_path):
    """A smaller job asks for a smaller deposit."""
    adjusted = contract(tmp_path, measured=measured("100")).remeasure
    assert adjusted is not None
    assert str(adjusted.payments[0].after) == "80.00"


BY_SUM = shop.company(payments=[
    {"id": "deposit", "when": "when you sign", "amount": "$800"},
    {"id": "pour", "when": "at the pour", "share": "20 %"},
    {"id": "last", "when": "at the end"},
])  # fmt: skip


@pytest.mark.parametrize(
    ("area", "after"),
    [
        ("200", ["800.00", "60.00", "240.00"]),  # $1,100 as quoted: 20 % of 300
        ("300", ["800.00", "120.00", "480.00"]),  # $1,400: 600 in the proportion of 60 to 240
        ("100", ["800.00", "0.00", "0.00"]),  # $800: all of it is the deposit
        ("95", ["785.00", "0.00", "0.00"]),  # $785: the price is less than the deposit
    ],
)
def test_a_deposit_as_a_sum(tmp_path, area: str, after: list[str]):
    """A sum at signing is not raised, and falls only where the whole price falls below it."""
    made = shop.results(tmp_path, shop.job(measured=measured(area)), rate_book=BOOK,
                        company=BY_SUM).contract.remeasure  # fmt: skip
    assert made is not None
    assert [str(payment.after) for payment in made.payments] == after
    assert sum(payment.after for payment in made.payments) == made.revised_total
