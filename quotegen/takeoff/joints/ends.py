"""Where joints end, as a finisher looks at it: in the middle of nothing, near a corner, off line.

The rules for panels stand in `judge`. These are about a whole layout: a joint that dies into the
side of another leads a crack on into the panel beyond; one that ends close to a corner of the slab
leaves a piece that breaks off; joints on two sides of a pool are seen in one look.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from shapely import Polygon, dwithin, points, prepare

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.judge import Limits
from quotegen.takeoff.joints.part import hit, interior_rad
from quotegen.takeoff.plan_geometry import Point, Ring

_SAME_FT = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """The places of a layout that a finisher would not saw.

    Attributes:
        dying: where a joint ends in the side of a panel.
        near_corner: where a joint ends closer to a corner of the slab than a panel may be narrow.
        unmatched: where a joint leaves a straight side of a pool, and none goes on beyond it.
    """

    dying: tuple[Point, ...]
    near_corner: tuple[Point, ...]
    unmatched: tuple[Point, ...]


def ends_of(joints: Sequence[Segment], region: Polygon, limits: Limits) -> Ends:
    """Return where the joints of a region end badly."""
    ends = _each_once(joints)
    prepare(region.boundary)
    at_edge = dwithin(region.boundary, points(ends), _SAME_FT).tolist() if ends else []
    inside = [end for end, lies_there in zip(ends, at_edge, strict=True) if not lies_there]
    outside = [end for end, lies_there in zip(ends, at_edge, strict=True) if lies_there]
    rings = tuple(_ring(ring.coords) for ring in (region.exterior, *region.interiors))
    corners = [corner for ring in rings for corner in _corners(ring, limits)]
    return Ends(
        dying=tuple(end for end in inside if _dies(end, joints, limits)),
        near_corner=tuple(end for end in outside if _is_near(end, corners, limits)),
        unmatched=tuple(end for pool in rings[1:] for end in _unmatched(joints, pool, limits)),
    )


def _each_once(joints: Sequence[Segment]) -> tuple[Point, ...]:
    """Return the ends of joints, those in one place once."""
    found: list[Point] = []
    for end in (end for joint in joints for end in joint):
        if all(math.dist(end, one) > _SAME_FT for one in found):
            found.append(end)
    return tuple(found)


def _ring(coords: Iterable[Sequence[float]]) -> Ring:
    return tuple((x, y) for x, y in coords)[:-1]


def _corners(ring: Ring, limits: Limits) -> Iterator[Point]:
    for n, at in enumerate(ring):
        inside = interior_rad(ring[n - 1], at, ring[(n + 1) % len(ring)])
        if abs(math.pi - inside) > limits.turn_rad:
            yield at


def _is_near(end: Point, corners: Sequence[Point], limits: Limits) -> bool:
    """Whether a joint ends beside a corner of the slab and not in it."""
    away = min((math.dist(end, corner) for corner in corners), default=math.inf)
    return _SAME_FT < away < limits.least_ft - _SAME_FT


def _dies(end: Point, joints: Sequence[Segment], limits: Limits) -> bool:
    """Whether some panel has a side where a joint ends, and no corner."""
    ways = sorted(way for joint in joints for way in _ways(end, joint))
    turns = (*ways[1:], *(way + 2 * math.pi for way in ways[:1]))
    gaps = (b - a for a, b in zip(ways, turns, strict=True))
    return max(gaps, default=2 * math.pi) > math.pi - limits.bend_rad


def _ways(at: Point, joint: Segment) -> Iterator[float]:
    """Yield the directions in which a joint leads away from a point that lies on it."""
    (x0, y0), (x1, y1) = joint
    if not (
        min(x0, x1) - _SAME_FT <= at[0] <= max(x0, x1) + _SAME_FT
        and min(y0, y1) - _SAME_FT <= at[1] <= max(y0, y1) + _SAME_FT
        and off_line_ft(at, joint) <= _SAME_FT
    ):
        return
    for end in joint:
        if math.dist(at, end) > 2 * _SAME_FT:
            yield math.atan2(end[1] - at[1], end[0] - at[0])


def _unmatched(joints: Sequence[Segment], pool: Ring, limits: Limits) -> Iterator[Point]:
    """Yield the ends at a straight side of a pool whose line meets no joint beyond the pool.

    Where one of two sides needs more joints than the other, those of the other are looked at.
    """
    sides = [
        (n, (start, end))
        for n, (start, end) in enumerate(zip(pool, (*pool[1:], pool[0]), strict=True))
        if math.dist(start, end) > limits.side_ft
    ]
    if len(sides) < 2:
        return
    ends = [end for joint in joints for end in joint]
    missing: dict[tuple[int, int], list[Point]] = defaultdict(list)
    for joint in joints:
        for start, other in (joint, joint[::-1]):
            side = _side_at(start, sides)
            if side is None:
                continue
            long = math.dist(start, other)
            direction = ((start[0] - other[0]) / long, (start[1] - other[1]) / long)
            beyond = hit(pool, start, direction)
            over = _side_at(beyond.point, sides) if beyond else None
            if beyond is None or over is None or over == side:
                continue
            if all(math.dist(beyond.point, end) > limits.in_line_ft for end in ends):
                missing[side, over].append(start)
    for (side, over), here in missing.items():
        if (len(here), side) <= (len(missing.get((over, side), ())), over):
            yield from here


def _side_at(at: Point, sides: Sequence[tuple[int, Segment]]) -> int | None:
    return next((n for n, side in sides if off_line_ft(at, side) < _SAME_FT), None)


def off_line_ft(at: Point, line: Segment) -> float:
    """Return how far a point is from a stretch of line."""
    (x0, y0), (x1, y1) = line
    dx, dy = x1 - x0, y1 - y0
    share = ((at[0] - x0) * dx + (at[1] - y0) * dy) / (dx * dx + dy * dy)
    share = min(1.0, max(0.0, share))
    return math.hypot(at[0] - x0 - dx * share, at[1] - y0 - dy * share)
