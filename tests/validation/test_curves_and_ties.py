"""Curves, ties, borders and new pieces against closed forms, shapely and numerical integration."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from shapely import Point, Polygon

from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.shapes.curve import Curve, curve_through
from quotegen.takeoff.shapes.path import fine_ring
from tests.takeoff.plans import Typed, edges, feet, outline, slab

EXACT = 1e-6
FOUR_PLACES = 0.00005
RHOMBUS = {"base": "10 ft", "height": "4 ft", "offset": "3 ft"}


class TestPieces:
    """Each new piece against its closed form."""

    def test_three_sides(self):
        """Heron's formula (common knowledge): 13, 14, 15 make 84; height 12 on the side of 14."""
        found = slab({"triangle": {"base": "14 ft", "left": "13 ft", "right": "15 ft"}})
        assert found.area_sqft == pytest.approx(84, abs=EXACT)
        assert found.added[0].loops[0][1].end == pytest.approx((5, 12))

    @pytest.mark.parametrize(("sides", "area"), [(3, 1.29904), (4, 2), (6, 2.59808), (8, 2.82843)])
    def test_regular_polygon(self, sides: int, area: float):
        """Half of n sin(360/n) times radius squared, on a corner radius of 1."""
        step = 2 * math.pi / sides
        typed = {"sides": str(sides), "side": f"{2 * math.sin(step / 2):.9f} ft"}
        found = slab({"regular_polygon": typed})
        assert found.area_sqft == pytest.approx(sides / 2 * math.sin(step), abs=EXACT)
        assert found.area_sqft == pytest.approx(area, abs=FOUR_PLACES)

    @pytest.mark.parametrize("sides", [5, 6, 7, 8])
    def test_across_corners_is_the_longest_distance(self, sides: int):
        """Whether the number of sides is odd or even, no two corners are farther apart."""
        found = slab({"regular_polygon": {"sides": str(sides), "across_corners": "12 ft"}})
        corners = [side.start for side in found.added[0].loops[0]]
        longest = max(math.dist(a, b) for a in corners for b in corners)
        assert longest == pytest.approx(12, abs=EXACT)

    def test_parallelogram_and_segment(self):
        """Base times height; and 15.2, chord 24 and rise 3: 48.5948 (CRC Encyclopedia)."""
        assert slab({"parallelogram": RHOMBUS}).area_sqft == pytest.approx(40, abs=EXACT)
        found = slab({"segment": {"chord": "24 ft", "rise": "3 ft"}})
        assert found.area_sqft == pytest.approx(48.5948, abs=FOUR_PLACES)
        assert edges(found)[EdgeKind.CURVED] == pytest.approx(24.9878, abs=FOUR_PLACES)

    def test_shoelace(self):
        """15.11. (1,6) (3,1) (7,2) (4,4) (8,5): 16.5, a common textbook set."""
        corners = ((1, 6), (3, 1), (7, 2), (4, 4), (8, 5))
        assert slab(outline(*corners)).area_sqft == pytest.approx(16.5, abs=EXACT)


class TestArcByItsLength:
    """An arc whose length was measured along the edge."""

    @pytest.mark.parametrize(("chord", "arc", "area"), [
        (24, 24.98782, 48.5948), (16, 18.54590, 44.7295), (20, 10 * math.pi, 50 * math.pi),
        (2, 5, None),
    ])  # fmt: skip
    def test_closed_forms(self, chord: float, arc: float, area: float | None):
        """15.1 and 15.2 come back from chord and arc length; so do a half circle and more."""
        typed = outline((0, 0), {"to": feet((chord, 0)), "arc_length": f"{arc:.9f} ft"})
        found = slab(typed)
        assert edges(found)[EdgeKind.CURVED] == pytest.approx(arc, abs=EXACT)
        if area is not None:
            assert found.area_sqft == pytest.approx(area, abs=0.001)


class TestSmoothCurves:
    """The cubic spline through points."""

    @pytest.mark.parametrize(("count", "share"), [(8, 4e-3), (16, 3e-4), (32, 2e-5)])
    def test_a_circle_by_a_few_points(self, count: int, share: float):
        """Points every few feet round a circle of 10 ft bring its area back closely."""
        angles = [2 * math.pi * n / count for n in range(count)]
        points = [(10 * math.cos(a), 10 * math.sin(a)) for a in angles]
        curve = curve_through(points, closed=True)
        assert curve.green_sqft == pytest.approx(100 * math.pi, rel=share)

    def test_smooth_side_of_an_outline(self):
        """A patio with one smooth side, its area that of a fine polygon."""
        typed = outline(
            (0, 0),
            (24, 0),
            (24, 12),
            {"to": feet((0, 12)), "smooth_through": [feet((16, 16)), feet((7, 13))]},
        )
        found = slab(typed)
        curve = next(s for s in found.added[0].loops[0] if isinstance(s, Curve))
        ring = [(0, 0), (24, 0), *(curve.point_at(n / 2000) for n in range(2001))]
        assert found.area_sqft == pytest.approx(Polygon(ring).area, rel=1e-6)


def _round_pool(**border: Any) -> Typed:
    return {"border": {"pool": {"circle": {"diameter": "46 ft"}}, **border}}


def _border(pool: Typed, **border: Any) -> Typed:
    return {"border": {"pool": pool, **border}}


class TestBorders:
    """A deck of given width round a pool."""

    def test_s1_as_a_border(self):
        """S1. 20 x 40 ft with a walk of 4 ft: 544 sq ft, edges 152 and 120 ft (expertsmind.com)."""
        walk = slab(_border({"rectangle": "40 ft x 20 ft"}, width="4 ft"))
        assert walk.area_sqft == pytest.approx(544, abs=EXACT)
        assert edges(walk)[EdgeKind.OUTER] == pytest.approx(152, abs=EXACT)
        assert edges(walk)[EdgeKind.POOL] == pytest.approx(120, abs=EXACT)

    def test_s3_as_a_border(self):
        """S3. A round pool of 46 ft with a walk of 4 ft: 200 pi sq ft (algebra.com)."""
        walk = slab(_round_pool(width="4 ft"))
        assert walk.area_sqft == pytest.approx(200 * math.pi, abs=EXACT)

    def test_a_width_for_each_side(self):
        """Each side its own: (32 + 3 + 5) x (16 + 8 + 4) less the pool."""
        typed = _border(
            {"rectangle": "32 ft x 16 ft"}, left="3 ft", right="5 ft", top="8 ft", bottom="4 ft"
        )
        assert slab(typed).area_sqft == pytest.approx(40 * 28 - 32 * 16, abs=EXACT)

    @pytest.mark.parametrize("pool", [
        {"rectangle": "32 ft x 16 ft"}, {"right_triangle": "12 ft x 9 ft"},
        {"circle": {"radius": "9 ft"}}, {"ellipse": "30 ft x 14 ft"},
        {"regular_polygon": {"sides": "8", "side": "6 ft"}},
        {"rectangle": "32 ft x 14 ft", "corner_radius": "4 ft"},
        {"half_circle": {"radius": "9 ft"}},
    ])  # fmt: skip
    def test_rounded_corners_are_shapelys_buffer(self, pool: Typed):
        """With rounded corners the whole is the library's buffer, and Steiner's formula holds."""
        deck = slab(_border(pool, width="4 ft", corners="rounded"))
        alone = slab(pool)
        edge = edges(alone)[EdgeKind.OUTER]
        assert deck.area_sqft == pytest.approx(4 * edge + math.pi * 4**2, rel=1e-6)
        ring = Polygon(fine_ring(alone.added[0].loops[0]))
        assert deck.area_sqft == pytest.approx(ring.buffer(4, 64).area - ring.area, rel=1e-4)

    def test_square_corners_are_shapelys_mitre(self):
        """With square corners the whole is the library's mitred buffer, inside corners too."""
        pool = outline((0, 0), (30, 0), (30, 12), (14, 12), (14, 26), (0, 26))
        deck = slab(_border(pool, width="4 ft"))
        ring = Polygon([(0, 0), (30, 0), (30, 12), (14, 12), (14, 26), (0, 26)])
        grown = ring.buffer(4, join_style="mitre", mitre_limit=9)
        assert deck.area_sqft == pytest.approx(grown.area - ring.area, abs=1e-6)

    def test_a_bay_that_bows_in(self):
        """Round a bay of 8 ft radius the outside edge has 4 ft; the library's buffer agrees."""
        pool = outline(
            (0, 0), (30, 0), (30, 16), {"to": feet((0, 16)), "radius": "40 ft", "bows": "in"}
        )
        deck = slab(_border(pool, width="3 ft", corners="rounded"))
        ring = Polygon(fine_ring(slab(pool).added[0].loops[0]))
        assert deck.area_sqft == pytest.approx(ring.buffer(3, 64).area - ring.area, rel=1e-4)

    def test_a_smooth_pool(self):
        """Round a smooth freeform pool: width times edge and pi times width squared (Steiner)."""
        points = [(0, 0), (9, -3), (20, 0), (22, 8), (12, 7), (3, 9)]
        closed = {"to": feet(points[0]), "smooth_through": [feet(p) for p in points[1:]]}
        pool = outline(points[0], closed)
        deck = slab(_border(pool, width="3 ft"))
        edge = edges(slab(pool))[EdgeKind.OUTER]
        assert deck.area_sqft == pytest.approx(3 * edge + math.pi * 9, rel=1e-5)


class TestTies:
    """Two tapes from two pins."""

    def test_a_rectangle_comes_back(self):
        """Pins at the ends of the house wall, corners 3-4-5 from them: 16 x 12 ft."""
        points = [
            {"a": "12 ft", "b": "20 ft"},
            {"a": "20 ft", "b": "12 ft"},
            {"a": "16 ft", "b": "0.001 in"},
            {"a": "0.001 in", "b": "16 ft"},
        ]
        found = slab({"ties": {"apart": "16 ft", "side": "top", "points": points}})
        assert found.area_sqft == pytest.approx(16 * 12, abs=0.01)

    def test_a_round_pool_by_ties(self):
        """Sixteen points round a circle of 9 ft radius, tied from 30 ft apart, are that circle."""
        typed = _tied(lambda a: (15 + 9 * math.cos(a), 14 + 9 * math.sin(a)), 16)
        circle = Point(0, 0).buffer(9, 256).area
        assert slab(typed).area_sqft == pytest.approx(circle, rel=4e-4)


def _tied(at: Callable[[float], tuple[float, float]], count: int) -> Typed:
    spots = [at(2 * math.pi * n / count) for n in range(count)]
    points = [
        {"a": f"{math.dist((0, 0), p):.9f} ft", "b": f"{math.dist((30, 0), p):.9f} ft"}
        for p in spots
    ]
    return {"ties": {"apart": "30 ft", "side": "top", "edge": "smooth", "points": points}}
