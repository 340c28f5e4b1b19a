"""The best set of joints round one cut-out.

A panel lies between two joints that follow each other, so the set is a ring of panels; the ring
that costs least is found as a shortest way round. Where a part between two joints is too large
for one panel its cost is guessed, looked into when it is chosen, and the way sought again.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LinearRing, LineString, Polygon
from shapely import Point as Vertex
from shapely.geometry.polygon import orient

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.judge import is_sliver, passes
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import Part, Spot, hit, interior_rad, split, spot_at
from quotegen.takeoff.joints.refine import Refiner
from quotegen.takeoff.plan_geometry import Point, Ring

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


_FULL = 1.02
_LARGEST = 2.0  # panels of full size that one space between spokes may hold
_STARTS = 3
_WHOLE, _HALVED, _UNSURE = 1.0, 2.4, 5.0  # cost of one panel, of two, of nobody knows how many
_EACH, _FAILING, _NEARLY = 1.2, 30.0, 0.3
_ROUNDS, _LOOKS = 12, 8


def spokes_round(region: Polygon, limits: Limits) -> tuple[Segment, ...]:
    """Return the joints round the one cut-out of a region; none where no set of them closes."""
    whole = orient(region)
    edge: Ring = tuple((x, y) for x, y in whole.exterior.coords[:-1])
    hole: Ring = tuple((x, y) for x, y in whole.interiors[0].coords[-1:0:-1])
    found = sorted(spokes_of(edge, hole, limits), key=lambda one: (one.at_hole, one.at_edge))
    ring = _Ring(edge, hole, limits)
    starts = sorted(range(len(found)), key=lambda n: (found[n].cost, n))[:_STARTS]
    path: tuple[int, ...] = ()
    for _ in range(_ROUNDS):
        sets = [ring.cheapest(found, first) for first in starts]
        path = min(sets, key=lambda one: one[0], default=(math.inf, ()))[1]
        if not path or not ring.dearer(found, path):
            break
    return tuple((found[n].start.point, found[n].end.point) for n in path)


class _Ring:
    """The ring of slab between a cut-out and the outer edge, both gone round counter-clockwise."""

    def __init__(self, edge: Ring, hole: Ring, limits: Limits) -> None:
        self._edge, self._hole, self._limits = edge, hole, limits
        self._costs: dict[tuple[int, int], float] = {}
        self._known: set[tuple[int, int]] = set()

    def cheapest(self, found: list[Spoke], first: int) -> tuple[float, tuple[int, ...]]:
        """Return the cheapest set of spokes that has a given one in it, in order round."""
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
        """Return the cost of the panel between two spokes; None where it reaches too far round."""
        if (one, other) not in self._costs:
            self._costs[(one, other)] = self._panel_cost(found[one], found[other])
        cost = self._costs[(one, other)]
        return None if cost < 0 else cost

    def _panel_cost(self, one: Spoke, other: Spoke) -> float:
        around = (other.at_hole - one.at_hole) % len(self._hole)
        outer = (other.at_edge - one.at_edge) % len(self._edge)
        if around == 0 or outer == 0 or outer > len(self._edge) - 1e-9:
            return math.inf
        part = self._panel(one, other)
        area_sqft = part.area_sqft
        if area_sqft > _LARGEST * self._limits.most_ft**2:
            return -1.0
        if area_sqft <= 0:
            return math.inf
        if area_sqft < self._limits.least_ft**2:
            return math.inf
        squares = area_sqft / self._limits.most_ft**2
        if squares <= _FULL and passes(part, self._limits):
            return _WHOLE + one.cost
        if is_sliver(part, self._limits):
            return math.inf
        if squares > 1 / _LARGEST / 2 and self._halves_pass(part):
            return _HALVED + one.cost
        return _UNSURE + 2 * squares + one.cost

    def dearer(self, found: list[Spoke], path: tuple[int, ...]) -> bool:
        """Divide each part of a set that is no panel yet; say whether one costs more than that."""
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
            cost = found[one].cost + _EACH * len(panels) + _FAILING * failing
            was_wrong = was_wrong or cost > self._costs[(one, other)] + _NEARLY
            self._costs[(one, other)] = cost
        return was_wrong

    def _halves_pass(self, part: Part) -> bool:
        """Say whether a joint from the middle of one spoke to the middle of the next is enough."""
        last = len(part.ring) - 1
        outer = next(n for n in range(last) if part.cut[n])
        halves = split(part, (spot_at(part.ring, outer, 1 / 2), spot_at(part.ring, last, 1 / 2)))
        return halves is not None and all(passes(half, self._limits) for half in halves)

    def _panel(self, one: Spoke, other: Spoke) -> Part:
        outer = _slice(self._edge, one.end, other.end)
        inner = _slice(self._hole, one.start, other.start)
        ring = (*outer, *reversed(inner))
        cut = [False] * len(ring)
        cut[len(outer) - 1] = cut[-1] = True
        return Part(ring=ring, cut=tuple(cut))


def _slice(ring: Ring, first: Spot, last: Spot) -> Ring:
    """Return the points of a ring from one spot on to another."""
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
