"""Quantities: typed in either system, taken off, each or by the foot, and on the road."""

from decimal import Decimal
from pathlib import Path
from typing import ClassVar

import pytest

from tests.pricing import shop
from tests.pricing.shop import book, by_id, job, placement, quote, rate

FAR = {"far": shop.rate("$1.80 / mile", "travel", travel={"free": "10 miles", "both_ways": "yes"})}
LONG = {"far": shop.rate("$60 / hour", "travel", travel={"both_ways": "no"})}


class TestTypedCounts:
    """A job may type how much there is, in its own units or the other ones."""

    ASKED: ClassVar = {
        "drain": rate("$46 / ft", "drain", applies="asked"),
        "haul": rate("$58 / cu yd", "demolition", applies="asked"),
        "old": rate("$2.60 / sq ft", "demolition", applies="asked"),
        "step": rate("$265 each", "steps", applies="asked"),
    }

    @pytest.mark.parametrize(
        ("units", "item", "typed", "quantity", "unit", "amount"),
        [
            ("us", "drain", "24 ft", "24", "ft", "1104.00"),
            ("us", "drain", "4.8 m", "15.7", "ft", "722.20"),  # 15.748 ft
            ("us", "haul", "6 cu yd", "6", "cu yd", "348.00"),
            ("us", "haul", "6 m3", "7.85", "cu yd", "455.30"),  # 7.8477 cu yd
            ("us", "old", "20 m2", "215.3", "sq ft", "559.78"),  # 215.278 sq ft
            ("us", "step", "2", "2", "each", "530.00"),
            ("metric", "drain", "24 ft", "7.32", "m", "1104.73"),  # 7.3152 m at 150.92
            ("metric", "drain", "4.8 m", "4.8", "m", "724.42"),
            ("metric", "haul", "6 cu yd", "4.59", "m3", "348.20"),  # 4.5873 m3 at 75.86
            ("metric", "old", "200 sq ft", "18.58", "m2", "520.05"),  # 18.5806 m2 at 27.99
            ("metric", "step", "2", "2", "each", "530.00"),
        ],
    )
    def test_in_the_units_of_the_job(
        self, tmp_path, units: str, item: str, typed: str, quantity: str, unit: str, amount: str
    ):
        """A count in the other system is converted and rounded as that unit is priced."""
        priced = quote(
            tmp_path, job(units=units, include={item: typed}), rate_book=book(self.ASKED)
        )
        line = by_id(priced.chosen)[item]
        found = (str(line.quantity), line.unit.value, str(line.amount))
        assert found == (quantity, unit, amount)

    def test_a_typed_count_on_a_placement(self, tmp_path):
        """What a placement includes is counted there, and says so in its id."""
        two = placement("20 ft x 10 ft", include={"step": "2", "old": "50 sq ft"})
        lines = by_id(quote(tmp_path, job(two), rate_book=book(self.ASKED)).chosen)
        assert str(lines["step.patio"].quantity) == "2"
        assert str(lines["old.patio"].amount) == "130.00"

    def test_yes_takes_what_was_taken_off(self, tmp_path):
        """`yes` to something by the square foot means the area of every placement."""
        parts = (placement("20 ft x 10 ft"), placement("5 ft x 5 ft", "walk", at="30 ft"))
        asked = job(*parts, include={"old": "yes"})
        lines = by_id(quote(tmp_path, asked, rate_book=book(self.ASKED)).chosen)
        assert str(lines["old.patio"].quantity) == "200.0"
        assert str(lines["old.walk"].quantity) == "25.0"


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


def test_a_metric_job_travels_in_kilometers(tmp_path):
    """Four miles beyond, there and back on two visits, are 25.7 km (NIST SP 811: 1.609344)."""
    job = shop.job(
        units="metric",
        site={"address": "1 Test Lane", "town": "Harrow Bend", "distance": "14 miles"},
    )
    line = shop.by_id(shop.quote(tmp_path, job, rate_book=shop.book(FAR)).chosen)["far"]
    assert (str(line.quantity), line.unit.value) == ("25.7", "km")


def test_time_on_the_road(tmp_path):
    """35 minutes one way on two visits are 1.17 hours."""
    assert _far(tmp_path, LONG, drive_time="35 min") == "1.17 hour 70.20"


@pytest.mark.parametrize(("price", "typed", "quantity", "unit"), [
    ("$265 each", "2", Decimal(2), "each"), ("$66 / ft", "6.5 ft", Decimal("6.5"), "ft"),
])  # fmt: skip
def test_steps_go_each_or_by_the_foot(
    tmp_path: Path, price: str, typed: str, quantity: Decimal, unit: str
):
    """A step is priced each or by the foot of its nosing, and the area stays what it was."""
    rates = {"step": shop.rate(price, "steps", applies="asked")}
    deck = shop.placement("20 ft x 10 ft", include={"step": typed})
    results = shop.results(tmp_path, shop.job(deck), rate_book=shop.book(rates))
    (line,) = results.lines_for("steps")
    assert (line.quantity, line.unit.value) == (quantity, unit)
    assert results.takeoff.placements[0].area_sqft == Decimal("200.0")
