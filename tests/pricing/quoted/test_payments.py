"""Payments: a sum, shares rounded down, the last whatever remains, together the total."""

from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.explain.results import Results
from quotegen.money import ZERO
from quotegen.pricing.quoted.records import PricedPayment
from tests.pricing import shop
from tests.pricing.calculator import agrees
from tests.world import write_world

FREE = {"plain": {**shop.PLAIN, "rate": "$0 / sq ft"}}
BY_SUM = [
    {"id": "deposit", "when": "when you sign", "amount": "$1,000"},
    {"id": "pour", "when": "at the pour", "share": "60 %"},
    {"id": "last", "when": "at the end"},
]


def _payments(folder: Path, total: str, *shares: str) -> tuple[PricedPayment, ...]:
    payments = [
        *({"id": f"p{n}", "when": "then", "share": share} for n, share in enumerate(shares)),
        {"id": "last", "when": "at the end"},
    ]
    rates = {"all": shop.rate(f"${total} lump")}
    return shop.quote(folder, shop.job(), rate_book=shop.book(rates, FREE),
                      company=shop.company(payments=payments)).payments  # fmt: skip


@pytest.mark.parametrize(
    ("total", "shares", "amounts"),
    [
        ("1000.00", ["10 %", "40 %", "35 %"], ["100.00", "400.00", "350.00", "150.00"]),
        ("1000.01", ["10 %", "40 %"], ["100.00", "400.00", "500.01"]),  # 100.001 and 400.004
        ("999.99", ["10 %"], ["99.99", "900.00"]),  # 99.999 goes down, not up to 100.00
        ("999.90", ["10 %"], ["99.99", "899.91"]),
        ("1000.00", ["33.3 %", "33.3 %"], ["333.00", "333.00", "334.00"]),
        ("0.05", ["50 %"], ["0.02", "0.03"]),
        ("0.01", ["99 %"], ["0.00", "0.01"]),
        ("23714.19", [], ["23714.19"]),
        ("100.00", ["0 %"], ["0.00", "100.00"]),
    ],
)
def test_shares_at_and_either_side_of_a_cent(
    tmp_path, total: str, shares: list[str], amounts: list[str]
):
    """A share goes down to the cent, so a deposit never passes it; the rest comes last."""
    paid = _payments(tmp_path, total, *shares)
    assert [str(payment.amount) for payment in paid] == amounts
    assert sum((payment.amount for payment in paid), ZERO) == Decimal(total)
    assert paid[-1].share is None


@pytest.mark.parametrize(
    ("total", "amounts"),
    [
        ("12000.00", ["1000.00", "6600.00", "4400.00"]),  # 60 % of 11000
        ("2500.00", ["1000.00", "900.00", "600.00"]),
        ("2499.99", ["1000.00", "899.99", "600.00"]),  # 899.994 goes down
        ("1000.01", ["1000.00", "0.00", "0.01"]),
        ("1000.00", ["1000.00", "0.00", "0.00"]),
        ("640.50", ["640.50", "0.00", "0.00"]),  # a job smaller than the deposit
    ],
)
def test_a_deposit_as_a_sum(tmp_path, total: str, amounts: list[str]):
    """$1,000 at signing, 60 % of what it leaves at the pour, then the rest."""
    paid = _of_a_sum(tmp_path, total).quote.payments
    assert [str(payment.amount) for payment in paid] == amounts
    assert sum((payment.amount for payment in paid), ZERO) == Decimal(total)


@pytest.mark.parametrize("total", ["12000.00", "2499.99", "640.50"])
def test_the_working_of_a_sum(tmp_path, total: str):
    """A pocket calculator comes to each payment, also where the price is less than the deposit."""
    agrees(_of_a_sum(tmp_path, total))


@pytest.mark.parametrize(("total", "warned"), [("10000.00", False), ("9999.99", True)])
def test_the_cap_of_a_state_sees_the_sum(tmp_path, total: str, *, warned: bool):
    """California allows $1,000 or 10 %, whichever is less (B&P 7159.5): $1,000 needs $10,000."""
    site = {"address": "1 Test Lane", "town": "Harrow Bend", "state": "CA"}
    book = shop.book({"all": shop.rate(f"${total} lump")}, FREE)
    path = write_world(tmp_path, shop.job(site=site), rate_book=book,
                       company=shop.company(payments=BY_SUM))  # fmt: skip
    assert ("deposit-cap" in {one.code for one in shop.faults(path)}) is warned


def _of_a_sum(folder: Path, total: str) -> Results:
    book = shop.book({"all": shop.rate(f"${total} lump")}, FREE)
    company = shop.company(payments=BY_SUM)
    return shop.results(folder, shop.job(), rate_book=book, company=company)


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_payments_of_the_examples(job_file: Path):
    """The payments of each example add up to its total, in the company's order."""
    results = shop.example_results(job_file)
    paid = results.quote.payments
    assert sum((payment.amount for payment in paid), ZERO) == results.quote.chosen.total
    assert [p.id for p in paid] == [p.id for p in results.job.company.payments]
    assert all(payment.amount > 0 for payment in paid)
