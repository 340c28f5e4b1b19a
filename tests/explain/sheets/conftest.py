"""A winter job with a tax and every kind of option, for the tests of several sheets."""

import pytest

from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.views import CustomerView
from tests.pricing import shop
from tests.world import EXAMPLES

RATES = {
    **shop.RINSE_AND_FILM,
    "cold": shop.rate("$100 lump", "curing", season={"first": "11-15", "last": "03-15"}),
    "far": shop.rate("$2 / mile", "travel", travel={"free": "10 miles", "both_ways": "yes"}),
    "hand": {"name": "Hand work", "covers": ["placing", "finish"], "by_slice": [
        {"to": "150 sq ft", "rate": "$1.00 / sq ft"},
        {"from": "150 sq ft", "rate": "$0.50 / sq ft"}]},
    "lawn": shop.rate("$50 lump", "protection", basis="allowance",
                      exceeded={"rule": "capped"}),
    "drain": shop.rate("$10 / ft", "drain", applies="asked"),
    "sand": shop.rate("$1 / sq ft", "finish", applies="with color", color="integral"),
}  # fmt: skip
FINISHES = {"plain": {**shop.PLAIN, "colors": ["sand"]}, "fancy": shop.FANCY}
TAX = {"id": "sales", "name": "Sales tax", "rate": "8.875 %", "covers": ["everything"],
       "round": "whole invoice"}  # fmt: skip


@pytest.fixture(scope="package")
def winter_view(tmp_path_factory: pytest.TempPathFactory) -> CustomerView:
    """The view of a winter job with a tax and every kind of option."""
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    site = {"address": "1 Test Lane", "town": "Harrow Bend", "distance": "14 miles"}
    job = shop.job(shop.placement("20 ft x 10 ft", alternates=["fancy"]), start="2026-12-01",
                   site=site, extras={"drain": "10 ft"}, colors=[{"base": "sand"}])  # fmt: skip
    taxed = company + shop.as_yaml({"tax": [TAX]})
    book = shop.book(RATES, FINISHES)
    folder = tmp_path_factory.mktemp("winter")
    return customer_view(shop.results(folder, job, company=taxed, rate_book=book))


@pytest.fixture(scope="package")
def followed_view(tmp_path_factory: pytest.TempPathFactory) -> CustomerView:
    """The view of a job with a share, a discount, a tax, a round total and a sum at signing."""
    rates = {"base": shop.rate("$2.15 / sq ft"), "slab": shop.rate("$4.35 / sq ft", "slab"),
             "trip": {**shop.rate("$85 / visit", "travel"), "name": "Trip"},
             "fuel": shop.share("4.5 %", "travel", "base")}  # fmt: skip
    company = shop.company(
        round_total_to="$10",
        tax=[TAX],
        payments=[
            {"id": "deposit", "when": "when you sign", "amount": "$500"},
            {"id": "pour", "when": "at the pour", "share": "60 %"},
            {"id": "last", "when": "at the end"},
        ],
    )
    job = shop.job(discount={"name": "Neighbors pour together", "share": "3 %"})
    folder = tmp_path_factory.mktemp("followed")
    return customer_view(shop.results(folder, job, company=company, rate_book=shop.book(rates)))
