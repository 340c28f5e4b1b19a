"""Loops that cross themselves."""

import math

import pytest

from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.path import Loop, crossing_of
from quotegen.takeoff.shapes.segments import Arc, Line


def _loop(*corners: Point) -> Loop:
    ends = (*corners[1:], corners[0])
    return tuple(Line(start=a, end=b) for a, b in zip(corners, ends, strict=True))


def test_a_sound_loop_has_no_crossing():
    """A box encloses one area."""
    assert crossing_of(_loop((0, 0), (4, 0), (4, 3), (0, 3))) is None


def test_a_bow_tie_crosses_in_its_middle():
    """It says which two sides cross, and where."""
    crossing = crossing_of(_loop((0, 0), (4, 4), (4, 0), (0, 4)))
    assert crossing is not None
    assert crossing[:2] == (0, 2)
    assert crossing[2] == pytest.approx((2, 2))


def test_a_loop_that_touches_itself_in_a_corner_is_told():
    """A corner that lies on another side makes two areas of one outline."""
    crossing = crossing_of(_loop((0, 0), (4, 0), (4, 4), (2, 0), (0, 4)))
    assert crossing is not None
    assert crossing[2] == pytest.approx((2, 0))


def test_a_side_that_runs_back_along_another_is_told():
    """A spike of no width is no area."""
    crossing = crossing_of(_loop((0, 0), (4, 0), (8, 0), (4, 0), (4, 4)))
    assert crossing is not None


def test_an_arc_that_crosses_a_side_is_told():
    """An arc that bows through the far side crosses it."""
    arc = Arc(center=(2, 0), radius_ft=2, start_rad=math.pi, sweep_rad=-math.pi)
    lines = (Line(start=(4, 0), end=(4, 1)), Line(start=(4, 1), end=(0, 1)))
    crossing = crossing_of((arc, *lines, Line(start=(0, 1), end=(0, 0))))
    assert crossing is not None
    assert crossing[:2] == (0, 2)
