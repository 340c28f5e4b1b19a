"""The joints that may lead from a cut-out to the outer edge: plain, crossed, bent or forked."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.judge import Limits, passes
from quotegen.takeoff.joints.part import Part, Spot, hit, interior_rad, spot_at
from quotegen.takeoff.plan_geometry import Point, Ring

_SLACK_RAD = math.radians(0.5)
_BENT_MORE_RAD = math.radians(1)  # so that a spoke that is drawn counts as bent
_PLACES = 48  # along the cut-out where a spoke may start
_DIRECTIONS: tuple[Point, ...] = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))
_AT_CORNER_FT = 1e-6
_NEAR_FT = 0.05
_FAN_RAD = math.radians(14)
_TIED = ((False, False), (False, True), (True, False), (True, True))
_REACHES = (0.65, 0.8)  # how far a corner panel reaches toward the cut-out
_NARROW = 0.7  # of the longest side of a panel: no line crosses a shorter spoke
JOINT, TANGENT = 0.012, 0.7
_SKEW, _BENT = 0.6, 0.1
"""What a foot of joint costs, in panels, a radian off square, and a bent spoke; and what one is
worth that leaves where a straight side of the pool becomes a curve, or on the axis of the slab."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Spoke:
    """One joint from a cut-out to the outer edge, between the space before it and the one after.

    Attributes:
        start: at the cut-out.
        ends: at the edge, on the side of the space before and of the one after; they differ where
            the spoke forks.
        node: where it bends, forks or is crossed.
        tied: whether a line round the cut-out leaves the node into the space before, and after.
        cost: in panels.
        is_ghost: whether it is no joint but the axis of a slab, in the middle of a panel.
    """

    start: Spot
    ends: tuple[Spot, Spot]
    node: Point | None = None
    tied: tuple[bool, bool] = (False, False)
    cost: float
    is_ghost: bool = False

    @property
    def at_hole(self) -> float:
        return self.start.side + self.start.share

    def lines(self) -> Iterator[Segment]:
        if self.node is None:
            yield self.start.point, self.ends[0].point
            return
        yield self.start.point, self.node
        for end in dict.fromkeys(one.point for one in self.ends):
            yield self.node, end


def spokes_of(edge: Ring, hole: Ring, limits: Limits) -> list[Spoke]:
    """Return the spokes between a cut-out and an edge, in order counter-clockwise.

    Args:
        edge: the outer ring, counter-clockwise.
        hole: the ring of the cut-out, counter-clockwise too.
        limits: of the panels.
    """
    found = _spokes(edge, hole, limits)
    return sorted(found, key=lambda one: (one.at_hole, _lean(one, hole)))


def _spokes(edge: Ring, hole: Ring, limits: Limits) -> Iterator[Spoke]:
    for one in _plain(edge, hole, limits):
        yield from _variants(one, limits)
    yield from _forks(edge, hole, limits)


def _variants(plain: Spoke, limits: Limits) -> Iterator[Spoke]:
    """Yield a spoke as it is, crossed by a line round the cut-out, or bent where one ends."""
    yield plain
    start, end = plain.start.point, plain.ends[0].point
    long = math.dist(start, end)
    if long < _NARROW * limits.most_ft:
        return
    x, y = node = middle(start, end)
    yield replace(plain, node=node, tied=(True, True))
    off = math.tan((limits.bend_rad + _BENT_MORE_RAD) / 2) / 2
    dx, dy = (start[1] - end[1]) * off, (end[0] - start[0]) * off
    cost = plain.cost + _BENT
    yield replace(plain, node=(x + dx, y + dy), tied=(False, True), cost=cost)
    yield replace(plain, node=(x - dx, y - dy), tied=(True, False), cost=cost)


def _plain(edge: Ring, hole: Ring, limits: Limits) -> Iterator[Spoke]:
    """Yield straight joints that leave the cut-out and meet the edge at wide enough angles."""
    for start, directions in _starts(hole, limits):
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
            cost = JOINT * math.dist(start.point, end.point)
            cost += _SKEW * max(0.0, math.pi / 2 - angle)
            cost -= TANGENT * (start.share == 0 and len(directions) == 1)
            yield Spoke(start=start, ends=(end, end), cost=cost)


def _starts(hole: Ring, limits: Limits) -> Iterator[tuple[Spot, tuple[Point, ...]]]:
    around = math.fsum(math.dist(hole[n - 1], at) for n, at in enumerate(hole))
    step, left = around / _PLACES, 0.0
    for n, start in enumerate(hole):
        before, end = hole[n - 1], hole[(n + 1) % len(hole)]
        length = math.dist(start, end)
        ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        if math.pi - interior_rad(before, start, end) > limits.turn_rad:
            vx, vy = start[0] - before[0], start[1] - before[1]
            back = math.hypot(vx, vy)
            yield Spot(n, 0.0, start), (*_DIRECTIONS, (-ux, -uy), (vx / back, vy / back))
        elif max(length, math.dist(before, start)) > 2 * step:
            yield Spot(n, 0.0, start), ((uy, -ux),)
        if length > 2 * step:
            least = math.ceil(length / limits.most_ft)
            shares = {m / count for count in range(least, least + 3) for m in range(1, count)}
            for share in sorted(shares):
                yield spot_at(hole, n, share), ((uy, -ux),)
            left = step / 2
            continue
        while left < length - _AT_CORNER_FT:  # or rounding would tell whether one starts there
            if left > _AT_CORNER_FT:
                yield spot_at(hole, n, left / length), (*_fan(uy, -ux), *_DIRECTIONS)
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


def _nearest(ring: Ring, point: Point) -> Spot:
    """Return the place on a ring that is nearest to a point."""
    found = []
    for n, start in enumerate(ring):
        end = ring[(n + 1) % len(ring)]
        dx, dy = end[0] - start[0], end[1] - start[1]
        share = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / (dx * dx + dy * dy)
        share = min(1.0, max(0.0, share))
        at = (start[0] + dx * share, start[1] + dy * share)
        found.append((math.dist(at, point), n, share))
    _, side, share = min(found)
    return spot_at(ring, side, share)


def _forks(edge: Ring, hole: Ring, limits: Limits) -> Iterator[Spoke]:
    """Yield spokes that fork before a far corner of the slab and square off a panel there."""
    for n, at in enumerate(edge):
        angle = interior_rad(edge[n - 1], at, edge[(n + 1) % len(edge)])
        if not limits.corner_rad <= angle < math.pi - limits.bend_rad:
            continue
        start = _nearest(hole, at)
        x, y = start.point
        lean = max(0.0, (angle + limits.corner_rad - math.pi) / 2)
        for reach in _REACHES:
            node = (at[0] + (x - at[0]) * reach, at[1] + (y - at[1]) * reach)
            before, after = (_foot(edge, n, node, step, lean, limits) for step in (-1, 1))
            if before is None or after is None:
                continue
            panel = (before[0].point, *before[1][::-1], at, *after[1], after[0].point, node)
            part = Part(ring=panel, cut=(*(False,) * (len(panel) - 2), True, True))
            if not passes(part, limits):
                continue
            long = sum(math.dist(node, one) for one in (before[0].point, after[0].point, (x, y)))
            is_flat = [
                interior_rad(*three) > math.pi - limits.bend_rad
                for three in ((before[0].point, node, (x, y)), ((x, y), node, after[0].point))
            ]
            for tied in _TIED:
                if tied[0] >= is_flat[0] and tied[1] >= is_flat[1]:
                    yield Spoke(
                        start=start, ends=(before[0], after[0]), node=node, tied=tied,
                        cost=1 + JOINT * long,
                    )  # fmt: skip


def _foot(
    ring: Ring, corner: int, panel: Point, step: int, lean_rad: float, limits: Limits
) -> tuple[Spot, Ring] | None:
    """Return where the edge is nearest to a point, one way from a corner, and the points passed.

    None where the edge turns a corner before that.
    """
    passed: list[Point] = []
    here, count = ring[corner], len(ring)
    for n in range(1, count // 2):
        at = (corner + step * n) % count
        there = ring[at]
        ux, uy = there[0] - here[0], there[1] - here[1]
        long = math.hypot(ux, uy)
        along = ((panel[0] - here[0]) * ux + (panel[1] - here[1]) * uy) / long
        off = abs((panel[0] - here[0]) * uy - (panel[1] - here[1]) * ux) / long
        share = (along + off * math.tan(lean_rad)) / long
        if share <= 1:
            if share * long < _NEAR_FT:
                return (
                    (Spot((at - step) % count, 0.0, here), tuple(passed[:-1])) if passed else None
                )
            side, ahead = ((at - 1) % count, share) if step > 0 else (at, 1 - share)
            return spot_at(ring, side, ahead), tuple(passed)
        after = ring[(at + step) % count]
        if abs(interior_rad(here, there, after) - math.pi) > limits.bend_rad:
            return None
        passed.append(there)
        here = there
    return None


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


def _lean(one: Spoke, hole: Ring) -> float:
    """Return how far a spoke leans counter-clockwise from straight out of the cut-out."""
    before = hole[one.start.side - 1] if one.start.share == 0 else hole[one.start.side]
    after = hole[(one.start.side + 1) % len(hole)]
    (x, y), (end_x, end_y) = one.start.point, one.node or one.ends[0].point
    ux, uy = after[1] - before[1], before[0] - after[0]
    dx, dy = end_x - x, end_y - y
    return math.atan2(ux * dy - uy * dx, ux * dx + uy * dy)


def middle(one: Point, other: Point) -> Point:
    """Return the point halfway between two."""
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
