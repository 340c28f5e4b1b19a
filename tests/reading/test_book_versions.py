"""Versions of the rate book: which one counts on the date of a quote."""

import pytest

from tests.pricing import shop


@pytest.mark.parametrize(
    ("day", "price"), [("2026-05-14", "200.00"), ("2026-07-01", "300.00"), ("2026-06-30", "200.00")]
)
def test_the_quote_date_picks_the_version(tmp_path, day: str, price: str):
    """A version counts from its first day until the day before the next one begins."""
    dearer = {"plain": {**shop.PLAIN, "rate": "$1.50 / sq ft"}}
    newer = shop.book(finishes=dearer, valid_from="2026-07-01")
    priced = shop.quote(
        tmp_path, shop.job(date=day, start="2026-08-01"), rate_book=shop.book(),
        **{"rate-book-2026-07": newer},
    )  # fmt: skip
    assert str(priced.chosen.total) == price
