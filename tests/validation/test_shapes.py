"""Areas and edges against published worked examples.

Each case names where it was published: title and site, as posted. The figures were worked out
again at full precision; where the published answer is wrong the recomputed one counts, and the
wrong one stands beside it as a trap that the program must not fall into.
"""

import math
from decimal import Decimal

import pytest
from shapely import Point

from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.shapes.arcs import arc_by_sweep, sweep_by_rise
from quotegen.takeoff.shapes.overlay import polygons
from quotegen.takeoff.shapes.path import fine_ring
from quotegen.takeoff.slab.slab import Slab
from tests.takeoff.plans import Typed, edges, feet, outline, placement, slab, takeoff

EXACT = 1e-6  # sq ft or ft: closed forms differ from the published figures by float noise alone
TWO_PLACES = 0.005  # the source prints two decimal places, half of the last one
FOUR_PLACES = 0.00005  # the source prints four decimal places
LIBRARY = 2e-5  # share: a circle of 720 sides is smaller than the circle by 1.3e-5 of its area
NUMERIC = 1e-7  # share: what is left of a sum over 20,000 strips
STRIPS = 20_000
M2_PER_SQFT = 0.3048**2  # the international foot of 1959
M_PER_FT = 0.3048


def _meters(point: tuple[float, float]) -> tuple[str, str]:
    return f"{point[0]} m", f"{point[1]} m"


class TestDecksAndWalksRoundACutOut:
    """Borders of even width round a pool, a garden and a round pool."""

    def test_s1_walk_round_a_pool(self):
        """S1. "Determine the area of the walkway", expertsmind.com: 544 sq ft.

        A pool of 20 x 40 ft with a walk 4 ft wide all round. The border counts on both sides:
        28 x 48. The source itself lists 256 sq ft (24 x 44) as the classic slip.
        """
        pool = {"rectangle": "40 ft x 20 ft", "at": feet((4, 4)), "is": "pool"}
        walk = slab({"rectangle": "48 ft x 28 ft"}, take_away=(pool,))
        assert walk.area_sqft == pytest.approx(28 * 48 - 20 * 40, abs=EXACT)
        assert walk.area_sqft == pytest.approx(544, abs=EXACT)
        assert edges(walk)[EdgeKind.OUTER] == pytest.approx(152, abs=EXACT)
        assert edges(walk)[EdgeKind.POOL] == pytest.approx(120, abs=EXACT)
        trap = 24 * 44 - 20 * 40
        assert trap == 256
        assert abs(walk.area_sqft - trap) > 1

    def test_s2_walk_round_a_garden(self):
        """S2. Solution 385517, algebra.com: 366 sq ft; 122 cu ft; 4.5185 cu yd at 4 in.

        A garden of 20 x 35 ft with a walk 3 ft wide.
        """
        garden = {"rectangle": "35 ft x 20 ft", "at": feet((3, 3))}
        walk = placement({"rectangle": "41 ft x 26 ft"}, take_away=(garden,))
        (found,) = takeoff(walk).placements
        assert found.area_sqft == Decimal("366.0")
        assert found.volume_cuyd * 27 == pytest.approx(122)
        assert float(found.volume_cuyd) == pytest.approx(4.5185, abs=FOUR_PLACES)

    def test_s3_walk_round_a_round_pool(self):
        """S3. Solution 125014, algebra.com: 200 pi sq ft.

        A pool of 46 ft diameter with a walk 4 ft wide.
        """
        pool = {"circle": {"diameter": "46 ft"}, "is": "pool"}
        walk = slab({"circle": {"diameter": "54 ft"}}, take_away=(pool,))
        assert walk.area_sqft == pytest.approx(200 * math.pi, abs=EXACT)
        assert edges(walk)[EdgeKind.OUTER] == pytest.approx(169.65, abs=TWO_PLACES)
        assert edges(walk)[EdgeKind.POOL] == pytest.approx(144.51, abs=TWO_PLACES)


class TestArcsAndRoundedCorners:
    """Drives that turn, rounded corners, and segments of a circle."""

    def test_s14_half_round_drive(self):
        """S14. Solution 493517, algebra.com: 457.8 sq ft.

        A half-round drive, 12 ft wide, whose outer arc was measured as 57 ft.
        """
        drive = slab({"ring": {"outer_arc": "57 ft", "width": "12 ft", "sweep": "180 deg"}})
        outer_ft = 57 / math.pi
        assert drive.area_sqft == pytest.approx(457.81, abs=TWO_PLACES)
        assert edges(drive)[EdgeKind.CURVED] == pytest.approx(57 + 19.30, abs=TWO_PLACES)
        assert edges(drive)[EdgeKind.OUTER] == pytest.approx(
            math.pi * (2 * outer_ft - 12) + 24, abs=EXACT
        )

    def test_s15_rounded_rectangle(self):
        """S15. "Area and perimeter of a rectangle with rounded corners", Math Central, Regina.

        100 x 200 ft with four corners of 20 ft radius. A public formula page (piping-designer.com,
        "Rounded corner rectangle") gives the perimeter as 2 (a + b - r2 (4 - pi)), which mixes
        a length and an area: that is the trap. Right is 2 (a + b) - 2 r (4 - pi).
        """
        measured = slab({"rectangle": "200 ft x 100 ft", "corner_radius": "20 ft"})
        assert measured.area_sqft == pytest.approx(19_656.64, abs=TWO_PLACES)
        assert edges(measured)[EdgeKind.OUTER] == pytest.approx(565.66, abs=TWO_PLACES)
        assert edges(measured)[EdgeKind.STRAIGHT] == pytest.approx(2 * (160 + 60), abs=EXACT)
        trap = 2 * (100 + 200 - 20**2 * (4 - math.pi))
        assert abs(edges(measured)[EdgeKind.OUTER] - trap) > 600

    def test_segment_of_a_circle(self):
        """15.1, C34. "Circular segment", CRC Concise Encyclopedia of Mathematics (Weisstein).

        R 10, h 4: chord 16, arc 18.5459, area 44.7295. The handbook approximation
        h (3 h2 + 4 c2) / (6 c) gives 44.6667: the trap.
        """
        segment = slab(outline((0, 0), {"to": feet((16, 0)), "rise": "4 ft"}))
        (arc, chord) = segment.boundary.outer[0]
        assert arc.length_ft == pytest.approx(18.5459, abs=FOUR_PLACES)
        assert chord.length_ft == pytest.approx(16, abs=EXACT)
        assert segment.area_sqft == pytest.approx(44.7295, abs=FOUR_PLACES)
        assert segment.area_sqft == pytest.approx(
            10**2 * math.acos((10 - 4) / 10) - (10 - 4) * math.sqrt(2 * 10 * 4 - 4**2), abs=EXACT
        )
        trap = 4 * (3 * 4**2 + 4 * 16**2) / (6 * 16)
        assert abs(segment.area_sqft - trap) > 0.06

    def test_radius_from_chord_and_rise(self):
        """15.2. The same relation: c 24, h 3 gives R 25.5, arc 24.9878, area 48.5948."""
        arc = arc_by_sweep((0, 0), (24, 0), sweep_by_rise(24, 3))
        assert arc.radius_ft == pytest.approx((24**2 / 4 + 3**2) / (2 * 3), abs=EXACT)
        assert math.degrees(arc.sweep_rad) == pytest.approx(56.1450, abs=FOUR_PLACES)
        assert arc.length_ft == pytest.approx(24.9878, abs=FOUR_PLACES)
        assert arc.bulge_sqft == pytest.approx(48.5948, abs=FOUR_PLACES)

    def test_the_same_arc_three_ways(self):
        """15.2 again: rise 3, radius 25.5 and the point in the middle make one arc."""
        ways: tuple[dict[str, object], ...] = (
            {"rise": "3 ft"}, {"radius": "25.5 ft"}, {"through": feet((12, -3))})  # fmt: skip
        areas = [
            slab(outline((0, 0), {"to": feet((24, 0)), **way}, (24, 16), (0, 16))).area_sqft
            for way in ways
        ]
        assert areas == pytest.approx([24 * 16 + 48.5948] * 3, abs=FOUR_PLACES)


class TestPolygonsByTheirCorners:
    """Shoelace and L-shapes."""

    def test_shoelace(self):
        """15.10, C36. "Shoelace formula for polygonal area", Rosetta Code: 30."""
        corners = ((3, 4), (5, 11), (12, 8), (9, 5), (5, 6))
        assert slab(outline(*corners)).area_sqft == pytest.approx(30, abs=EXACT)

    def test_l_shape_by_corners_and_by_pieces(self):
        """15.12. The L of (30, 12) and (14, 26): 556 sq ft = 30 x 12 + 14 x 14."""
        corners = slab(outline((0, 0), (30, 0), (30, 12), (14, 12), (14, 26), (0, 26)))
        pieces = slab(
            {"rectangle": "30 ft x 12 ft"}, {"rectangle": "14 ft x 14 ft", "at": feet((0, 12))}
        )
        assert corners.area_sqft == pytest.approx(30 * 12 + 14 * 14, abs=EXACT)
        assert pieces.area_sqft == pytest.approx(556, abs=EXACT)
        assert edges(pieces) == pytest.approx(edges(corners), abs=EXACT)

    def test_s16_a_notch_changes_the_area_and_not_the_edge(self):
        """S16. "Composite figures", siteview.net: 88 sq ft.

        12 x 9 ft with a corner of 4 x 5 ft removed; the edge stays 42 ft.
        """
        notch = {"rectangle": "4 ft x 5 ft", "at": feet((8, 4))}
        measured = slab({"rectangle": "12 ft x 9 ft"}, take_away=(notch,))
        assert measured.area_sqft == pytest.approx(88, abs=EXACT)
        assert edges(measured)[EdgeKind.OUTER] == pytest.approx(2 * (12 + 9), abs=EXACT)

    def test_s18_cafe_patio(self):
        """S18. "The owners of a restaurant", answer 953848, wyzant.com: 54.137 m2; 34.828 m.

        In meters: rectangle 6 x 4, right triangles 3 x 4 and 5 x 4 at its sides, half circle of
        radius 3 below.
        """
        patio: tuple[Typed, ...] = (
            {"rectangle": "6 m x 4 m"},
            {"right_triangle": "4 m x 3 m", "turn": "90 deg"},
            {"right_triangle": "5 m x 4 m", "at": _meters((6, 0))},
            {"half_circle": {"radius": "3 m"}, "at": _meters((3, 0)), "turn": "180 deg"},
        )
        measured = slab(*patio)
        area_m2 = measured.area_sqft * M2_PER_SQFT
        edge_m = edges(measured)[EdgeKind.OUTER] * M_PER_FT
        assert area_m2 == pytest.approx(24 + 6 + 10 + 4.5 * math.pi, abs=EXACT)
        assert area_m2 == pytest.approx(54.1372, abs=FOUR_PLACES)
        assert edge_m == pytest.approx(6 + 3 + 5 + 5 + math.sqrt(41) + 3 * math.pi, abs=EXACT)
        assert edge_m == pytest.approx(34.8279, abs=FOUR_PLACES)
        (found,) = takeoff(placement(*patio)).placements
        assert (found.area_m2, found.edges_m[EdgeKind.OUTER]) == (
            Decimal("54.14"),
            Decimal("34.83"),
        )


class TestPlainSlabs:
    """Area to volume to order, rounded up once."""

    def test_s20_patio_with_an_allowance(self):
        """S20. "Concrete decisions", doityourself.com: 60 cu ft; 2.23 cu yd; 2.45 with 10 %.

        12 x 15 ft at 4 in. The published 2.23 is 2.2222 rounded up, and its 2.45 inflates that
        again: the trap is rounding up at each step. Right are 2.2222 and 2.4444.
        """
        found = takeoff(
            placement({"rectangle": "12 ft x 15 ft"}), allowance="10 %", step="0.01 cu yd"
        )
        assert found.volume_cuyd * 27 == pytest.approx(60)
        assert float(found.volume_cuyd) == pytest.approx(2.2222, abs=FOUR_PLACES)
        assert found.order_cuyd == Decimal("2.45")  # 2.4444 up once to a hundredth
        trap = Decimal("2.23") * Decimal("1.10")
        assert trap > Decimal("2.45")

    def test_s20b_plain_patio(self):
        """S20b. "How to calculate cement patio slabs", ehow.com.

        30 x 20 ft at 4 in: 600 sq ft; 200 cu ft; 7.41 cu yd.
        """
        (found,) = takeoff(placement({"rectangle": "30 ft x 20 ft"})).placements
        assert found.area_sqft == Decimal("600.0")
        assert found.volume_cuyd * 27 == pytest.approx(200)
        assert float(found.volume_cuyd) == pytest.approx(7.41, abs=TWO_PLACES)

    def test_r1_area_rules_and_yards_are_a_note(self):
        """R1. "Concrete in backyard: how do we measure its size?", advice thread, zillow.com.

        The owner's drawing gives 1,607 sq ft; the contractor figures 23 yd x 81 = 1,863 sq ft
        back from what was poured. At 4 in flat 1,607 sq ft takes 19.84 cu yd; 23 cu yd would be
        4.64 in on average. The trap is to bill by the yards: 256 sq ft more.
        """
        (found,) = takeoff(placement({"rectangle": "160.7 ft x 10 ft"})).placements
        assert found.area_sqft == Decimal("1607.0")
        assert float(found.volume_cuyd) == pytest.approx(19.84, abs=TWO_PLACES)
        average_in = 23 * 324 / 1607
        assert average_in == pytest.approx(4.64, abs=TWO_PLACES)
        trap = 23 * 81
        assert trap - found.area_sqft == 256


def _library_area(measured: Slab) -> float:
    return sum(part.area for part in polygons(measured.region))


class TestAgainstOtherWays:
    """The same figures by the geometry library and by adding up strips."""

    @pytest.mark.parametrize("radius_ft", [1, 7.25, 23, 60])
    def test_circle_against_a_buffered_point(self, radius_ft: float):
        """A point grown by the library to a circle of 1,440 sides nearly has our area and edge."""
        circle = slab({"circle": {"radius": f"{radius_ft} ft"}})
        grown = Point(0, 0).buffer(radius_ft, quad_segs=360)
        assert circle.area_sqft == pytest.approx(grown.area, rel=LIBRARY)
        assert edges(circle)[EdgeKind.OUTER] == pytest.approx(grown.length, rel=LIBRARY)

    def test_ring_against_two_buffers(self):
        """A whole ring is a circle grown more less a circle grown less."""
        ring = slab({"ring": {"outer_radius": "14 ft", "width": "4 ft", "sweep": "360 deg"}})
        grown = Point(0, 0).buffer(14, quad_segs=360).difference(Point(0, 0).buffer(10, 360))
        assert ring.area_sqft == pytest.approx(grown.area, rel=LIBRARY)
        both = edges(ring)[EdgeKind.OUTER] + edges(ring)[EdgeKind.INNER]
        assert both == pytest.approx(grown.length, rel=LIBRARY)

    def test_a_freeform_deck_against_the_library(self):
        """A deck of arcs with a pool with round ends, as many short sides by the library."""
        deck = outline(
            (0, 0), (45.25, 0), {"to": feet((42.75, 25.25)), "radius": "16 ft"},
            {"to": feet((2.5, 25.25)), "radius": "38 ft"}, {"to": feet((0, 0)), "radius": "16 ft"},
        )  # fmt: skip
        pool = {"rectangle": "32 ft x 14 ft", "corner_radius": "7 ft", "at": feet((6.625, 8))}
        measured = slab(deck, take_away=(pool,))
        assert measured.area_sqft == pytest.approx(_library_area(measured), rel=LIBRARY)

    def test_segment_against_strips(self):
        """The area between arc and chord is the sum of its upright strips (midpoint rule)."""
        radius_ft, rise_ft = 10, 4
        half_ft = math.sqrt(radius_ft**2 - (radius_ft - rise_ft) ** 2)
        width_ft = 2 * half_ft / STRIPS
        middles = (-half_ft + (n + 0.5) * width_ft for n in range(STRIPS))
        heights = (math.sqrt(radius_ft**2 - x**2) - (radius_ft - rise_ft) for x in middles)
        arc = arc_by_sweep((0, 0), (2 * half_ft, 0), sweep_by_rise(2 * half_ft, rise_ft))
        assert arc.bulge_sqft == pytest.approx(math.fsum(heights) * width_ft, rel=NUMERIC)

    def test_ellipse_against_strips(self):
        """15.13. An oval of 20 x 12 ft: pi a b is 188.50 sq ft, perimeter 51.054 ft (Ramanujan)."""
        oval = slab({"ellipse": "20 ft x 12 ft", "turn": "31 deg"})
        assert oval.area_sqft == pytest.approx(188.50, abs=TWO_PLACES)
        assert edges(oval)[EdgeKind.OUTER] == pytest.approx(51.054, abs=0.0005)
        angles = ((n + 0.5) * 2 * math.pi / STRIPS for n in range(STRIPS))
        speeds = (math.hypot(10 * math.sin(a), 6 * math.cos(a)) for a in angles)
        walked_ft = math.fsum(speeds) * 2 * math.pi / STRIPS
        assert edges(oval)[EdgeKind.OUTER] == pytest.approx(walked_ft, rel=NUMERIC)

    def test_the_drawn_polygon_is_the_exact_one_but_for_the_arcs(self):
        """Without an arc the polygon of the checks has the exact area."""
        measured = slab(outline((0, 0), (30, 0), (30, 12), (14, 12), (14, 26), (0, 26)))
        assert len(fine_ring(measured.boundary.outer[0])) == 6
        assert _library_area(measured) == pytest.approx(556, abs=EXACT)
