"""Arcs by radius, by rise and by a point."""

import math

import pytest

from quotegen.takeoff.shapes.arcs import arc_by_sweep, sweep_by_radius, sweep_by_rise, sweep_through
from quotegen.takeoff.shapes.faults import Fault

LEFT, RIGHT = (0.0, 0.0), (24.0, 0.0)


@pytest.mark.parametrize("rise_ft", [0.1, 3, 12, 15, 40])
def test_an_arc_by_rise_rises_so_far(rise_ft: float):
    """Below, at and past the half circle the middle of the arc stands off by the rise."""
    arc = arc_by_sweep(LEFT, RIGHT, sweep_by_rise(24, rise_ft))
    assert arc.point_at(0.5) == pytest.approx((12, -rise_ft))
    assert arc.start == pytest.approx(LEFT, abs=1e-9)
    assert arc.end == pytest.approx(RIGHT)


def test_clockwise_arcs_bow_to_the_other_side():
    """A sweep below zero bows to the left of the way from start to end."""
    arc = arc_by_sweep(LEFT, RIGHT, -sweep_by_rise(24, 3))
    assert arc.point_at(0.5) == pytest.approx((12, 3))
    assert arc.end == pytest.approx(RIGHT)


def test_radius_gives_the_lesser_arc():
    """A radius alone means the arc that is at most a half circle."""
    sweep = sweep_by_radius(LEFT, RIGHT, 25.5)
    assert isinstance(sweep, float)
    assert arc_by_sweep(LEFT, RIGHT, sweep).radius_ft == pytest.approx(25.5)
    assert sweep < math.pi


def test_half_the_chord_is_the_least_radius():
    """A radius of half the chord is a half circle; less is a fault that names both numbers."""
    assert sweep_by_radius(LEFT, RIGHT, 12) == pytest.approx(math.pi)
    fault = sweep_by_radius(LEFT, RIGHT, 11.5)
    assert isinstance(fault, Fault)
    assert fault.code == "arc-radius"
    for said in ("11'-6\"", "24'-0\" apart", "at least 12'-0\""):
        assert said in fault.message


def test_a_radius_short_by_a_hair_is_a_half_circle():
    """A radius within 1/8 in of half the chord is what the tape gave for a half circle."""
    assert sweep_by_radius(LEFT, RIGHT, 12 - 1 / 100) == pytest.approx(math.pi)


@pytest.mark.parametrize("through", [(12, -3), (2, -9), (12, 4), (-6, 30), (12, 12)])
def test_an_arc_goes_through_its_point(through: tuple[float, float]):
    """The circle by three points has that point on it, between start and end."""
    sweep = sweep_through(LEFT, through, RIGHT)
    assert isinstance(sweep, float)
    arc = arc_by_sweep(LEFT, RIGHT, sweep)
    assert math.dist(arc.center, through) == pytest.approx(arc.radius_ft)
    assert 0 < arc.share_at(through) < 1


@pytest.mark.parametrize("through", [(12, 0), (12, 0.001), (30, 0), (0, 0)])
def test_a_point_on_the_line_makes_no_arc(through: tuple[float, float]):
    """A through-point on the straight line is a fault, and so is one at an end."""
    fault = sweep_through(LEFT, through, RIGHT)
    assert isinstance(fault, Fault)
    assert fault.code == "arc-through"
    assert "straight line" in fault.message
