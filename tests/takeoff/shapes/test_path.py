"""Closed loops: area and length, runs that continue each other, loops that cross themselves."""

import math
from dataclasses import replace
from itertools import pairwise

import pytest

from quotegen.takeoff.plan_geometry import Against, Point
from quotegen.takeoff.shapes import path
from quotegen.takeoff.shapes.oval import Oval
from quotegen.takeoff.shapes.segments import FULL_TURN_RAD, Arc, Line

HALF = Arc(center=(0, 0), radius_ft=4, start_rad=0, sweep_rad=math.pi)
FLAT = Line(start=(-4, 0), end=(4, 0))


def test_area_is_signed_by_direction():
    """Counter-clockwise is above zero, and the other way below."""
    loop = (FLAT, HALF)
    assert path.signed_area_sqft(loop) == pytest.approx(8 * math.pi)
    assert path.signed_area_sqft(path.backwards(loop)) == pytest.approx(-8 * math.pi)
    assert path.counter_clockwise(path.backwards(loop)) == path.backwards(path.backwards(loop))


def test_length_of_a_loop():
    """The edge of a half circle is its flat side and its arc."""
    assert path.loop_length_ft((FLAT, HALF)) == pytest.approx(8 + 4 * math.pi)


def test_rise_and_chord_of_a_half_circle():
    """The rise of a half circle is its radius, its chord twice that."""
    assert path.rise_ft(HALF) == pytest.approx(4)
    assert path.chord_ft(HALF) == pytest.approx(8)


def test_a_closed_run_has_no_chord():
    """A whole circle has a chord of zero and rises by its diameter."""
    circle = replace(HALF, sweep_rad=FULL_TURN_RAD)
    assert path.chord_ft(circle) == 0
    assert path.rise_ft(circle) == pytest.approx(8)


@pytest.mark.parametrize("radius_ft", [0.5, 7, 16, 60])
def test_a_drawn_arc_strays_less_than_a_pencil_line(radius_ft: float):
    """The plan shows an arc by straight steps that the eye cannot tell from it."""
    points = path.drawn_run(replace(HALF, radius_ft=radius_ft))
    middles = [((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in pairwise(points)]
    assert max(radius_ft - math.hypot(*middle) for middle in middles) < 0.01


def test_sides_in_one_line_join():
    """Two flush sides with the same thing beyond them are one run."""
    first, second = Line(start=(0, 0), end=(3, 0)), Line(start=(3, 0), end=(9, 0))
    assert path.joined(first, second) == Line(start=(0, 0), end=(9, 0))


def test_a_bend_however_slight_parts_two_sides():
    """Short sides that follow a curve stay as many runs."""
    first, second = Line(start=(0, 0), end=(3, 0)), Line(start=(3, 0), end=(6, 0.05))
    assert path.joined(first, second) is None


def test_a_side_that_turns_back_does_not_join():
    """Two sides in one line that run against each other are two runs."""
    first, second = Line(start=(0, 0), end=(3, 0)), Line(start=(3, 0), end=(0, 0))
    assert path.joined(first, second) is None


def test_what_lies_beyond_parts_two_sides():
    """A side against the house and the open side that goes on from it are two runs."""
    first = Line(start=(0, 0), end=(3, 0), against=Against.HOUSE)
    assert path.joined(first, Line(start=(3, 0), end=(9, 0))) is None


def test_arcs_of_one_circle_join():
    """Two half circles about one center are one whole circle."""
    other = replace(HALF, start_rad=math.pi)
    whole = path.joined(HALF, other)
    assert whole is not None
    assert whole.is_closed


def test_arcs_of_two_circles_do_not_join():
    """Where the radius changes a new run begins."""
    assert path.joined(HALF, replace(HALF, radius_ft=5, start_rad=math.pi)) is None
    assert path.joined(HALF, FLAT) is None


def test_parts_of_one_oval_join():
    """Two parts of one ellipse are one run."""
    oval = Oval(center=(0, 0), half_length_ft=5, half_width_ft=3)
    whole = path.joined(oval.between(0, 0.4), oval.between(0.4, 1))
    assert whole is not None
    assert whole.length_ft == pytest.approx(oval.length_ft)


def _loop(*corners: Point) -> path.Loop:
    ends = (*corners[1:], corners[0])
    return tuple(Line(start=a, end=b) for a, b in zip(corners, ends, strict=True))


def test_a_sound_loop_has_no_crossing():
    """A box encloses one area."""
    assert path.crossing_of(_loop((0, 0), (4, 0), (4, 3), (0, 3))) is None


def test_a_bow_tie_crosses_in_its_middle():
    """It says which two sides cross, and where."""
    crossing = path.crossing_of(_loop((0, 0), (4, 4), (4, 0), (0, 4)))
    assert crossing is not None
    assert crossing[:2] == (0, 2)
    assert crossing[2] == pytest.approx((2, 2))


def test_a_loop_that_touches_itself_in_a_corner_is_told():
    """A corner that lies on another side makes two areas of one outline."""
    crossing = path.crossing_of(_loop((0, 0), (4, 0), (4, 4), (2, 0), (0, 4)))
    assert crossing is not None
    assert crossing[2] == pytest.approx((2, 0))


def test_a_side_that_runs_back_along_another_is_told():
    """A spike of no width is no area."""
    crossing = path.crossing_of(_loop((0, 0), (4, 0), (8, 0), (4, 0), (4, 4)))
    assert crossing is not None


def test_an_arc_that_crosses_a_side_is_told():
    """An arc that bows through the far side crosses it."""
    arc = Arc(center=(2, 0), radius_ft=2, start_rad=math.pi, sweep_rad=-math.pi)
    lines = (Line(start=(4, 0), end=(4, 1)), Line(start=(4, 1), end=(0, 1)))
    crossing = path.crossing_of((arc, *lines, Line(start=(0, 1), end=(0, 0))))
    assert crossing is not None
    assert crossing[:2] == (0, 2)
