"""The discount: after the minimum, before tax, in a line of its own."""

import pytest

from quotegen.reading.files.rate_book import Basis
from tests.pricing import shop
from tests.pricing.calculator import agrees
from tests.world import write_world

NAME = "Neighbors pour together"
RATES = {"base": shop.rate("$2.15 / sq ft"), "slab": shop.rate("$4.35 / sq ft", "slab")}
BOOK = shop.book(RATES, {"plain": shop.PLAIN, "fancy": {**shop.FANCY, "brings": []}})
# 200 sq ft: base 430, slab 870, plain finish 200, together 1500; the fancy finish 400, so 1700.


def _quote(tmp_path, discount: shop.Typed, company: shop.Typed | None = None, **more):
    job = shop.job(discount={"name": NAME, **discount}, compare=["fancy"])
    return shop.quote(tmp_path, job, **{"rate_book": BOOK, **more},
                      company=shop.company(**(company or {})))  # fmt: skip


@pytest.mark.parametrize(
    ("discount", "off", "totals"),
    [
        ({"amount": "$300"}, "-300.00", ["1200.00", "1400.00"]),
        ({"amount": "$300.55"}, "-300.55", ["1199.45", "1399.45"]),
        ({"share": "3 %"}, "-45.00", ["1455.00", "1649.00"]),  # 51 off 1700
        ({"share": "0.333 %"}, "-5.00", ["1495.00", "1694.34"]),  # 4.995 and 5.661
    ],
)
def test_a_sum_or_a_share(tmp_path, discount: shop.Typed, off: str, totals: list[str]):
    """A line of its own at the end takes it off every finish that is offered."""
    priced = _quote(tmp_path, discount)
    line = priced.chosen.lines[-1]
    assert (line.id, line.name, str(line.amount)) == ("discount", NAME, off)
    assert [str(finish.total) for finish in priced.finishes] == totals


def test_it_comes_off_before_tax(tmp_path):
    """10 % on 1500 less 300 is 120, and the price 1320."""
    chosen = _quote(tmp_path, {"amount": "$300"}, {"tax": [shop.tax("10 %", "everything")]}).chosen
    assert list(shop.amounts(chosen).items())[-2:] == [("discount", "-300.00"), ("tax.s", "120.00")]
    assert str(chosen.total) == "1320.00"


@pytest.mark.parametrize(
    ("rounded", "tax"),
    [("whole invoice", "69.60"), ("each line", "69.60")],
)
def test_a_tax_on_some_lines_has_their_part_of_it(tmp_path, rounded: str, tax: str):
    """Of 300 off 1500, 174 are off the slab of 870: 10 % of 696. It is how states that tax a part
    of an invoice treat a discount on all of it (common practice).
    """
    taxes = {"tax": [shop.tax("10 %", "slab", rounded=rounded)]}
    chosen = _quote(tmp_path, {"amount": "$300"}, taxes).chosen
    assert shop.amounts(chosen)["tax.s"] == tax


def test_the_smallest_job_is_not_filled_up_again(tmp_path):
    """1500 is topped up to 2000; 10 % of that come off, and 1800 stays."""
    book = shop.book(RATES, {"plain": shop.PLAIN, "fancy": shop.FANCY | {"brings": []}},
                     minimum="$2,000")  # fmt: skip
    chosen = _quote(tmp_path, {"share": "10 %"}, rate_book=book).chosen
    found = shop.amounts(chosen)
    assert (found["minimum"], found["discount"], str(chosen.total)) == (
        "500.00", "-200.00", "1800.00")  # fmt: skip


def test_a_share_follows_the_measure_and_a_sum_stays(tmp_path):
    """20 sq ft more are 150: less 3 % of it 145.50, or all of it where a sum was taken off."""
    share, fixed = _quote(tmp_path, {"share": "3 %"}), _quote(tmp_path, {"amount": "$300"})
    assert str(share.adjustment[-1].difference) == "145.50"
    assert str(fixed.adjustment[-1].difference) == "150.00"
    assert share.chosen.lines[-1].basis is Basis.MEASURED
    assert fixed.chosen.lines[-1].basis is Basis.FIXED


@pytest.mark.parametrize(("amount", "stops"), [("$1,499.99", False), ("$1,500", True)])
def test_something_of_the_price_remains(tmp_path, amount: str, *, stops: bool):
    """A discount of the whole price is an error; of a cent less it is none."""
    job = shop.job(discount={"name": NAME, "amount": amount})
    path = write_world(tmp_path, job, rate_book=BOOK)
    codes = [problem.code for problem in shop.faults(path)]
    assert codes == (["discount-over-price"] if stops else [])


def test_its_working(tmp_path):
    """A pocket calculator comes to the same, with a tax on a part of it."""
    job = shop.job(discount={"name": NAME, "share": "7.5 %"})
    company = shop.company(tax=[shop.tax("8.875 %", "slab", rounded="each line")])
    again = agrees(shop.results(tmp_path, job, rate_book=BOOK, company=company))
    assert str(again.named(NAME)[0]) == "-112.50"
