"""Where joints end, as a finisher looks at it: in the middle of nothing, near a corner, off line.

The rules for panels stand in `judge`. These are about a whole layout: a joint that dies into the
side of another leads a crack on into the panel beyond; one that ends close to a corner of the slab
leaves a piece that breaks off; joints on two sides of a pool are seen in one look.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from shapely import Polygon

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import hit, interior_rad
from quotegen.takeoff.plan_geometry import Point, Ring

_SAME_FT = 0.02
_STRAIGHT_RAD = math.radians(150)  # a panel whose side turns less than 30 degrees has no corner
_STRAIGHT_SIDE_FT = 2.5


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
    rings = tuple(_ring(ring.coords) for ring in (region.exterior, *region.interiors))
    return Ends(
        dying=tuple(_dying(joints, rings)),
        near_corner=tuple(_near_corner(joints, rings, limits)),
        unmatched=tuple(_unmatched(joints, rings[1:])),
    )


def _ring(coords: Iterable[Sequence[float]]) -> Ring:
    return tuple((x, y) for x, y in coords)[:-1]


def _dying(joints: Sequence[Segment], rings: tuple[Ring, ...]) -> Iterator[Point]:
    """Yield the ends off the edge of the slab where some panel has a side and not a corner."""
    for end in dict.fromkeys(_rounded(end) for joint in joints for end in joint):
        if any(_off_ring(end, ring) < _SAME_FT for ring in rings):
            continue
        ways = sorted(way for joint in joints for way in _ways(end, joint))
        turns = (*ways[1:], ways[0] + 2 * math.pi)
        if max(b - a for a, b in zip(ways, turns, strict=True)) > _STRAIGHT_RAD:
            yield end


def _rounded(point: Point) -> Point:
    return round(point[0], 2), round(point[1], 2)


def _ways(at: Point, joint: Segment) -> Iterator[float]:
    """Yield the directions in which a joint leads away from a point that lies on it."""
    if _off_line(at, joint) > _SAME_FT:
        return
    for end in joint:
        if math.dist(at, end) > 2 * _SAME_FT:
            yield math.atan2(end[1] - at[1], end[0] - at[0])


def _near_corner(
    joints: Sequence[Segment], rings: tuple[Ring, ...], limits: Limits
) -> Iterator[Point]:
    corners = [
        at
        for ring in rings
        for n, at in enumerate(ring)
        if abs(math.pi - interior_rad(ring[n - 1], at, ring[(n + 1) % len(ring)])) > limits.turn_rad
    ]
    for end in (end for joint in joints for end in joint):
        away = min((math.dist(end, corner) for corner in corners), default=math.inf)
        if _SAME_FT < away < limits.least_ft - _SAME_FT and any(
            _off_ring(end, ring) < _SAME_FT for ring in rings
        ):
            yield end


def _unmatched(joints: Sequence[Segment], pools: tuple[Ring, ...]) -> Iterator[Point]:
    """Yield the ends at a straight side of a pool whose line meets no joint beyond the pool.

    Where one of two sides needs more joints than the other, those of the other are looked at.
    """
    for pool in pools:
        missing: dict[tuple[int, int], list[Point]] = defaultdict(list)
        for joint in joints:
            for start, other in (joint, joint[::-1]):
                side = _straight_side(pool, start)
                if side is None:
                    continue
                long = math.dist(start, other)
                direction = ((start[0] - other[0]) / long, (start[1] - other[1]) / long)
                beyond = hit(pool, start, direction)
                over = None if beyond is None else _straight_side(pool, beyond.point)
                if beyond is None or over is None or over == side:
                    continue
                if not any(
                    math.dist(beyond.point, end) < 3 * _SAME_FT for one in joints for end in one
                ):
                    missing[side, over].append(start)
        for (side, over), here in missing.items():
            there = missing.get((over, side), [])
            if (len(here), side) <= (len(there), over):
                yield from here


def _straight_side(ring: Ring, at: Point) -> int | None:
    for n, start in enumerate(ring):
        end = ring[(n + 1) % len(ring)]
        if math.dist(start, end) > _STRAIGHT_SIDE_FT and _off_line(at, (start, end)) < _SAME_FT:
            return n
    return None


def _off_ring(at: Point, ring: Ring) -> float:
    return min(_off_line(at, (ring[n - 1], end)) for n, end in enumerate(ring))


def _off_line(at: Point, line: Segment) -> float:
    """Return how far a point is from a stretch of line."""
    (x0, y0), (x1, y1) = line
    dx, dy = x1 - x0, y1 - y0
    share = ((at[0] - x0) * dx + (at[1] - y0) * dy) / (dx * dx + dy * dy)
    share = min(1.0, max(0.0, share))
    return math.hypot(at[0] - x0 - dx * share, at[1] - y0 - dy * share)
