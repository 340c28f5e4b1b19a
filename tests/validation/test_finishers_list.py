"""The joint plan of each example, judged joint by joint against a list of a finisher's rules.

The list was written before looking, as common practice: what somebody with a saw would say of a
plan that is laid before him. The geometry is that of the plan as it is drawn, worked out here.

1. An inside corner of the slab has a joint, or a crack starts there.
2. No joint ends within a foot and a half of an outside corner: what it cuts off breaks off.
3. A joint meets the edge at 60 degrees or more, and so do two joints that cross.
4. No joint ends in the side of another: the crack goes on through the panel beyond.
5. No panel is longer than one and a half times its width (ACI 302.1R-80, 2.3.2).
"""

import math
from collections import Counter
from collections.abc import Iterator
from decimal import Decimal
from itertools import pairwise
from pathlib import Path

import pytest
from shapely import LineString, Point, Polygon, union_all
from shapely.geometry.polygon import orient

from quotegen.takeoff.joints.records import JointPlan
from tests.pricing import shop
from tests.takeoff.plans import joints_of

HAIR_FT, AT_FT, CORNER_FT, SQUARE_DEG, TURN_DEG, STRAIGHT_DEG = 0.05, 0.2, 1.5, 60.0, 30.0, 150.0
RATIO, CURVE_DEG = Decimal("1.5"), 3.0  # a curve is drawn in short straight lines


def _slab(plan: JointPlan) -> Polygon:
    panels = [Polygon(panel.outline_ft).buffer(HAIR_FT / 4) for panel in plan.panels]
    whole = union_all(panels).simplify(HAIR_FT / 2)
    assert isinstance(whole, Polygon)
    return orient(whole)


def _corners(slab: Polygon) -> Iterator[tuple[Point, bool]]:
    """Yield the corners that turn sharply, and whether each is an outside corner of the slab."""
    for line in (slab.exterior, *slab.interiors):
        ring = list(line.coords)[:-1]
        for before, at, after in zip(ring[-1:] + ring[:-1], ring, ring[1:] + ring[:1], strict=True):
            turn = math.remainder(_way(at, after) - _way(before, at), math.tau)
            if abs(math.degrees(turn)) > TURN_DEG:
                yield Point(at), turn > 0


def _way(start: tuple[float, ...], end: tuple[float, ...]) -> float:
    return math.atan2(end[1] - start[1], end[0] - start[0])


def _ends(plan: JointPlan) -> list[Point]:
    found: list[Point] = []
    for end in (Point(one) for joint in plan.joints for one in (joint.start_ft, joint.end_ft)):
        if all(end.distance(other) > HAIR_FT for other in found):
            found.append(end)
    return found


def _ways(plan: JointPlan, at: Point) -> list[float]:
    """The directions in which joints lead away from a place, in degrees from 0 to 360."""
    ends = [
        end
        for joint in plan.joints
        if LineString((joint.start_ft, joint.end_ft)).distance(at) < HAIR_FT
        for end in (joint.start_ft, joint.end_ft)
        if at.distance(Point(end)) > 2 * HAIR_FT
    ]
    return sorted(math.degrees(_way((at.x, at.y), end)) % 360 for end in ends)


def _gaps(ways: list[float]) -> list[float]:
    return [b - a for a, b in zip(ways, [*ways[1:], ways[0] + 360], strict=True)]


def _to_edge_deg(slab: Polygon, at: Point, way_deg: float) -> float:
    """The smaller angle of a joint with the edge that it ends at."""
    rings = [list(line.coords) for line in (slab.exterior, *slab.interiors)]
    sides = [pair for ring in rings for pair in pairwise(ring)]
    start, end = min(sides, key=lambda pair: LineString(pair).distance(at))
    apart = abs(math.degrees(_way(start, end)) - way_deg) % 180
    return min(apart, 180 - apart)


def _broken(plan: JointPlan) -> Iterator[int]:
    """Yield the number of each rule of the list that the plan breaks, once for each place."""
    slab, ends = _slab(plan), _ends(plan)
    corners = list(_corners(slab))
    for corner, is_outside in corners:
        away_ft = min(end.distance(corner) for end in ends)
        if not is_outside and away_ft > AT_FT:
            yield 1
        if is_outside and AT_FT < away_ft < CORNER_FT:
            yield 2
    for end in ends:
        if any(end.distance(corner) < AT_FT for corner, _ in corners):
            continue
        ways = _ways(plan, end)
        yield from _at_edge(slab, end, ways) if _is_at_edge(slab, end) else _inside(ways)
    yield from (5 for panel in plan.panels if panel.ratio > RATIO)


def _is_at_edge(slab: Polygon, end: Point) -> bool:
    return bool(slab.boundary.distance(end) < AT_FT)


def _at_edge(slab: Polygon, end: Point, ways: list[float]) -> Iterator[int]:
    if min(_to_edge_deg(slab, end, way) for way in ways) < SQUARE_DEG - CURVE_DEG:
        yield 3


def _inside(ways: list[float]) -> Iterator[int]:
    if min(_gaps(ways)) < SQUARE_DEG:
        yield 3
    if max(_gaps(ways)) > STRAIGHT_DEG:
        yield 4


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_a_plan_is_as_a_finisher_saws_it(job_file: Path):
    """No joint of an example breaks the list."""
    plans = [measured.joints for measured in shop.example_results(job_file).takeoff.placements]
    broken = Counter(rule for plan in plans if plan.joints for rule in _broken(plan))
    assert broken == {}


def test_the_list_finds_what_it_looks_for():
    """A joint into the side of another breaks rule 4, one near a corner 2, a skew one 3."""
    typed = (
        {"from": ["10 ft", "0 ft"], "to": ["10 ft", "16 ft"]},
        {"from": ["0 ft", "8 ft"], "to": ["10 ft", "8 ft"]},
        {"from": ["10 ft", "6 ft"], "to": ["20 ft", "15 ft"]},
    )
    plan = joints_of({"rectangle": "20 ft x 16 ft"}, lines=typed)
    assert set(_broken(plan)) == {2, 3, 4}
