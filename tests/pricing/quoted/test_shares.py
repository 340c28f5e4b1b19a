"""Lines that are a share of other lines: of which, to which cent, with which basis."""

from dataclasses import replace
from fractions import Fraction

import pytest

from quotegen.pricing.quoted.finish import price_at
from quotegen.reading.files.rate_book import Basis
from tests.pricing import shop
from tests.pricing.calculator import agrees

RATES = {
    "base": shop.rate("$2.15 / sq ft"),
    "slab": {**shop.rate("$4.35 / sq ft"), "covers": ["slab", "placing"]},
    "trip": shop.rate("$85 / visit", "travel"),
    "drain": shop.rate("$46 / ft", "drain", applies="asked"),
}
# 200 sq ft and two visits: base 430, slab 870, trip 170, finish 200, together 1670.
ALL_IN = {"plain": {**shop.PLAIN, "rate": "$7.33 / sq ft", "covers": ["base", "slab", "joints"]}}


def _fuel(tmp_path, share: shop.Typed, job: str | None = None, **more):
    book = shop.book({**RATES, "fuel": share}, **more)
    return shop.quote(tmp_path, job or shop.job(), rate_book=book)


@pytest.mark.parametrize(
    ("part", "of", "amount"),
    [
        ("2 %", ["travel"], "3.40"),  # of 170
        ("4.5 %", ["travel", "base"], "27.00"),  # of 600
        ("2 %", ["placing"], "17.40"),  # the slab line pays for placing too: all of its 870
        ("2 %", ["slab", "placing"], "17.40"),  # and counts once
        ("3 %", ["everything"], "50.10"),  # of 1670
        ("0.355 %", ["finish"], "0.71"),  # exactly 0.71
        ("0.3525 %", ["finish"], "0.71"),  # 0.705 goes up
        ("0.3524 %", ["finish"], "0.70"),
        ("100 %", ["travel"], "170.00"),
    ],
)
def test_a_share_to_the_cent(tmp_path, part: str, of: list[str], amount: str):
    """It is worked out once on the sum of its lines, half a cent up."""
    chosen = _fuel(tmp_path, shop.share(part, *of)).chosen
    assert shop.amounts(chosen)["fuel"] == amount
    assert chosen.lines[-1].scope == ("surcharge",)


def test_a_share_of_an_all_in_price(tmp_path):
    """One price with all in it is one line: 3 % of 200 x 7.33 = 1466.00, whatever item is named."""
    book = shop.book({"fuel": shop.share("3 %", "joints")}, ALL_IN)
    chosen = shop.quote(tmp_path, shop.job(), rate_book=book).chosen
    assert shop.amounts(chosen) == {"plain.patio": "1466.00", "fuel": "43.98"}


def test_no_share_is_part_of_another(tmp_path):
    """Two shares of everything are both of the 1670 of work, in whichever order they stand."""
    both = {"fuel": shop.share("2 %", "everything"), "card": shop.share("3 %", "everything")}
    for rates in (both, dict(reversed(both.items()))):
        chosen = shop.quote(tmp_path, shop.job(), rate_book=shop.book({**RATES, **rates})).chosen
        found = shop.amounts(chosen)
        assert (found["fuel"], found["card"], str(chosen.total)) == ("33.40", "50.10", "1753.50")


def test_a_share_of_lines_that_the_job_lacks_is_no_line(tmp_path):
    """Without a drain there is nothing to take 5 % of; with 10 ft of it there are $23."""
    share = shop.share("5 %", "drain")
    assert "fuel" not in shop.amounts(_fuel(tmp_path, share).chosen)
    asked = shop.job(include={"drain": "10 ft"})
    assert shop.amounts(_fuel(tmp_path, share, asked).chosen)["fuel"] == "23.00"


def test_it_counts_toward_the_smallest_job(tmp_path):
    """1670 and 3 % of it are 1720.10; 29.90 more are a smallest job of 1750."""
    found = shop.amounts(_fuel(tmp_path, shop.share("3 %", "everything"), minimum="$1,750").chosen)
    assert (found["fuel"], found["minimum"]) == ("50.10", "29.90")


def test_it_is_taxed_by_what_it_pays_for(tmp_path):
    """A tax on travel is on a share that pays for travel, and not on one that is a share of it."""
    taxed = shop.company(tax=[shop.tax("10 %", "travel")])
    for covers, tax in (("travel", "17.85"), ("surcharge", "17.00")):  # of 178.50, of 170
        share = shop.share("5 %", "travel", covers=covers)
        book = shop.book({**RATES, "fuel": share})
        chosen = shop.quote(tmp_path, shop.job(), rate_book=book, company=taxed).chosen
        assert shop.amounts(chosen)["tax.s"] == tax


def test_it_moves_with_what_it_is_a_share_of(tmp_path):
    """Of measured lines it is measured, of fixed ones fixed: 10 % more area moves 2 % of base."""
    moving, fixed = (
        _fuel(tmp_path, shop.share("2 %", item)) for item in ("base", "travel")
    )  # fmt: skip
    assert shop.by_id(moving.chosen)["fuel"].basis is Basis.MEASURED
    assert shop.by_id(fixed.chosen)["fuel"].basis is Basis.FIXED
    # 20 sq ft more: base 43, slab 87, finish 20; and 2 % of the 43
    more = {one.change: str(one.difference) for one in moving.adjustment}
    assert more[Fraction(1, 10)] == "150.86"
    assert str(fixed.adjustment[-1].difference) == "150.00"


def test_on_request_and_with_a_finish(tmp_path):
    """As an extra it adds 3 % of the work; brought by a finish it is in that one alone."""
    asked = shop.share("3 %", "everything", applies="asked")
    (extra,) = _fuel(tmp_path, asked, shop.job(extras={"fuel": "yes"})).extras
    assert (str(extra.amount), [line.id for line in extra.lines]) == ("50.10", ["fuel"])
    brought = {**RATES, "fuel": shop.share("3 %", "finish", applies="with finish")}
    fancy = {**shop.FANCY, "brings": ["fuel"]}
    book = shop.book(brought, {"plain": shop.PLAIN, "fancy": fancy})
    plain, other = shop.quote(tmp_path, shop.job(compare=["fancy"]), rate_book=book).finishes
    assert "fuel" not in shop.amounts(plain)
    assert shop.amounts(other)["fuel"] == "12.00"  # 3 % of 200 x 2.00


def test_an_extra_carries_its_share(tmp_path):
    """A drain of $460 adds 460 and 3 % of it, since the share is of everything."""
    job = shop.job(extras={"drain": "10 ft"})
    (extra,) = _fuel(tmp_path, shop.share("3 %", "everything"), job).extras
    assert str(extra.amount) == "473.80"


def test_its_working(tmp_path):
    """A pocket calculator comes to the same, line by line."""
    book = shop.book({**RATES, "fuel": shop.share("4.5 %", "travel", "base")})
    again = agrees(shop.results(tmp_path, shop.job(), rate_book=book))
    assert str(again.named("Fuel")[0]) == "27.00"


def test_one_placement_less_takes_its_share_along(tmp_path):
    """The share of a job is the sum of what its parts bear: 2 % of 430 and of 86 are 10.32."""
    walk = shop.placement("10 ft x 4 ft", "walk", at="40 ft", use="walk")
    job = shop.job(shop.placement("20 ft x 10 ft"), walk)
    share = shop.share("2 %", "base")
    results = shop.results(tmp_path, job, rate_book=shop.book({**RATES, "fuel": share}))
    assert shop.amounts(results.quote.chosen)["fuel"] == "10.32"
    alone = replace(results.job, placements=results.job.placements[:1])
    assert shop.amounts(price_at(alone, results.takeoff, "plain"))["fuel"] == "8.60"
