"""A layout mended: joints that die into others are led to a corner, drawn back or carried out."""

import math
from collections.abc import Callable, Iterator, Sequence
from typing import Protocol, TypeAlias

from shapely import LineString
from shapely import Point as Place

from quotegen.takeoff.joints.cutting import Segment, is_same_line
from quotegen.takeoff.joints.ends import off_line_ft
from quotegen.takeoff.joints.judge import Limits, passes
from quotegen.takeoff.joints.part import Part, Spot, split, spot_at
from quotegen.takeoff.plan_geometry import Point

_SAME_FT = 0.02
_LOOKS = 100  # layouts that are tried
_BENT_MORE_RAD = math.radians(1)  # so that a joint that is drawn counts as bent
_FARTHER = (1.0, 1.4)  # times as far as the least bend asks for
_SHORTEST_FT = 0.1
_LEGS = 2  # panels that a joint is carried on through, or drawn back by
_SLIDE_FT = 3.0
_SHARES = (0.0, 0.2, 0.4, 0.6, 0.8)

Lines: TypeAlias = tuple[Segment, ...]


class Priced(Protocol):
    """Joints with what they cost, where one of them dies, and the panels between them."""

    @property
    def cost(self) -> float: ...
    @property
    def joints(self) -> Lines: ...
    @property
    def dying(self) -> tuple[Point, ...]: ...
    @property
    def panels(self) -> tuple[Part, ...]: ...


def mended(
    layout: Priced,
    priced: Callable[[Lines], Priced | None],
    images: Sequence[Callable[[Point], Point]],
    posts: tuple[Point, ...],
    limits: Limits,
) -> Lines:
    """Return joints of which fewer die into others, as long as that makes the layout better.

    Args:
        layout: to be mended.
        priced: gives the layout of other joints; none where it has more panels that fail.
        images: from a point to its mirror image, for a region that is its own mirror image.
        posts: the middles of small openings; a joint through one is not moved.
        limits: of the panels.
    """
    left, looks = list(layout.dying), 0
    while left:
        at = left.pop(0)
        for other in _moves(layout, at, images, posts, limits):
            if looks == _LOOKS:
                return layout.joints
            looks += 1
            found = priced(other)
            if found is None or len(found.dying) >= len(layout.dying):
                continue
            if found.cost < layout.cost - _SAME_FT:
                layout = found
                left = list(found.dying)
                break
    return layout.joints


def _moves(
    layout: Priced,
    at: Point,
    images: Sequence[Callable[[Point], Point]],
    posts: tuple[Point, ...],
    limits: Limits,
) -> Iterator[Lines]:
    """Yield the joints with one end carried on, drawn back, or led to where another ends."""
    joints = layout.joints
    for n, joint in enumerate(joints):
        for start, end in (joint, joint[::-1]):
            if math.dist(end, at) > _SAME_FT:
                continue
            rest = joints[:n] + joints[n + 1 :]
            yield from _all_pulled(joints, end, _pulls(start, end, rest, posts, limits), images)
            for line in _instead(start, end, rest, layout.panels, limits):
                if any(math.dist(*one) < 2 * _SAME_FT for one in line):
                    continue
                for image in images:
                    twin = (image(start), image(end))
                    kept = tuple(one for one in rest if not is_same_line(one, twin, _SAME_FT))
                    yield (*kept, *line, *((image(a), image(b)) for a, b in line))
                if not images:
                    yield (*rest, *line)


def _instead(
    start: Point,
    end: Point,
    rest: Lines,
    panels: tuple[Part, ...],
    limits: Limits,
) -> Iterator[Lines]:
    long = math.dist(start, end)
    onward = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    nodes = _nodes(start, end, rest)
    for near in _near_ends(end, rest):
        yield ((start, near),) if len(nodes) == 1 else ((start, nodes[0]), (nodes[0], near))
    for way_out in _ways_out(end, onward, panels, limits):
        yield (start, end), (end, way_out)
    for back in nodes[:_LEGS]:
        yield ((start, back),) if math.dist(start, back) > 2 * _SAME_FT else ()


def _pulls(
    start: Point, end: Point, rest: Lines, posts: tuple[Point, ...], limits: Limits
) -> Iterator[Point]:
    """Yield where a joint could end that is drawn back and pulls the one that it dies in along.

    That one is bent there by enough that each of the three panels has a corner.
    """
    through = _through(end, rest)
    if through is None or any(off_line_ft(post, through) < _SAME_FT for post in posts):
        return
    others = tuple(one for one in rest if one != through)
    one, other = (_nodes(far, end, others)[0] for far in through)
    middle = ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
    long, bend = math.dist(start, end), math.tan(limits.bend_rad + _BENT_MORE_RAD)
    back = ((start[0] - end[0]) / long, (start[1] - end[1]) / long)
    for foot in (end, middle):
        # The bend is that of both halves together: tan = far (p + q) / (p q - far far).
        p, q = math.dist(one, foot), math.dist(other, foot)
        far = (math.sqrt((p + q) ** 2 + 4 * bend * bend * p * q) - (p + q)) / (2 * bend)
        for times in _FARTHER:
            yield foot[0] + back[0] * far * times, foot[1] + back[1] * far * times


def _all_pulled(
    joints: Lines, at: Point, places: Iterator[Point], images: Sequence[Callable[[Point], Point]]
) -> Iterator[Lines]:
    """Yield the joints with what meets at a point, and at its image, led to each of the places."""
    for to in places:
        found = _pulled(joints, at, to)
        for image in images:
            if found is not None and math.dist(image(at), at) > _SAME_FT:
                found = _pulled(found, image(at), image(to))
        if found is not None:
            yield found


def _through(at: Point, joints: Lines) -> Segment | None:
    """Return the joint that goes on through a point."""
    place = Place(at)
    for joint in joints:
        is_end = min(math.dist(at, end) for end in joint) <= 2 * _SAME_FT
        if not is_end and LineString(joint).dwithin(place, _SAME_FT):
            return joint
    return None


def _pulled(joints: Lines, at: Point, to: Point) -> Lines | None:
    """Return the joints with what meets at a point led to another."""
    through = _through(at, joints)
    if through is None:
        return None
    stems = [one for one in joints if min(math.dist(end, at) for end in one) < _SAME_FT]
    rest = tuple(one for one in joints if one != through and one not in stems)
    made = [(max(stem, key=lambda end: math.dist(end, at)), to) for stem in stems]
    for far in through:
        near = _nodes(far, at, rest)[0]
        made += [(near, to)] if near == far else [(near, to), (far, near)]
    is_short = any(math.dist(*one) < _SHORTEST_FT for one in made)
    return None if is_short else (*rest, *made)


def _ways_out(
    end: Point, onward: Point, panels: tuple[Part, ...], limits: Limits
) -> Iterator[Point]:
    """Yield where a joint could turn through the panel ahead to the edge of the slab."""
    for panel in panels:
        at = next((n for n, one in enumerate(panel.ring) if math.dist(one, end) < _SAME_FT), None)
        if at is None or not (panel.cut[at] and panel.cut[at - 1]):
            continue
        found = []
        for n, is_joint in enumerate(panel.cut):
            if is_joint:
                continue
            for share in _SHARES:
                out = spot_at(panel.ring, n, share)
                ahead = (out.point[0] - end[0]) * onward[0] + (out.point[1] - end[1]) * onward[1]
                halves = split(panel, (Spot(at, 0.0, panel.ring[at]), out)) if ahead > 0 else None
                if halves and all(passes(half, limits) for half in halves):
                    areas = [half.area_sqft for half in halves]
                    found.append((max(areas) / min(areas), out.point))
        yield from (point for _, point in sorted(found)[:1])


def _nodes(start: Point, end: Point, rest: Lines) -> list[Point]:
    """Return where other joints meet a joint, from its end back to its start, which is the last."""
    line = LineString((start, end))
    found: list[Point] = []
    for other in rest:
        touching = [one for one in other if line.dwithin(Place(one), _SAME_FT)]
        crossing = line.intersection(LineString(other))
        if touching:
            found += touching
        elif isinstance(crossing, Place):
            found.append((crossing.x, crossing.y))
    between = [
        one for one in found if min(math.dist(one, start), math.dist(one, end)) > 2 * _SAME_FT
    ]
    return [*sorted(between, key=lambda one: math.dist(one, end)), start]


def _near_ends(end: Point, rest: Lines) -> list[Point]:
    ends = dict.fromkeys(one for line in rest for one in line)
    near = [one for one in ends if _SAME_FT < math.dist(one, end) < _SLIDE_FT]
    return sorted(near, key=lambda one: math.dist(one, end))[:_LEGS]
