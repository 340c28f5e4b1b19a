"""Sight past barriers, and the shortest routes around them."""

import math

import pytest
from shapely import Point, Polygon, box

from quotegen.takeoff.site.sight import Barriers

WALL = box(-1, 5, 1, 15)


def test_a_route_in_sight_is_straight():
    """With nothing between, the shortest route is the straight line."""
    barriers = Barriers.of((WALL,))
    route = barriers.route_to(barriers.routes_from((0, 0)), (10, 0))
    assert route is not None
    assert route[0] == pytest.approx(10)
    assert route[1] == ((0, 0), (10, 0))


def test_a_route_turns_at_the_nearer_corners():
    """From (-9, 6) to (9, 6) around a wall from 5 to 15: below it, by its two lower corners."""
    barriers = Barriers.of((WALL,))
    route = barriers.route_to(barriers.routes_from((-9, 6)), (9, 6))
    assert route is not None
    assert route[0] == pytest.approx(2 + 2 * math.hypot(8, 1), abs=0.1)
    assert len(route[1]) == 4


def test_there_is_no_route_into_a_closed_yard():
    """A start inside a ring of walls reaches nothing outside it."""
    barriers = Barriers.of((box(-5, -5, 5, 5).difference(box(-4, -4, 4, 4)),))
    assert barriers.route_to(barriers.routes_from((0, 0)), (10, 0)) is None


def test_a_wall_hides_what_is_behind_it():
    """Of three points, the one behind the wall is out of sight."""
    points = ((0, 20), (0, 4), (8, 20))
    assert Barriers.of((WALL,)).in_sight((0, 0), points) == ((0, 4), (8, 20))


def test_a_wall_throws_a_shadow():
    """What lies behind a wall cannot be seen, what lies beside it can."""
    visible = Barriers.of((WALL,)).visible_from((0, 0), 30)
    assert not visible.covers(Point(0, 20))
    assert visible.covers(Point(0, 4))
    assert visible.covers(Point(8, 20))


def test_routes_reach_behind_a_wall():
    """Routes of 40 ft reach behind the wall; routes of 15 ft do not."""
    barriers = Barriers.of((WALL,))
    routes = barriers.routes_from((0, 0))
    assert barriers.within(routes, 40).covers(Point(0, 20))
    assert not barriers.within(routes, 15).covers(Point(0, 20))


def test_reach_without_barriers_is_a_disc():
    """Nothing in the way: the area in reach is pi r squared, to a thousandth."""
    area = Barriers.of((box(90, 90, 91, 91),)).visible_from((0, 0), 16).area
    assert area == pytest.approx(math.pi * 16**2, rel=1e-3)


def test_routes_turn_only_at_corners_that_stick_out():
    """An L has five such corners."""
    ell = Polygon([(0, 0), (9, 0), (9, 3), (3, 3), (3, 9), (0, 9)])
    assert len(Barriers.of((ell,)).corners) == 5
