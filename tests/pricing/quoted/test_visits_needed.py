"""Visits needed: the trips of every finish on the job, joined."""

from pathlib import Path

from quotegen.pricing.quoted.visits_needed import visits_needed
from tests.pricing import shop

SLOW = {
    **shop.PLAIN,
    "visits": [
        {"visit": "seal", "days": "1", "wait_days": "28"},
        {"visit": "pour", "days": "3"},
        {"visit": "form", "days": "1", "wait_days": "2"},
    ],
}


def _needed(folder: Path, *finishes: str) -> list[tuple[str, int, int]]:
    parts = [
        shop.placement("10 ft x 10 ft", f"part{n}", at=f"{20 * n} ft", finish=finish)
        for n, finish in enumerate(finishes)
    ]
    rate_book = shop.book(shop.RINSE_AND_FILM,
                          {"plain": shop.PLAIN, "fancy": shop.FANCY, "slow": SLOW})  # fmt: skip
    made = shop.results(folder, shop.job(*parts), rate_book=rate_book)
    return [(v.id, v.days, v.wait_days) for v in visits_needed(made.job, "plain")]


def test_in_the_order_of_the_book(tmp_path):
    """However a finish lists its visits, they happen in the order of the rate book."""
    assert _needed(tmp_path, "slow") == [("form", 1, 2), ("pour", 3, 0), ("seal", 1, 28)]


def test_joined_at_the_longest(tmp_path):
    """Placements are worked on together: the longest days and the longest wait of any of them."""
    assert _needed(tmp_path, "plain", "fancy", "slow") == [
        ("form", 2, 2), ("pour", 3, 0), ("wash", 1, 4), ("seal", 1, 28)]  # fmt: skip


def test_one_trip_serves_all_placements(tmp_path):
    """Two placements with the same finish take no more trips than one."""
    assert _needed(tmp_path, "plain", "plain") == _needed(tmp_path, "plain")
