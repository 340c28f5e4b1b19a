"""The rounding: what makes a total round, after the taxes and itself untaxed."""

import pytest

from tests.pricing import shop
from tests.pricing.calculator import agrees

FREE = {"plain": {**shop.PLAIN, "rate": "$0 / sq ft"}}


def _quote(tmp_path, price: str, step: str, **more):
    book = shop.book({"all": shop.rate(f"${price} lump")}, FREE)
    return shop.quote(tmp_path, shop.job(), rate_book=book,
                      company=shop.company(round_total_to=step, **more))  # fmt: skip


@pytest.mark.parametrize(
    ("price", "step", "rounding"),
    [
        ("1234.56", "$10", "-4.56"),
        ("1235.00", "$10", "5.00"),  # just half a step goes up
        ("1234.99", "$10", "-4.99"),
        ("1240.00", "$10", None),  # round already
        ("1234.50", "$1", "0.50"),
        ("1234.49", "$1", "-0.49"),
        ("1249.99", "$100", "-49.99"),
        ("1250.00", "$100", "50.00"),
        ("1225.00", "$50", "25.00"),
        ("49.99", "$100", None),  # it would be nothing, and a price of nothing is none
        ("50.00", "$100", "50.00"),
    ],
)
def test_to_the_nearest_step(tmp_path, price: str, step: str, rounding: str | None):
    """At and either side of the half, in a line of its own that the total is the sum with."""
    chosen = _quote(tmp_path, price, step).chosen
    assert shop.amounts(chosen).get("rounding") == rounding
    assert chosen.total == sum(line.amount for line in chosen.lines)


def test_what_is_paid_is_what_is_round(tmp_path):
    """1234.56 and 8.25 % tax of 101.85 are 1336.41; 1340 is paid, and no tax is on the 3.59."""
    priced = _quote(tmp_path, "1234.56", "$10", tax=[shop.tax("8.25 %", "everything")])
    found = shop.amounts(priced.chosen)
    assert (found["tax.s"], found["rounding"]) == ("101.85", "3.59")
    assert str(priced.chosen.total) == "1340.00"
    assert sum(payment.amount for payment in priced.payments) == 1340


def test_every_price_of_the_quote_is_round(tmp_path):
    """Finishes, extras, combinations and worked changes are each rounded from their own cents."""
    rates = {"base": shop.rate("$2.15 / sq ft"), "step": shop.rate("$264 each", "steps",
             applies="asked")}  # fmt: skip
    book = shop.book(rates, {"plain": shop.PLAIN, "fancy": {**shop.FANCY, "brings": []}})
    job = shop.job(compare=["fancy"], extras={"step": "1"})
    priced = shop.quote(tmp_path, job, rate_book=book, company=shop.company(round_total_to="$50"))
    # 630 and 830; with the step 894 and 1094
    assert [str(finish.total) for finish in priced.finishes] == ["650.00", "850.00"]
    assert [str(one.total) for one in priced.combinations] == [
        "650.00", "900.00", "850.00", "1100.00"]  # fmt: skip
    assert str(priced.extras[0].amount) == "250.00"
    # 567, 598.50, 630, 661.50 and 693
    assert [str(row.total) for row in priced.adjustment] == [
        "550.00", "600.00", "650.00", "650.00", "700.00"]  # fmt: skip


def test_its_working(tmp_path):
    """A pocket calculator comes to the same."""
    book = shop.book({"all": shop.rate("$1234.56 lump")}, FREE)
    results = shop.results(tmp_path, shop.job(), rate_book=book,
                           company=shop.company(round_total_to="$10"))  # fmt: skip
    assert str(agrees(results).named("Rounding")[0]) == "-4.56"
