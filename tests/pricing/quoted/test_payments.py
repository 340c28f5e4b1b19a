"""Payments: shares rounded down, the last whatever remains, together the total."""

from decimal import Decimal
from pathlib import Path

import pytest
import yaml

from quotegen.money import ZERO
from quotegen.pricing.quoted.records import PricedPayment
from tests.pricing import shop
from tests.world import EXAMPLES


def _payments(folder: Path, total: str, *shares: str) -> tuple[PricedPayment, ...]:
    company = yaml.safe_load((EXAMPLES / "company.yaml").read_text(encoding="utf-8"))
    company["closed"] = []
    company["payments"] = [
        *({"id": f"p{n}", "when": "then", "share": share} for n, share in enumerate(shares)),
        {"id": "last", "when": "at the end"},
    ]
    free = {"plain": {**shop.PLAIN, "rate": "$0 / sq ft"}}
    rates = {"all": shop.rate(f"${total} lump")}
    return shop.quote(folder, shop.job(), rate_book=shop.book(rates, free),
                      company=shop.as_yaml(company)).payments  # fmt: skip


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


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_payments_of_the_examples(job_file: Path):
    """The payments of each example add up to its total, in the company's order."""
    results = shop.example_results(job_file)
    paid = results.quote.payments
    assert sum((payment.amount for payment in paid), ZERO) == results.quote.chosen.total
    assert [p.id for p in paid] == [p.id for p in results.job.company.payments]
    assert all(payment.amount > 0 for payment in paid)
