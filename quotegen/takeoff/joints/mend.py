"""A layout mended: joints that die into others are carried on, dropped or led to a corner."""

import math
from collections.abc import Callable, Iterator, Sequence
from typing import TypeAlias

from shapely import LineString, MultiLineString, Point as Place, Polygon

from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.plan_geometry import Point

_SAME_FT = 0.02
_LEGS = 3  # panels that a joint is carried on through, or drawn back by
_SLIDE_FT = 3.0
_ROUNDS = 12
_FAR_FT = 1_000.0

Lines: TypeAlias = tuple[Segment, ...]


def mended(
    joints: Lines,
    dying: Sequence[Point],
    region: Polygon,
    cost: Callable[[Lines], tuple[float, Sequence[Point]]],
    limits: Limits,
) -> Lines:
    """Return joints of which fewer die into others, as long as that makes the layout better.

    Args:
        joints: straight lines.
        dying: where one of them dies.
        region: what they divide.
        cost: of joints, and where one of them dies.
        limits: of the panels.
    """
    least, _ = cost(joints)
    left = list(dying)
    for _ in range(_ROUNDS):
        if not left:
            break
        at = left.pop(0)
        for other in _moves(joints, at, region, limits):
            found, places = cost(other)
            if found < least - _SAME_FT:
                joints, least, left = other, found, list(places)
                break
    return joints


def _moves(joints: Lines, at: Point, region: Polygon, limits: Limits) -> Iterator[Lines]:
    """Yield the joints with one end carried on, drawn back, or led to where another ends."""
    for n, joint in enumerate(joints):
        for start, end in (joint, joint[::-1]):
            if math.dist(end, at) < _SAME_FT:
                rest = joints[:n] + joints[n + 1 :]
                for line in _instead(start, end, rest, region, limits):
                    if all(math.dist(*one) > _SAME_FT for one in line):
                        yield (*rest, *line)


def _instead(
    start: Point, end: Point, rest: Lines, region: Polygon, limits: Limits
) -> Iterator[Lines]:
    nodes = _nodes(start, end, rest)
    for back in nodes[:_LEGS]:
        yield ((start, back),) if math.dist(start, back) > 2 * _SAME_FT else ()
    long = math.dist(start, end)
    onward = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    stops = _stops(end, onward, rest, region)
    for stop in stops[:_LEGS]:
        yield ((start, stop),)
    for near in _near_ends(end, rest):
        yield ((start, near),)
        if nodes and math.dist(nodes[0], start) > _SAME_FT:
            yield (start, nodes[0]), (nodes[0], near)
    foot = region.boundary.interpolate(region.boundary.project(Place(end)))
    if _SAME_FT < math.dist((foot.x, foot.y), end) < limits.most_ft:
        yield (start, end), (end, (foot.x, foot.y))


def _nodes(start: Point, end: Point, rest: Lines) -> list[Point]:
    """Return where other joints meet a joint, from its end back to its start."""
    line = LineString((start, end))
    found = {0.0}
    for other in rest:
        if line.dwithin(LineString(other), _SAME_FT):
            shared = line.intersection(LineString(other).buffer(_SAME_FT / 2))
            if not shared.is_empty:
                found.add(round(line.project(shared.centroid), 6))
    return [
        (place.x, place.y)
        for place in map(line.interpolate, sorted(found, reverse=True))
        if math.dist((place.x, place.y), end) > 2 * _SAME_FT
    ]


def _stops(end: Point, onward: Point, rest: Lines, region: Polygon) -> list[Point]:
    """Return where a joint that goes on meets others, up to the edge of the slab."""
    ray = LineString(
        ((end[0] + onward[0] * 3 * _SAME_FT, end[1] + onward[1] * 3 * _SAME_FT),
         (end[0] + onward[0] * _FAR_FT, end[1] + onward[1] * _FAR_FT))
    )  # fmt: skip
    inside = ray.intersection(region)
    first = min(
        getattr(inside, "geoms", (inside,)),
        key=lambda one: one.distance(Place(end)),
        default=None,
    )
    if not isinstance(first, LineString) or first.distance(Place(end)) > 4 * _SAME_FT:
        return []
    crossed = first.intersection(MultiLineString([*rest]))
    places = [one for one in getattr(crossed, "geoms", (crossed,)) if isinstance(one, Place)]
    places.append(Place(first.coords[-1]))
    places.sort(key=lambda one: one.distance(Place(end)))
    return [(place.x, place.y) for place in places[::-1]]


def _near_ends(end: Point, rest: Lines) -> list[Point]:
    ends = dict.fromkeys(one for line in rest for one in line)
    near = [one for one in ends if _SAME_FT < math.dist(one, end) < _SLIDE_FT]
    return sorted(near, key=lambda one: math.dist(one, end))[:_LEGS]
