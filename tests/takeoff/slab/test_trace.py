"""The boundary traced back to exact sides."""

from fractions import Fraction

import pytest
from shapely import box

from quotegen.takeoff.plan_geometry import Against
from quotegen.takeoff.shapes.path import signed_area_sqft
from quotegen.takeoff.shapes.segments import Line, Placing
from quotegen.takeoff.slab.trace import boundary_of
from tests.takeoff.plans import Typed, feet, slab

DECK: Typed = {"rectangle": "24 ft x 16 ft"}


def test_the_first_side_typed_comes_first():
    """Runs follow the job file, so that a letter stays where it is when a piece is added."""
    measured = slab({**DECK, "turn": "200 deg"})
    (first, *_) = measured.boundary.outer[0]
    assert first.start == pytest.approx((0, 0))
    assert first.length_ft == pytest.approx(24)


def test_rings_follow_the_order_of_the_file():
    """Cut-outs are lettered in the order that they were typed."""
    holes = tuple({"circle": {"radius": f"{n} ft"}, "at": feet((9 - 3 * n, 8))} for n in (2, 1))
    measured = slab(DECK, take_away=holes)
    assert [ring[0].length_ft > 7 for ring in measured.boundary.inner] == [True, False]


def test_the_slab_lies_on_the_left():
    """Outer rings run counter-clockwise and inner rings clockwise."""
    measured = slab(DECK, take_away=({"rectangle": "2 ft x 2 ft", "at": feet((4, 4))},))
    ((_, second, *_),), (hole,) = measured.boundary.outer, measured.boundary.inner
    assert second.end == pytest.approx((24, 16))
    assert signed_area_sqft(hole) == pytest.approx(-4)
    assert all(side.against is Against.OPENING for side in hole)


def test_a_hole_at_a_corner_that_is_only_a_point():
    """A cut-out that touches the edge in one corner is still all there."""
    cut = {"rectangle": "4 ft x 4 ft", "at": feet((12, 0)), "turn": "45 deg"}
    measured = slab(DECK, take_away=(cut,))
    rings = (*measured.boundary.outer, *measured.boundary.inner)
    assert sum(side.length_ft for ring in rings for side in ring) == pytest.approx(80 + 16)


def test_a_stretch_that_runs_against_its_side_keeps_its_length():
    """A side that was walked the other way is measured all the same."""
    corners = [(0.0, 0.0), (0.0, 3.0), (5.0, 3.0), (5.0, 0.0)]
    ends = [*corners[1:], corners[0]]
    clockwise = tuple(Line(start=a, end=b) for a, b in zip(corners, ends, strict=True))
    turned = tuple(side.placed(Placing.of((0, 0), Fraction(0))) for side in clockwise)
    boundary = boundary_of([box(0, 0, 5, 3)], [turned], [])
    assert sum(side.length_ft for side in boundary.outer[0]) == pytest.approx(16)
