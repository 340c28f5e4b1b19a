"""Taxes: who owes them, and on what."""

from tests.pricing import shop
from tests.world import EXAMPLES

FREE = {"plain": {**shop.PLAIN, "rate": "$0.00 / sq ft"}}


def test_an_exemption_and_another_state(tmp_path):
    """An exempt job and a job in another state owe nothing; a tax on one scope leaves the rest."""
    tax = {"id": "sales", "name": "Sales tax", "rate": "10 %", "covers": ["base"],
           "round": "whole invoice", "states": ["OH"]}  # fmt: skip
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    company += shop.as_yaml({"tax": [tax]})
    rates = {"base": shop.rate("$100 lump"), "trip": shop.rate("$50 lump", "travel")}
    site = {"address": "1 Test Lane", "town": "Harrow Bend", "state": "OH"}
    book = shop.book(rates, FREE)
    for job, total in (
        (shop.job(site=site), "160.00"),
        (shop.job(site={**site, "state": "KY"}), "150.00"),
        (shop.job(site=site, tax_exempt="certificate on file"), "150.00"),
    ):
        assert str(shop.quote(tmp_path, job, company=company, rate_book=book).chosen.total) == total
