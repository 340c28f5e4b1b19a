"""Measure and adjust, against published practice for estimated quantities.

FAR 52.211-18, Variation in Estimated Quantity (Apr 1984): a band of 85 to 115 % of each
unit-priced item; outside it only the part beyond is open to an adjustment. The item below (640
sq ft at $14.00, fixed lines of $1,150) is an invented one, worked by that rule.
R1: "Concrete in backyard: how do we measure its size", advice thread 255972, zillow.com.
"""

from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.pricing.contract.records import Remeasure
from tests.pricing import shop

RATED = {**shop.PLAIN, "rate": "$14.00 / sq ft"}
FIXED = {"set_up": shop.rate("$1,150 lump", "travel")}


def remeasure(folder: Path, rectangle: str, area: str, *, rate_book: str) -> Remeasure:
    """Return the adjustment of a one-slab job whose forms measure an area."""
    job = shop.job(
        shop.placement(rectangle),
        measured={"date": "2026-06-09", "placements": {"patio": {"area": f"{area} sq ft"}}},
    )
    adjusted = shop.results(folder, job, rate_book=rate_book).contract.remeasure
    assert adjusted is not None
    return adjusted


class TestVariationInEstimatedQuantity:
    """FAR 52.211-18, row by row; "more than" 15 %, so exactly 15 % is inside."""

    @pytest.mark.parametrize(
        ("measured", "line", "total", "outside"),
        [
            ("602", "8428.00", "9578.00", "0.00"),
            ("640", "8960.00", "10110.00", "0.00"),
            ("700", "9800.00", "10950.00", "0.00"),
            ("736", "10304.00", "11454.00", "0.00"),
            ("760", "10640.00", "11790.00", "24.00"),
            ("544", "7616.00", "8766.00", "0.00"),
            ("530", "7420.00", "8570.00", "14.00"),
        ],
    )
    def test_row(self, tmp_path, measured: str, line: str, total: str, outside: str):
        """The rate holds on all of it, the fixed line stands, and only the slice is outside."""
        adjusted = remeasure(
            tmp_path,
            "32 ft x 20 ft",
            measured,
            rate_book=shop.book(FIXED, {"plain": RATED}),
        )
        (area,) = adjusted.areas
        (moved,) = adjusted.lines
        assert str(adjusted.previous_total) == "10110.00"
        assert str(moved.after) == line
        assert str(adjusted.unmoved) == "1150.00"
        assert str(adjusted.revised_total) == total
        assert str(area.outside) == outside


class TestConcreteInBackyard:
    """R1, from the typed area to the signed sheet."""

    def test_end_to_end(self, tmp_path):
        """1,607 to 1,863 sq ft at $7.50 is $1,920.00 more, and 14.95 sq ft are outside."""
        adjusted = remeasure(
            tmp_path,
            "40.175 ft x 40 ft",
            "1,863",
            rate_book=shop.book(finishes={"plain": {**shop.PLAIN, "rate": "$7.50 / sq ft"}}),
        )
        assert str(adjusted.previous_total) == "12052.50"
        assert str(adjusted.change) == "1920.00"
        assert str(adjusted.revised_total) == "13972.50"
        assert adjusted.areas[0].outside == Decimal("14.95")
        assert round(adjusted.areas[0].share * 100, 2) == Decimal("15.93")
        assert adjusted.needs_signatures  # 15.93 % is over the 10 % of consumer law
