"""Sight and ways round things: reach of a chute, a conveyor, barrows and a pump line."""

import math
from pathlib import Path

import pytest
from shapely import Point, Polygon, box

from quotegen.takeoff.site.sight import Barriers
from tests.takeoff.site_world import figured

WALL = box(-1, 5, 1, 15)
ACCESS = "access: {{note: By the gate., truck_stand: [{at}]{more}}}\n"


def test_a_way_in_observation_is_straight():
    """With nothing between, the shortest way is the straight one."""
    barriers = Barriers.of((WALL,))
    way = barriers.way_to(barriers.ways((0, 0)), (10, 0))
    assert way is not None
    assert way[0] == pytest.approx(10)
    assert way[1] == ((0, 0), (10, 0))


def test_a_way_goes_round_the_nearer_corner():
    """From (-9, 6) to (9, 6) round a wall from 5 to 15: below it, by its two lower corners."""
    barriers = Barriers.of((WALL,))
    way = barriers.way_to(barriers.ways((-9, 6)), (9, 6))
    assert way is not None
    assert way[0] == pytest.approx(2 + 2 * math.hypot(8, 1), abs=0.1)
    assert len(way[1]) == 4


def test_a_wall_throws_a_shadow():
    """What lies behind a wall is out of sight, what lies beside it is not."""
    seen = Barriers.of((WALL,)).seen((0, 0), 30)
    assert not seen.covers(Point(0, 20))
    assert seen.covers(Point(0, 4))
    assert seen.covers(Point(8, 20))


def test_reach_by_a_way_covers_what_is_behind():
    """The area within a way of 40 ft holds what is behind the wall; within 15 ft it does not."""
    barriers = Barriers.of((WALL,))
    ways = barriers.ways((0, 0))
    assert barriers.within(ways, 40).covers(Point(0, 20))
    assert not barriers.within(ways, 15).covers(Point(0, 20))


def test_reach_without_barriers_is_a_disc():
    """Nothing in the way: the area in reach is pi r squared, to a thousandth."""
    area = Barriers.of((box(90, 90, 91, 91),)).seen((0, 0), 16).area
    assert area == pytest.approx(math.pi * 16**2, rel=1e-3)


def test_share_of_a_deck_by_hand(tmp_path: Path):
    """A chute of 16 ft at the corner of a patio reaches a quarter disc of it."""
    head = """\
quote: T-1
date: 2026-05-14
start: 2026-06-08
title: Patio
customer: {name: Wren Abernathy}
site: {address: 1 Test Lane, town: Harrow Bend}
finish: broom
access: {note: By the gate., truck_stand: [0, 0]}
placements: [{id: patio, use: patio, add: [{rectangle: 30 ft x 20 ft}]}]
"""
    found = figured(tmp_path, head=head)
    assert found.results is not None
    reach = found.results.takeoff.reach
    assert reach is not None
    shares = {method.id: float(method.share) for method in reach.methods}
    assert shares["chute"] == pytest.approx(100 * math.pi * 16**2 / 4 / 600, abs=0.1)
    assert shares["conveyor"] == 100
    assert float(reach.route_ft or 0) == pytest.approx(math.hypot(30, 20), abs=0.1)


def test_the_cheapest_that_reaches_all_is_the_access_line(tmp_path: Path):
    """A pool deck out of a conveyor's reach goes by barrows, and a message says so."""
    found = figured(tmp_path, ACCESS.format(at="54 ft, 10 ft", more=""))
    assert found.results is not None
    assert found.results.access is not None
    assert found.results.access.method == "barrows"
    assert [p.code for p in found.problems] == ["access-chosen"]
    line = next(one for one in found.results.quote.chosen.lines if one.rate_id == "barrows")
    assert line.amount == found.results.access.amount


def test_a_job_may_name_its_way(tmp_path: Path):
    """The named way is priced though a cheaper one reaches all; nothing is said."""
    found = figured(tmp_path, ACCESS.format(at="54 ft, 10 ft", more=", method: pump"))
    assert found.results is not None
    rates = [line.rate_id for line in found.results.quote.chosen.lines]
    assert "pump" in rates
    assert "barrows" not in rates
    assert found.problems == ()


def test_a_longer_chute_reaches_more(tmp_path: Path):
    """The length of this truck's chute takes the place of the one in the book."""
    shares = []
    for more in (", chute: 10 ft", ", chute: 18 ft"):
        found = figured(tmp_path, ACCESS.format(at="50 ft, 10 ft", more=more))
        assert found.results is not None
        assert found.results.takeoff.reach is not None
        shares.append(found.results.takeoff.reach.methods[0].share)
    assert shares[0] < shares[1]


def test_barriers_keep_only_corners_that_stick_out():
    """An L has five such corners."""
    ell = Polygon([(0, 0), (9, 0), (9, 3), (3, 3), (3, 9), (0, 9)])
    assert len(Barriers.of((ell,)).corners) == 5
