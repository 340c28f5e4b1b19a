"""Sales tax against the rounding rule of the Streamlined states, and a posted bill with tax.

RI Gen. Laws 44-18.1-25: worked out to the third decimal, and rounded up when that is over four;
for each item or for the invoice, at the seller's choice.
"""

from decimal import Decimal

import pytest

from tests.pricing import shop
from tests.validation.test_prices import TestCafePatio as CafePatio
from tests.world import EXAMPLES

FREE = {"plain": {**shop.PLAIN, "rate": "$0.00 / sq ft"}}


def _taxed(tmp_path, rates, rate: str, rounding: str):
    tax = {"id": "sales", "name": "Sales tax", "rate": rate, "covers": ["everything"],
           "round": rounding}  # fmt: skip
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    company += shop.as_yaml({"tax": [tax]})
    return shop.quote(tmp_path, shop.job(), company=company, rate_book=shop.book(rates, FREE))


@pytest.mark.parametrize(
    ("amount", "rate", "tax"),
    [
        ("19.99", "7 %", "1.40"),  # 1.3993
        ("10.10", "5.5 %", "0.56"),  # 0.5555
        ("1234.50", "7.25 %", "89.50"),  # 89.50125
        ("24175.00", "8.875 %", "2145.53"),  # 2,145.53125
        ("0.64", "7 %", "0.04"),  # 0.0448: cut at the third decimal it is 0.044
    ],
)
def test_the_tax_of_one_amount(tmp_path, amount: str, rate: str, tax: str):
    """Half-up on the full value gives the cents of the rule, whichever way the seller chose."""
    for rounding in ("each line", "whole invoice"):
        priced = _taxed(tmp_path, {"work": shop.rate(f"${amount} lump")}, rate, rounding)
        assert str(shop.by_id(priced.chosen)["tax.sales"].amount) == tax
        assert priced.chosen.total == Decimal(amount) + Decimal(tax)
        assert sum(payment.amount for payment in priced.payments) == priced.chosen.total


@pytest.mark.parametrize(("rounding", "tax"), [("each line", "0.18"), ("whole invoice", "0.19")])
def test_by_item_or_by_invoice(tmp_path, rounding: str, tax: str):
    """Three items of $1.07 at 6 %: 3 x 0.06, or 6 % of 3.21."""
    rates = {name: shop.rate("$1.07 lump") for name in ("one", "two", "three")}
    priced = _taxed(tmp_path, rates, "6 %", rounding)
    assert str(shop.by_id(priced.chosen)["tax.sales"].amount) == tax


def test_the_cafe_patio_end_to_end(tmp_path):
    """S18 from the shapes to the bill: "The owners of a restaurant", answer 953848, wyzant.com.

    Our order: the quantity once to 0.01; 10 % for cutting, not rounded again; the line to the
    cent; the tax of each line to the cent. 54.14 x 1.1 x 52.95 = 3,153.38 and tax 409.94;
    34.83 x 1.1 x 15.50 = 593.85 and tax 77.20; in all 4,234.37. The source has 4,234.15: its
    quantities are rounded to 0.001, which is the whole difference of 22 cents.
    """
    rates = {"edging": shop.rate("$4.7244 / ft", "forms", of="outer edge", cutting="10 %"),
             "stone": shop.rate("$4.919216 / sq ft", cutting="10 %")}  # fmt: skip
    patio = {"id": "cafe", "use": "patio", "add": [dict(s) for s in CafePatio.PATIO]}
    tax = {"id": "sales", "name": "Sales tax", "rate": "13 %", "covers": ["everything"],
           "round": "each line"}  # fmt: skip
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    company += shop.as_yaml({"tax": [tax]})
    priced = shop.quote(tmp_path, shop.job(patio, units="metric"), company=company,
                        rate_book=shop.book(rates, FREE))  # fmt: skip
    lines = shop.by_id(priced.chosen)
    assert (lines["stone.cafe"].quantity, lines["edging.cafe"].quantity) == (
        Decimal("59.554"), Decimal("38.313"))  # fmt: skip
    assert (lines["stone.cafe"].amount, lines["edging.cafe"].amount) == (
        Decimal("3153.38"), Decimal("593.85"))  # fmt: skip
    assert lines["tax.sales"].amount == Decimal("409.94") + Decimal("77.20")
    assert priced.chosen.total == Decimal("4234.37")
    assert abs(priced.chosen.total - Decimal("4234.15")) == Decimal("0.22")
