"""Areas of offsets from a base line against published worked examples.

Each case names its source; `S` numbers are shapes published with their dimensions, 15.x numbers
are worked examples of surveying. The answers were worked out again at full precision.
"""

from itertools import pairwise
from typing import Any

import pint
import pytest
from shapely import Polygon

from quotegen.takeoff.shapes.loops import rule_spread_sqft
from tests.takeoff.plans import faults, shape, slab

EXACT = 1e-6
TWO_PLACES = 0.005
SQM = float(
    pint.UnitRegistry()("1 m**2").to("ft**2").magnitude
)  # sq ft in 1 m2, by another library

POOL_M = (0, 6.2, 7.2, 6.8, 5.6, 5.0, 4.8, 4.8, 0)
KERB_M = (3.9, 4.5, 5.1, 6.5, 6.3, 5.1, 4.1)
TEN_M = (3.50, 4.30, 6.15, 5.25, 7.50, 8.80, 7.90, 6.40, 4.40, 3.25)


def _area_m2(every_m: float, offsets_m: tuple[float, ...], **rule: str) -> float:
    return slab(_typed(every_m, offsets_m, **rule)).area_sqft / SQM


def _typed(every_m: float, offsets_m: tuple[float, ...], **rule: str) -> dict[str, Any]:
    far = [f"{offset} m" for offset in offsets_m]
    return {"offsets": {"every": f"{every_m} m", "far": far, **rule}}


class TestAKidneyByItsWidths:
    """S7. "The widths in meters of a kidney-shaped swimming pool", Stewart, Essential Calculus."""

    def test_simpson(self):
        """Simpson's rule gives 84 m2 as published, 84.27 before it was rounded."""
        assert _area_m2(2, POOL_M, rule="simpson") == pytest.approx(84.27, abs=TWO_PLACES)
        assert _area_m2(2, POOL_M, rule="simpson") == pytest.approx(2 / 3 * 126.4, abs=EXACT)

    def test_trapezoid(self):
        """The trapezoid rule on the same widths gives 80.80: the rule must be named."""
        assert _area_m2(2, POOL_M) == pytest.approx(80.80, abs=EXACT)
        assert _area_m2(2, POOL_M, rule="trapezoid") == pytest.approx(2 * 40.4, abs=EXACT)

    def test_the_two_rules_apart(self):
        """The working says how far the other rule is off on the same readings: 3.47 m2."""
        offsets = shape(**_typed(2, POOL_M, rule="simpson")).offsets
        assert offsets is not None
        assert rule_spread_sqft(offsets) / SQM == pytest.approx(84.2667 - 80.80, abs=TWO_PLACES)

    def test_midpoints(self):
        """S7b. The same pool by four middle widths, strips of 4 m: 91.20, as rectangles."""
        strips = [
            {"rectangle": f"4 m x {width} m", "at": [f"{4 * n} m", "0"]}
            for n, width in enumerate((6.2, 6.8, 5.0, 4.8))
        ]
        assert slab(*strips).area_sqft / SQM == pytest.approx(91.20, abs=EXACT)

    def test_traps(self):
        """Ends are zero: leaving the first one out makes an odd number of strips, refused."""
        (fault,) = faults(_typed(2, POOL_M[1:], rule="simpson"))
        assert fault.code == "simpson-odd-strips"
        assert abs(_area_m2(2, POOL_M, rule="simpson") - 208) > 100  # a published slip


class TestOffsetsFromAKerb:
    """S9 and 15.6. Field notes of a survey, askfilo.com: 90 m, offsets every 15 m."""

    def test_both_rules(self):
        """Simpson 476.00 m2, trapezoid 472.50 m2; neither end is zero."""
        assert _area_m2(15, KERB_M, rule="simpson") == pytest.approx(476.00, abs=EXACT)
        assert _area_m2(15, KERB_M) == pytest.approx(472.50, abs=EXACT)


class TestAnEvenNumberOfOrdinates:
    """S10 and 15.8. Ten offsets at 15 m, askfilo.com: Simpson on the first nine, then trapezoid."""

    def test_as_the_source_does(self):
        """750.00 and the last strip of 57.375 make 807.375; all by trapezoid 811.125."""
        split = _area_m2(15, TEN_M, rule="simpson", odd_strip="trapezoid")
        assert split == pytest.approx(750.00 + 57.375, abs=EXACT)
        assert split == pytest.approx(807.375, abs=EXACT)
        assert _area_m2(15, TEN_M) == pytest.approx(811.125, abs=EXACT)

    def test_simpson_is_never_run_on_it_silently(self):
        """Nine strips are an odd number; the message says so with both numbers."""
        (fault,) = faults(_typed(15, TEN_M, rule="simpson"))
        assert fault.code == "simpson-odd-strips"
        assert "10 readings make 9" in fault.message


class TestHandbookExamples:
    """Examples of surveying lectures."""

    def test_simpson_25_m(self):
        """15.4, C35. geosurabsurveyandmapping.blogspot.com, 2017: 843.33 m2; trapezoid 852.50."""
        offsets = (3.6, 5.0, 6.5, 5.5, 7.3, 6.0, 4.0)
        assert _area_m2(25, offsets, rule="simpson") == pytest.approx(843.33, abs=TWO_PLACES)
        assert _area_m2(25, offsets) == pytest.approx(852.50, abs=EXACT)

    def test_trapezoid_and_simpson_10_m(self):
        """15.5. Surveying, lecture notes 13, softecksblog.in: trapezoid 460.75, Simpson 461.17."""
        offsets = (3.15, 4.3, 8.2, 5.6, 6.85, 7.6, 4.2, 5.6, 4.3)
        assert _area_m2(10, offsets) == pytest.approx(460.75, abs=EXACT)
        assert _area_m2(10, offsets, rule="simpson") == pytest.approx(461.167, abs=TWO_PLACES)

    def test_trapezoid_9_m(self):
        """15.7. "Irregular bodies", scribd 633416509: 8 ordinates, 276.30 m2."""
        offsets = (2, 3.2, 4, 3.5, 5, 4.5, 6, 7)
        assert _area_m2(9, offsets) == pytest.approx(276.30, abs=EXACT)

    def test_one_trapezoid(self):
        """15.9. "Surveying calculations", mathhelpforum.com: (19.4 + 39.6) / 2 x 25 = 737.5."""
        assert _area_m2(25, (19.4, 39.6)) == pytest.approx((19.4 + 39.6) / 2 * 25, abs=EXACT)

    def test_uneven_spacing_against_the_library(self):
        """At uneven places the trapezoid rule is the polygon through the points, by shapely."""
        along, far = (0, 3, 4.5, 9, 15), (2, 5, 6, 4, 3)
        typed = {"along": [f"{x} ft" for x in along], "far": [f"{y} ft" for y in far]}
        ring = [(0, 0), *zip(along, far, strict=True), (15, 0)]
        measured = slab({"offsets": typed})
        assert measured.area_sqft == pytest.approx(Polygon(ring).area, abs=EXACT)
        strips = zip(pairwise(along), pairwise(far), strict=True)
        by_hand = sum((b - a) * (u + v) / 2 for (a, b), (u, v) in strips)
        assert measured.area_sqft == pytest.approx(by_hand, abs=EXACT)


class TestTheRuleOfThumb:
    """S6, 15.14. 0.45 (A + B) L, "How to measure the area of a kidney-shaped pool", hunker.com."""

    def test_a_quote_refuses_it(self):
        """A job file cannot hold it; the message says what to measure instead."""
        with pytest.raises(ValueError, match=r"first visit only.*`offsets` or `ties`"):
            shape(kidney={"length": "20 ft", "a": "10 ft", "b": "15 ft"})
