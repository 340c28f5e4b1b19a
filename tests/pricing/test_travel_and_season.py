"""The way to the site, seasons, and which version of the rate book counts."""

import pytest

from tests.pricing import shop

FAR = {"far": shop.rate("$1.80 / mile", "travel", travel={"free": "10 miles", "both_ways": "yes"})}
LONG = {"far": shop.rate("$60 / hour", "travel", travel={"both_ways": "no"})}
COLD = {"cold": shop.rate("$100 lump", "curing", season={"first": "11-15", "last": "03-15"})}


def _far(tmp_path, rates, **site: str) -> str | None:
    where = {"address": "1 Test Lane", "town": "Harrow Bend", **site}
    priced = shop.quote(tmp_path, shop.job(site=where), rate_book=shop.book(rates))
    line = shop.by_id(priced.chosen).get("far")
    return None if line is None else f"{line.quantity} {line.unit} {line.amount}"


@pytest.mark.parametrize(
    ("distance", "line"),
    [
        ("14 miles", "16.0 mile 28.80"),  # 4 beyond, there and back, two visits
        ("10 miles", None),
        ("3 miles", None),
        ("10.01 miles", None),  # 0.04 miles in all: nothing, to a tenth
    ],
)
def test_miles_beyond_what_is_free(tmp_path, distance: str, line: str | None):
    """The free part counts one way; the rest is taken there and back on each visit."""
    assert _far(tmp_path, FAR, distance=distance) == line


def test_time_on_the_road(tmp_path):
    """35 minutes one way on two visits are 1.17 hours."""
    assert _far(tmp_path, LONG, drive_time="35 min") == "1.17 hour 70.20"


@pytest.mark.parametrize(
    ("start", "applies"),
    [
        ("2026-11-14", False),
        ("2026-11-15", True),
        ("2026-12-31", True),
        ("2027-03-15", True),
        ("2027-03-16", False),
    ],
)
def test_a_season_over_new_year(tmp_path, start: str, applies: bool):
    """Both ends of a season are in it; the day is the one on which the work begins."""
    priced = shop.quote(tmp_path, shop.job(start=start), rate_book=shop.book(COLD))
    assert ("cold" in shop.by_id(priced.chosen)) == applies


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
