"""Joints that might run from a cut-out to the edge of the slab.

Every place along the cut-out offers a few: square to it, upright or level.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LinearRing, LineString
from shapely import Point as Vertex

from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import Spot, hit, interior_rad, spot_at
from quotegen.takeoff.records import Point, Ring

_SLACK_RAD = math.radians(0.5)
_PLACES = 48
_WAYS: tuple[Point, ...] = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))
_JOINT, _SKEW = 0.012, 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoke:
    """One joint from a cut-out to the outer edge; places count sides along each ring."""

    start: Spot
    end: Spot
    at_hole: float
    at_edge: float
    cost: float


def spokes_of(edge: Ring, hole: Ring, limits: Limits) -> Iterator[Spoke]:
    """Yield joints that leave the cut-out and meet the edge near enough to square."""
    for start, ways in (*_starts(hole, limits), *_to_corners(edge, hole, limits)):
        for way in ways:
            end = hit(edge, start.point, way)
            back = hit(hole, start.point, way)
            if end is None or (
                back and math.dist(back.point, start.point) < math.dist(end.point, start.point)
            ):
                continue
            angle = min(_meets(hole, start, way, sign=-1), _meets(edge, end, way, sign=1))
            if angle < limits.corner_rad - _SLACK_RAD:
                continue
            long = math.dist(start.point, end.point)
            yield Spoke(
                start=start,
                end=end,
                at_hole=start.side + start.share,
                at_edge=end.side + end.share,
                cost=_JOINT * long + _SKEW * max(0.0, math.pi / 2 - angle),
            )


def _starts(hole: Ring, limits: Limits) -> Iterator[tuple[Spot, tuple[Point, ...]]]:
    around = math.fsum(math.dist(hole[n - 1], at) for n, at in enumerate(hole))
    step, left = around / _PLACES, 0.0
    for n, start in enumerate(hole):
        before, end = hole[n - 1], hole[(n + 1) % len(hole)]
        length = math.dist(start, end)
        ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        if math.pi - interior_rad(before, start, end) > limits.turn_rad:
            yield Spot(n, 0.0, start), _WAYS
            vx, vy = start[0] - before[0], start[1] - before[1]
            back = math.hypot(vx, vy)
            yield Spot(n, 0.0, start), ((-ux, -uy), (vx / back, vy / back))
        elif max(length, math.dist(before, start)) > 2 * step:
            yield Spot(n, 0.0, start), ((uy, -ux),)
        while left < length:
            if left > 0:
                yield spot_at(hole, n, left / length), ((uy, -ux), *_WAYS)
            left += step
        left -= length


def _to_corners(edge: Ring, hole: Ring, limits: Limits) -> Iterator[tuple[Spot, tuple[Point, ...]]]:
    """Yield the shortest way to each inside corner of the edge."""
    around = LinearRing(hole)
    for n, corner in enumerate(edge):
        if interior_rad(edge[n - 1], corner, edge[(n + 1) % len(edge)]) - math.pi < limits.turn_rad:
            continue
        near = around.interpolate(around.project(Vertex(corner)))
        side = min(
            range(len(hole)),
            key=lambda m: LineString((hole[m], hole[(m + 1) % len(hole)])).distance(near),
        )
        one, other = hole[side], hole[(side + 1) % len(hole)]
        spot = spot_at(hole, side, math.dist(one, (near.x, near.y)) / math.dist(one, other))
        long = math.dist(spot.point, corner)
        if long > 0:
            way = ((corner[0] - spot.point[0]) / long, (corner[1] - spot.point[1]) / long)
            yield spot, (way,)


def _meets(ring: Ring, spot: Spot, way: Point, *, sign: int) -> float:
    """Return the smaller angle on either side of a joint where it meets a ring."""
    start, end = ring[spot.side], ring[(spot.side + 1) % len(ring)]
    before = ring[spot.side - 1] if spot.share == 0 else start
    angles = []
    for one in (before, end):
        dx, dy = one[0] - spot.point[0], one[1] - spot.point[1]
        length = math.hypot(dx, dy) or 1.0
        angles.append(math.acos(max(-1.0, min(1.0, -sign * (dx * way[0] + dy * way[1]) / length))))
    return min(angles)
