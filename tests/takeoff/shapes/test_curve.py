"""Smooth curves: their area, length and parts."""

import math
from itertools import pairwise

import pytest
from shapely import LineString, Polygon

from quotegen.takeoff.shapes.curve import curve_through
from quotegen.takeoff.shapes.path import fine_ring

STRIPS = 20_000


def test_area_and_length_by_integration():
    """Area by strips of shoelace and length by short chords agree with the exact figures."""
    curve = curve_through([(0, 0), (4, 3), (9, 2), (12, 5), (15, 0)])
    points = [curve.point_at(n / STRIPS) for n in range(STRIPS + 1)]
    assert curve.length_ft == pytest.approx(LineString(points).length, rel=1e-6)
    shoelace = math.fsum((a[0] * b[1] - b[0] * a[1]) / 2 for a, b in pairwise(points))
    assert curve.green_sqft == pytest.approx(shoelace, abs=1e-6)


def test_natural_and_periodic():
    """Free ends have no curvature; a closed curve runs through its start without a kink."""
    points = [(0.0, 0.0), (4.0, 3.0), (9.0, 2.0), (12.0, 5.0)]
    first = curve_through(points).spans[0]
    bend = [first.p0[i] - 2 * first.p1[i] + first.p2[i] for i in (0, 1)]
    assert bend == pytest.approx([0, 0], abs=1e-9)
    closed = curve_through(points, closed=True)
    assert closed.continues_into(closed)
    last, start = closed.spans[-1], closed.spans[0]
    bends = [
        [(s[0][i] - 2 * s[1][i] + s[2][i]) / math.dist(*ends) ** 2 for i in (0, 1)]
        for s, ends in (
            ((last.p1, last.p2, last.p3), (last.p0, last.p3)),
            ((start.p0, start.p1, start.p2), (start.p0, start.p3)),
        )
    ]
    assert bends[0] == pytest.approx(bends[1], abs=1e-9)


def test_the_drawn_polygon_is_close():
    """What the checks use has nearly the exact area."""
    curve = curve_through([(0, 0), (8, -3), (15, 4), (7, 9)], closed=True)
    assert Polygon(fine_ring((curve,))).area == pytest.approx(curve.green_sqft, rel=3e-5)


def test_a_part_and_a_turned_curve():
    """Two parts make the whole, and a way back is the same length."""
    curve = curve_through([(0, 0), (4, 3), (9, 2), (12, 5)])
    parts = curve.between(0, 0.4), curve.between(0.4, 1)
    assert math.fsum(p.length_ft for p in parts) == pytest.approx(curve.length_ft, rel=1e-7)
    assert curve.backwards().length_ft == pytest.approx(curve.length_ft)
    at = curve.point_at(0.37)
    assert curve.share_at(at) == pytest.approx(0.37, abs=1e-6)
