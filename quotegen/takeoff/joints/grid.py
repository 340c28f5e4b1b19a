"""A grid of joints across a slab: through inside corners, square to cut-outs, then evenly."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from shapely import Polygon
from shapely.geometry.polygon import orient

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.judge import Limits
from quotegen.takeoff.joints.part import interior_rad
from quotegen.takeoff.plan_geometry import Point, Ring

_STRAIGHT_FT = 1.5
_LEVEL = 0.02  # a side that rises less than this per foot counts as level
_SAME_FT = 1e-5
_SLACK_RAD = math.radians(0.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class Anchor:
    """A place that a line should pass through: along which axis, where, and how much it matters."""

    axis: int
    at_ft: float
    weight: int


def grid_lines(
    region: Polygon, posts: tuple[Point, ...], spacing_ft: tuple[float, float], limits: Limits
) -> tuple[Segment, ...]:
    """Return joints straight up and across the slab, cut off where they would meet it askew.

    Args:
        region: the slab, turned so that its main sides are level and upright.
        posts: the middles of small openings.
        spacing_ft: the most between upright lines, and between level ones.
        limits: of the panels.
    """
    rings = _rings(region)
    anchors = [*_anchors(rings, limits)]
    anchors += [Anchor(axis=axis, at_ft=post[axis], weight=3) for post in posts for axis in (0, 1)]
    box = region.bounds
    places = [
        _places((box[axis], box[axis + 2]), [a for a in anchors if a.axis == axis],
                spacing_ft[axis], limits)
        for axis in (0, 1)
    ]  # fmt: skip
    found: list[Segment] = []
    for axis in (0, 1):
        for at_ft in places[axis]:
            for low, high in _stretches(rings, axis, at_ft, limits, places[1 - axis]):
                ends = ((at_ft, low), (at_ft, high)) if axis == 0 else ((low, at_ft), (high, at_ft))
                found.append(ends)
    return tuple(found)


def _rings(region: Polygon) -> tuple[Ring, ...]:
    """Return the rings with the slab on their left."""
    whole = orient(region)
    rings = (whole.exterior, *whole.interiors)
    return tuple(tuple((x, y) for x, y in ring.coords[:-1]) for ring in rings)


def _anchors(rings: tuple[Ring, ...], limits: Limits) -> Iterator[Anchor]:
    for ring in rings:
        for n, at in enumerate(ring):
            before, after = ring[n - 1], ring[(n + 1) % len(ring)]
            turn = interior_rad(before, at, after) - math.pi
            if turn > limits.turn_rad:
                yield Anchor(axis=0, at_ft=at[0], weight=3)
                yield Anchor(axis=1, at_ft=at[1], weight=3)
            elif turn > 0:
                yield from _curve_anchors(before, at, after)


def _curve_anchors(before: Point, at: Point, after: Point) -> Iterator[Anchor]:
    """Yield where a curved cut-out leaves a straight side, and where it runs level or upright."""
    for one in (before, after):
        if math.dist(one, at) > _STRAIGHT_FT:
            if abs(one[1] - at[1]) < _LEVEL * math.dist(one, at):
                yield Anchor(axis=0, at_ft=at[0], weight=2)
            elif abs(one[0] - at[0]) < _LEVEL * math.dist(one, at):
                yield Anchor(axis=1, at_ft=at[1], weight=2)
    for axis in (0, 1):
        steps = (before[axis] - at[axis], after[axis] - at[axis])
        if (steps[0] > 0) == (steps[1] > 0) and max(map(abs, steps)) < _STRAIGHT_FT:
            yield Anchor(axis=1 - axis, at_ft=at[1 - axis], weight=1)


def _places(
    ends: tuple[float, float], anchors: list[Anchor], spacing_ft: float, limits: Limits
) -> tuple[float, ...]:
    """Choose where lines go: through the anchors that leave room, and evenly between them."""
    chosen = list(ends)
    for anchor in sorted(anchors, key=lambda a: (-a.weight, a.at_ft)):
        room = limits.least_ft + _SAME_FT if anchor.weight > 2 else spacing_ft / 3
        if all(abs(anchor.at_ft - one) > room for one in chosen):
            chosen.append(anchor.at_ft)
    chosen.sort()
    places: list[float] = []
    for low, high in pairwise(chosen):
        count = math.ceil((high - low - 0.02) / spacing_ft)
        places += [low + (high - low) * n / count for n in range(1, count)]
        places.append(high)
    return tuple(places[:-1])


def _stretches(
    rings: tuple[Ring, ...], axis: int, at_ft: float, limits: Limits, others: tuple[float, ...]
) -> Iterator[tuple[float, float]]:
    """Yield where a line lies on the slab, cut back to a crossing line where it would end askew."""
    hits = sorted(hit for ring in rings for hit in _hits(ring, axis, at_ft, limits))
    for (low, low_square), (high, high_square) in zip(hits[::2], hits[1::2], strict=True):
        inside = [one for one in others if low + _SAME_FT < one < high - _SAME_FT]
        first = low if low_square else min(inside, default=None)
        last = high if high_square else max(inside, default=None)
        if first is not None and last is not None and last - first > _SAME_FT:
            yield first, last


def _hits(ring: Ring, axis: int, at_ft: float, limits: Limits) -> Iterator[tuple[float, bool]]:
    """Yield where a line meets a ring, and whether at a wide enough angle."""
    sides = [p[axis] - at_ft for p in ring]
    sides = [0.0 if abs(side) < _SAME_FT else side for side in sides]
    for n, side in enumerate(sides):
        after = sides[(n + 1) % len(ring)]
        if (side >= 0) == (after >= 0):
            continue
        start, end = ring[n], ring[(n + 1) % len(ring)]
        share = side / (side - after)
        far = start[1 - axis] + (end[1 - axis] - start[1 - axis]) * share
        lean = abs(end[axis] - start[axis]) / math.dist(start, end)
        yield far, math.asin(min(1.0, lean)) >= limits.corner_rad - _SLACK_RAD
