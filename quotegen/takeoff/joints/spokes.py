"""The best set of joints around one cut-out.

A panel lies between two joints that follow each other, so a set of joints is a ring of panels, and
the cheapest ring is found as a shortest path around. Where the part between two joints is too
large for one panel its cost is only guessed. Once such a part is chosen it is divided, its true
cost replaces the guess, and the path is sought again.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import shapely
from shapely.geometry.polygon import orient

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.judge import is_sliver, passes
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import Part, Spot, hit, interior_rad, split, spot_at
from quotegen.takeoff.joints.refine import Refiner
from quotegen.takeoff.plan_geometry import Point, Ring

_SLACK_RAD = math.radians(0.5)
_PLACES = 48  # along the cut-out where a spoke may start
_DIRECTIONS: tuple[Point, ...] = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))
_AT_CORNER_FT = 1e-6
_FAN_RAD = math.radians(14)
_JOINT, _SKEW = 0.012, 0.6  # cost of a foot of joint, and of a radian off square
_FULL = 1.02  # a panel has at most this many times the largest square
_LARGEST = 2.0  # panels of full size that the space between two spokes may hold
_STARTS = 3  # spokes that a path is sought through
_WHOLE, _HALVED, _UNSURE = 1.0, 6.4, 9.0  # cost of one panel, of two, of an unknown number
_EACH, _FAILING = 1.2, 30.0  # cost of a panel once the part is divided, and of one that fails
_DIVIDED = 4.0  # cost of joints that die into the spokes on both sides
_NEARLY = 0.3  # a guess that is off by less is good enough
_ROUNDS, _LOOKS = 12, 8  # times the path is sought again; parts searched to divide one


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoke:
    """One joint from a cut-out to the outer edge; `at_` counts sides along each ring."""

    start: Spot
    end: Spot
    at_hole: float
    at_edge: float
    cost: float


def spokes_of(edge: Ring, hole: Ring, limits: Limits) -> Iterator[Spoke]:
    """Yield joints that leave the cut-out and meet the outer edge at wide enough angles."""
    for start, directions in (*_starts(hole, limits), *_to_corners(edge, hole, limits)):
        for direction in directions:
            end = hit(edge, start.point, direction)
            back = hit(hole, start.point, direction)
            if end is None or (
                back and math.dist(back.point, start.point) < math.dist(end.point, start.point)
            ):
                continue
            angle = min(
                _meets(hole, start, direction, sign=-1), _meets(edge, end, direction, sign=1)
            )
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
            yield Spot(n, 0.0, start), _DIRECTIONS
            vx, vy = start[0] - before[0], start[1] - before[1]
            back = math.hypot(vx, vy)
            yield Spot(n, 0.0, start), ((-ux, -uy), (vx / back, vy / back))
        elif max(length, math.dist(before, start)) > 2 * step:
            yield Spot(n, 0.0, start), ((uy, -ux),)
        while left < length - _AT_CORNER_FT:  # or rounding would tell whether one starts there
            if left > _AT_CORNER_FT:
                yield (
                    spot_at(hole, n, left / length),
                    ((*_fan(uy, -ux), *_DIRECTIONS) if length < 2 * step else ((uy, -ux),)),
                )
            left += step
        left -= length


def _fan(ux: float, uy: float) -> tuple[Point, ...]:
    """Return a direction, and one on either side of it."""
    cos, sin = math.cos(_FAN_RAD), math.sin(_FAN_RAD)
    return (
        (ux, uy),
        (ux * cos - uy * sin, ux * sin + uy * cos),
        (ux * cos + uy * sin, uy * cos - ux * sin),
    )


def _to_corners(edge: Ring, hole: Ring, limits: Limits) -> Iterator[tuple[Spot, tuple[Point, ...]]]:
    """Yield the direction of the shortest joint to each inside corner of the outer edge."""
    around = shapely.LinearRing(hole)
    for n, corner in enumerate(edge):
        if interior_rad(edge[n - 1], corner, edge[(n + 1) % len(edge)]) - math.pi < limits.turn_rad:
            continue
        near = around.interpolate(around.project(shapely.Point(corner)))
        side = min(
            range(len(hole)),
            key=lambda m: shapely.LineString((hole[m], hole[(m + 1) % len(hole)])).distance(near),
        )
        one, other = hole[side], hole[(side + 1) % len(hole)]
        spot = spot_at(hole, side, math.dist(one, (near.x, near.y)) / math.dist(one, other))
        long = math.dist(spot.point, corner)
        if long > 0:
            direction = ((corner[0] - spot.point[0]) / long, (corner[1] - spot.point[1]) / long)
            yield spot, (direction,)


def _meets(ring: Ring, spot: Spot, direction: Point, *, sign: int) -> float:
    """Return the smaller of the two angles of a joint where it meets a ring."""
    start, end = ring[spot.side], ring[(spot.side + 1) % len(ring)]
    before = ring[spot.side - 1] if spot.share == 0 else start
    angles = []
    for one in (before, end):
        dx, dy = one[0] - spot.point[0], one[1] - spot.point[1]
        length = math.hypot(dx, dy) or 1.0
        cosine = -sign * (dx * direction[0] + dy * direction[1]) / length
        angles.append(math.acos(max(-1.0, min(1.0, cosine))))
    return min(angles)


def spokes_round(region: shapely.Polygon, limits: Limits) -> tuple[Segment, ...]:
    """Return the joints around the one cut-out of a region; none where no set closes the ring."""
    whole = orient(region)
    edge: Ring = tuple((x, y) for x, y in whole.exterior.coords[:-1])
    hole: Ring = tuple((x, y) for x, y in whole.interiors[0].coords[-1:0:-1])
    found = sorted(spokes_of(edge, hole, limits), key=lambda one: (one.at_hole, one.at_edge))
    ring = _RingOfPanels(edge, hole, limits)
    starts = sorted(range(len(found)), key=lambda n: (found[n].cost, n))[:_STARTS]
    path: tuple[int, ...] = ()
    for _ in range(_ROUNDS):
        sets = [ring.cheapest(found, first) for first in starts]
        path = min(sets, key=lambda one: one[0], default=(math.inf, ()))[1]
        if not path or not ring.dearer(found, path):
            break
    return tuple((found[n].start.point, found[n].end.point) for n in path)


class _RingOfPanels:
    """The ring between a cut-out and the outer edge, both of them counter-clockwise."""

    def __init__(self, edge: Ring, hole: Ring, limits: Limits) -> None:
        self._edge, self._hole, self._limits = edge, hole, limits
        self._costs: dict[tuple[int, int], float] = {}
        self._known: set[tuple[int, int]] = set()

    def cheapest(self, found: list[Spoke], first: int) -> tuple[float, tuple[int, ...]]:
        """Return the cheapest set of spokes that contains a given one, in order around the ring."""
        order = [(first + n) % len(found) for n in range(len(found))]
        cost = [math.inf] * (len(found) + 1)
        came = [0] * (len(found) + 1)
        cost[0] = 0.0
        for here in range(len(found)):
            if math.isinf(cost[here]):
                continue
            for there in range(here + 1, len(found) + 1):
                step = self._cost(found, order[here], order[there % len(found)])
                if step is None:
                    break
                if cost[here] + step < cost[there]:
                    cost[there], came[there] = cost[here] + step, here
        if math.isinf(cost[-1]):
            return math.inf, ()
        path, at = [], len(found)
        while at:
            at = came[at]
            path.append(order[at])
        return (cost[-1], tuple(reversed(path))) if len(path) > 1 else (math.inf, ())

    def _cost(self, found: list[Spoke], one: int, other: int) -> float | None:
        """Return the cost of the panel between two spokes; None where it reaches too far around."""
        if (one, other) not in self._costs:
            self._costs[(one, other)] = self._panel_cost(found[one], found[other])
        cost = self._costs[(one, other)]
        return None if cost < 0 else cost

    def _panel_cost(self, one: Spoke, other: Spoke) -> float:
        around = (other.at_hole - one.at_hole) % len(self._hole)
        outer = (other.at_edge - one.at_edge) % len(self._edge)
        if around == 0 or outer == 0 or outer > len(self._edge) - 1e-9:
            return math.inf
        cost = _guess(self._panel(one, other), self._limits)
        return cost if cost < 0 else cost + one.cost

    def dearer(self, found: list[Spoke], path: tuple[int, ...]) -> bool:
        """Divide what is not yet a panel in a set; True if any of it costs more than guessed."""
        was_wrong = False
        for one, other in zip(path, (*path[1:], path[0]), strict=True):
            if (one, other) in self._known:
                continue
            self._known.add((one, other))
            part = self._panel(found[one], found[other])
            if passes(part, self._limits):
                continue
            panels = Refiner(self._limits, _LOOKS).refine(part, ())
            failing = sum(not passes(panel, self._limits) for panel in panels)
            cost = found[one].cost + _DIVIDED + _EACH * len(panels) + _FAILING * failing
            was_wrong = was_wrong or cost > self._costs[(one, other)] + _NEARLY
            self._costs[(one, other)] = cost
        return was_wrong

    def _panel(self, one: Spoke, other: Spoke) -> Part:
        outer = _slice(self._edge, one.end, other.end)
        inner = _slice(self._hole, one.start, other.start)
        ring = (*outer, *reversed(inner))
        cut = [False] * len(ring)
        cut[len(outer) - 1] = cut[-1] = True
        return Part(ring=ring, cut=tuple(cut))


@lru_cache(maxsize=4_000)
def _guess(part: Part, limits: Limits) -> float:
    """Guess the cost of what lies between two spokes; below zero where it reaches too far."""
    if part.area_sqft > _LARGEST * limits.most_ft**2:
        return -1.0
    if part.area_sqft <= 0 or part.area_sqft < limits.least_ft**2:
        return math.inf
    squares = part.area_sqft / limits.most_ft**2
    if squares <= _FULL and passes(part, limits):
        return _WHOLE
    if is_sliver(part, limits):
        return math.inf
    if squares > 1 / _LARGEST / 2 and _halves_pass(part, limits):
        return _HALVED
    return _UNSURE + 2 * squares


def _halves_pass(part: Part, limits: Limits) -> bool:
    """Whether a joint from the middle of one spoke to the middle of the next is enough."""
    last = len(part.ring) - 1
    outer = next(n for n in range(last) if part.cut[n])
    halves = split(part, (spot_at(part.ring, outer, 1 / 2), spot_at(part.ring, last, 1 / 2)))
    return halves is not None and all(passes(half, limits) for half in halves)


def _slice(ring: Ring, first: Spot, last: Spot) -> Ring:
    """Return the points of a ring from one spot to another."""
    points = [first.point]
    side = first.side
    steps = (last.side - first.side) % len(ring)
    if steps == 0 and last.share < first.share:
        steps = len(ring)
    for _ in range(steps):
        side = (side + 1) % len(ring)
        points.append(ring[side])
    if last.share > 0:
        points.append(last.point)
    return tuple(points)
