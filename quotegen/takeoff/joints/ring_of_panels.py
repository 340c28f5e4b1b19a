"""The best set of joints around one cut-out.

A spoke leads from the cut-out to the outer edge. Between two spokes that follow each other lies one
panel or, where the slab is wide, two with a line round the cut-out between them. That line goes on
across a spoke or ends in one that bends there, so that it dies in the side of no panel. In a far
corner of the slab a spoke forks and squares off a corner panel. So a set of spokes is a ring of
panels, and the cheapest ring is found as a shortest path around; on a slab that is its own mirror
image, around one half.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise

import shapely
from shapely.geometry.polygon import orient

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.judge import SLACK_FT, Limits, passes
from quotegen.takeoff.joints.main_directions import Axis
from quotegen.takeoff.joints.part import Part, Spot, spot_at
from quotegen.takeoff.joints.spokes import JOINT, TANGENT, Spoke, middle, spokes_of
from quotegen.takeoff.plan_geometry import Point, Ring

_AT_CORNER_FT = 1e-6
_NEAR_FT = 0.05
_LARGEST = 2.0  # panels of full size that the space between two spokes may hold
_STARTS = 2  # spokes that a path is sought through
_UNSURE = 6.0  # cost, in panels, of what must be divided further


def spokes_round(
    region: shapely.Polygon, limits: Limits, axes: Sequence[Axis] = ()
) -> tuple[Segment, ...]:
    """Return the joints around the one cut-out of a region; none where no set closes the ring.

    Args:
        region: the slab.
        limits: of the panels.
        axes: of its mirror image; the set is its own image about the first, if there is such a set.
    """
    whole = orient(region)
    edge: Ring = tuple((x, y) for x, y in whole.exterior.coords[:-1])
    hole: Ring = tuple((x, y) for x, y in whole.interiors[0].coords[-1:0:-1])
    ring = _RingOfPanels(edge, hole, limits)
    found = spokes_of(edge, hole, limits)
    sets = [ring.half(found, axis) for axis in axes[:1]]
    if all(math.isinf(cost) for cost, _ in sets):
        uncut = [n for n, one in enumerate(found) if one.tied[0] == one.tied[1]]
        for first in sorted(uncut, key=lambda n: (found[n].cost, n))[:_STARTS]:
            order = [*found[first:], *found[:first], found[first]]
            sets.append(ring.cheapest(order, 1, 1))
    return min(sets, key=lambda one: one[0], default=(math.inf, ()))[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Placed:
    """Where a spoke lies along both rings, before and after it, and the area swept up to it."""

    at_hole: float
    at_edge_before: float
    at_edge: float
    tied_before: bool
    tied: bool
    swept_before: float
    swept: float


class _RingOfPanels:
    """The ring between a cut-out and the outer edge, both of them counter-clockwise."""

    def __init__(self, edge: Ring, hole: Ring, limits: Limits) -> None:
        self._edge, self._hole, self._limits = edge, hole, limits
        self._swept = (_swept(hole), _swept(edge))
        self._sizes = (self._swept[1][-1], self._swept[0][-1])
        self._known: dict[tuple[int, int], float] = {}

    def half(self, found: Sequence[Spoke], axis: Axis) -> tuple[float, tuple[Segment, ...]]:
        """Return the cheapest set that is its own mirror image, and what half of it costs."""
        first, last = (tuple(self._on_axis(axis, sign)) for sign in (1, -1))
        if not first or not last:
            return math.inf, ()
        begin, around = first[0].at_hole, len(self._hole)
        beyond = [
            one
            for one in found
            if all(axis.off_ft(spot.point) < -_NEAR_FT for spot in (one.start, *one.ends))
        ]
        beyond.sort(key=lambda one: (one.at_hole - begin) % around)
        return self.cheapest([*first, *beyond, *last], len(first), len(last), axis)

    def _on_axis(self, axis: Axis, sign: int) -> Iterator[Spoke]:
        """Yield what may lie on an axis where the ring leaves or enters the half beyond it."""
        spots = [_crossing(ring, axis, sign) for ring in (self._hole, self._edge)]
        if spots[0] is None or spots[1] is None:
            return
        start, end = spots[0], spots[1]
        long = math.dist(start.point, end.point)
        for is_ghost in (True, False):
            one = Spoke(
                start=start, ends=(end, end), cost=0.0 if is_ghost else JOINT * long / 2 - TANGENT,
                is_ghost=is_ghost,
            )  # fmt: skip
            yield one
            yield replace(one, node=middle(start.point, end.point), tied=(True, True))

    def cheapest(
        self, order: Sequence[Spoke], firsts: int, lasts: int, axis: Axis | None = None
    ) -> tuple[float, tuple[Segment, ...]]:
        """Return the cheapest set from one of the first spokes to one of the last, and its cost."""
        count, placed = len(order), [self._placed(one) for one in order]
        cost = [one.cost for one in order[:firsts]] + [math.inf] * (count - firsts)
        came = [0] * count
        for there in range(firsts, count):
            near = sorted(
                (cost[here], here) for here in self._near(placed, there, lasts)
                if cost[here] < math.inf
            )  # fmt: skip
            other = order[there]
            for so_far, here in near:
                if so_far + self._at_least(order[here], other) + other.cost >= cost[there]:
                    continue
                step = self._cost(order[here], other, axis)
                if so_far + step + other.cost < cost[there]:
                    cost[there], came[there] = so_far + step + other.cost, here
        last = min(range(count - lasts, count), key=lambda n: cost[n])
        if math.isinf(cost[last]):
            return math.inf, ()
        path = [last]
        while path[-1] >= firsts:
            path.append(came[path[-1]])
        return cost[last], tuple(self._lines([order[n] for n in path[::-1]], axis))

    def _at_least(self, one: Spoke, other: Spoke) -> float:
        half = 0.5 if one.is_ghost or other.is_ghost else 1.0
        return half * (2 if one.tied[1] else 1)

    def _near(self, order: Sequence[_Placed], there: int, lasts: int) -> Iterator[int]:
        """Yield the spokes before one from which a space of at most the largest size reaches it."""
        other, around, along = order[there], len(self._hole), len(self._edge)
        most = _LARGEST * self._limits.most_ft**2
        least = self._limits.least_ft**2
        for here in range(min(there, len(order) - lasts) - 1, -1, -1):
            one = order[here]
            if one.tied != other.tied_before:
                continue
            if one.tied and (other.at_hole - one.at_hole) % around < _AT_CORNER_FT:
                continue
            if not _AT_CORNER_FT < (other.at_edge_before - one.at_edge) % along <= along / 2:
                continue
            twice = other.swept_before - one.swept
            twice += self._sizes[0] if other.at_edge_before < one.at_edge else 0.0
            twice -= self._sizes[1] if other.at_hole < one.at_hole else 0.0
            if twice > 4 * most:
                break
            if 2 * least < twice <= 2 * most:
                yield here

    def _placed(self, one: Spoke) -> _Placed:
        """Return where a spoke lies, and twice the area swept up to it."""
        start, (before, after) = one.start, one.ends
        inner = _swept_to(self._hole, self._swept[0], start)
        outer = [_swept_to(self._edge, self._swept[1], end) for end in one.ends]
        return _Placed(
            at_hole=start.side + start.share,
            at_edge_before=before.side + before.share,
            at_edge=after.side + after.share,
            tied_before=one.tied[0],
            tied=one.tied[1],
            swept_before=outer[0] - inner + _cross(before.point, start.point),
            swept=outer[1] - inner - _cross(start.point, after.point),
        )

    def _cost(self, one: Spoke, other: Spoke, axis: Axis | None) -> float:
        key = (id(one), id(other))
        if key not in self._known:
            self._known[key] = self._worked_out(one, other, axis)
        return self._known[key]

    def _worked_out(self, one: Spoke, other: Spoke, axis: Axis | None) -> float:
        is_half = one.is_ghost or other.is_ghost
        cost = 0.0
        for found in self._parts(one, other, axis):
            part = _whole(found, axis) if axis is not None and is_half else found
            if not _may_pass(part, self._limits) or not passes(part, self._limits):
                if one.tied[1] or one.start == other.start:
                    return math.inf
                cost += _UNSURE + 2 * part.area_sqft / self._limits.most_ft**2
            else:
                cost += 1.0
        for start, end in self._tie(one, other, axis):
            cost += JOINT * math.dist(start, end)
        return cost / 2 if is_half else cost

    def _tie(self, one: Spoke, other: Spoke, axis: Axis | None) -> Iterator[Segment]:
        """Yield the line between two spokes; it leaves an axis square."""
        start, end = one.node, other.node
        if not one.tied[1] or start is None or end is None:
            return
        if axis is not None and one.is_ghost:
            start = middle(end, axis.image(end))
        if axis is not None and other.is_ghost:
            end = middle(start, axis.image(start))
        yield start, end

    def _parts(self, one: Spoke, other: Spoke, axis: Axis | None) -> Iterator[Part]:
        """Yield the panels between two spokes: one, or an outer and an inner one."""
        outer = _slice(self._edge, one.ends[1], other.ends[0])
        inner = _slice(self._hole, one.start, other.start)[::-1]
        lines = tuple(self._tie(one, other, axis))
        if lines:
            ((near, far),) = lines
            ring = (*outer, far, near)
            yield Part(ring=ring, cut=(*(False,) * (len(outer) - 1), True, True, True))
            ring = (near, far, *inner)
            yield Part(ring=ring, cut=(True, True, *(False,) * (len(inner) - 1), True))
            return
        there = () if other.node is None or other.is_ghost else (other.node,)
        here = () if one.node is None or one.is_ghost else (one.node,)
        yield Part(
            ring=(*outer, *there, *inner, *here),
            cut=(
                *(False,) * (len(outer) - 1), *(True,) * (len(there) + 1),
                *(False,) * (len(inner) - 1), *(True,) * (len(here) + 1),
            ),
        )  # fmt: skip

    def _lines(self, path: Sequence[Spoke], axis: Axis | None) -> Iterator[Segment]:
        found = [line for one in path[: None if axis else -1] if not one.is_ghost
                 for line in one.lines()]  # fmt: skip
        for one, other in pairwise(path):
            found += self._tie(one, other, axis)
        for start, end in found:
            yield start, end
            if axis is not None and max(abs(axis.off_ft(p)) for p in (start, end)) > _NEAR_FT:
                yield axis.image(start), axis.image(end)


def _whole(half: Part, axis: Axis) -> Part:
    """Return a panel that lies astride an axis, from the half beyond the axis."""
    ring, cut, count = half.ring, half.cut, len(half.ring)
    on = [abs(axis.off_ft(point)) < _AT_CORNER_FT for point in ring]
    last = next((n for n in range(count) if on[n] and on[(n + 1) % count]), None)
    if last is None:
        return half
    ring, cut = ring[last + 1 :] + ring[: last + 1], cut[last + 1 :] + cut[: last + 1]
    return Part(ring=(*ring, *map(axis.image, ring[-2:0:-1])), cut=(*cut[:-1], *cut[-2::-1]))


def _may_pass(part: Part, limits: Limits) -> bool:
    """Whether a part is small enough, by its corners in the order of the ring."""
    most = math.sqrt(2) * (limits.most_ft + SLACK_FT)
    first, middle = part.ring[0], part.ring[len(part.ring) // 2]
    return part.area_sqft < (limits.most_ft + SLACK_FT) ** 2 and math.dist(first, middle) < most


def _crossing(ring: Ring, axis: Axis, sign: int) -> Spot | None:
    """Return the one place where a ring leaves (1) or enters (-1) the half before an axis."""
    found = []
    for n, start in enumerate(ring):
        one, other = (axis.off_ft(p) * sign for p in (start, ring[(n + 1) % len(ring)]))
        if one >= 0 > other:
            found.append(spot_at(ring, n, one / (one - other)))
    return found[0] if len(found) == 1 else None


def _swept(ring: Ring) -> tuple[float, ...]:
    """Return twice the area swept from the origin up to each corner of a ring, and in all."""
    return tuple(accumulate(map(_cross, ring, (*ring[1:], ring[0])), initial=0.0))


def _swept_to(ring: Ring, swept: Sequence[float], spot: Spot) -> float:
    return swept[spot.side] + _cross(ring[spot.side], spot.point)


def _cross(one: Point, other: Point) -> float:
    return one[0] * other[1] - one[1] * other[0]


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
