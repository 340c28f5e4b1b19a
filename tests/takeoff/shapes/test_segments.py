"""Straight sides and arcs."""

import math
from fractions import Fraction

import pytest

from quotegen.quantity import Length
from quotegen.takeoff.shapes.segments import (
    FULL_TURN_RAD,
    Arc,
    Line,
    Placing,
    point_ft,
    shares_at_steps,
)
from tests.takeoff.plans import FLOAT_NOISE

QUARTER = Arc(center=(1, 2), radius_ft=5, start_rad=0, sweep_rad=math.pi / 2)
CIRCLE = Arc(center=(1, 2), radius_ft=5, start_rad=0, sweep_rad=FULL_TURN_RAD)


def test_a_line_is_as_long_as_its_ends_are_apart():
    """A 3-4-5 side is 5 ft long."""
    assert Line(start=(0, 0), end=(3, 4)).length_ft == 5


def test_the_place_on_a_line_stops_at_its_ends():
    """A point beyond an end of a side is nearest to that end."""
    line = Line(start=(0, 0), end=(10, 0))
    assert [line.share_at(point) for point in ((-5, 1), (4, 1), (12, 3))] == [0, 0.4, 1]


def test_an_arc_is_radius_times_angle():
    """A quarter of a 5 ft circle is 5 pi / 2 long."""
    assert QUARTER.length_ft == pytest.approx(5 * math.pi / 2)


def test_an_arc_ends_where_its_sweep_ends():
    """A quarter turn about (1, 2) ends straight above it."""
    assert QUARTER.end == pytest.approx((1, 7))


def test_the_place_on_an_arc_stops_at_its_ends():
    """A point past an end of an arc is nearest to that end."""
    places = [QUARTER.share_at(point) for point in ((6, 1), (6, 7), (-4, 2.1))]
    assert places == pytest.approx([0, 0.5, 1])


def test_a_backward_arc_has_the_same_points():
    """Going along an arc the other way swaps its ends and turns its sweep."""
    back = QUARTER.backwards()
    assert (*back.start, *back.end) == pytest.approx((*QUARTER.end, *QUARTER.start))
    assert back.sweep_rad == -QUARTER.sweep_rad
    assert back.share_at((6, 7)) == pytest.approx(0.5)


def test_a_part_of_a_circle_may_pass_its_start():
    """From three quarters to one quarter is the half circle over the start."""
    part = CIRCLE.between(0.75, 0.25)
    assert part.sweep_rad == pytest.approx(math.pi)
    assert part.point_at(0.5) == pytest.approx((6, 2))


def test_a_circle_from_its_start_to_its_start_is_whole():
    """A run round a whole circle has the whole length."""
    assert CIRCLE.between(0, 0).length_ft == pytest.approx(CIRCLE.length_ft)


def test_two_arcs_of_one_circle_share_their_drawn_points():
    """Corners of a drawn arc stand at whole compass steps, wherever the arc begins."""
    step = math.radians(10)
    first = Arc(center=(0, 0), radius_ft=1, start_rad=0.05, sweep_rad=1.0).corners(step)[1:]
    second = Arc(center=(0, 0), radius_ft=1, start_rad=1.4, sweep_rad=-1.2).corners(step)[1:]
    shared = [p for p in first if any(math.dist(p, q) < FLOAT_NOISE for q in second)]
    assert len(shared) == len([n for n in range(36) if 0.2 < n * step < 1.05])


def test_steps_begin_at_the_start_of_the_sweep():
    """The first corner of a drawn arc is its start, and none is its end."""
    assert shares_at_steps(0, 1, 0.25) == pytest.approx((0, 0.25, 0.5, 0.75))
    assert shares_at_steps(0, -1, 0.25) == pytest.approx((0, 0.25, 0.5, 0.75))


@pytest.mark.parametrize(
    ("turn", "there"), [(90, (1, 5)), (180, (-2, 2)), (270, (1, -1)), (-90, (1, -1)), (450, (1, 5))]
)
def test_quarter_turns_are_exact(turn: int, there: tuple[float, float]):
    """A piece turned by quarters lands on whole feet without float dust."""
    assert Placing.of((1, 2), Fraction(turn)).point((3, 0)) == there


def test_a_turned_arc_turns_about_the_origin_of_its_piece():
    """An arc of a piece keeps its shape and moves with the piece."""
    placed = QUARTER.placed(Placing.of((10, 0), Fraction(90)))
    assert placed.center == pytest.approx((8, 1))
    assert placed.start == pytest.approx((8, 6))


def test_a_point_in_feet():
    """A typed point is a pair of feet."""
    assert point_ft((Length(Fraction(49, 2)), Length(Fraction(-3)))) == (24.5, -3.0)


@pytest.mark.parametrize(
    ("sweep_rad", "bulge_sqft"),
    [(math.pi, 12.5 * math.pi), (math.pi / 2, 12.5 * (math.pi / 2 - 1)), (-math.pi / 2, -7.1350)],
)
def test_the_area_between_an_arc_and_its_chord(sweep_rad: float, bulge_sqft: float):
    """Half of angle minus sine times radius squared (CRC): a half disc, and a quarter's segment."""
    arc = Arc(center=(1, 2), radius_ft=5, start_rad=0.3, sweep_rad=sweep_rad)
    assert arc.bulge_sqft == pytest.approx(bulge_sqft, abs=1e-4)
    chord = Line(start=arc.end, end=arc.start)
    assert arc.green_sqft + chord.green_sqft == pytest.approx(arc.bulge_sqft)
