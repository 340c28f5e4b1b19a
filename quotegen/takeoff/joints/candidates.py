"""The chords along which a part might be cut: from corners, across its length, off a curve."""

import math
from collections.abc import Iterator
from itertools import chain

from quotegen.takeoff.joints.judge import Limits, tiled
from quotegen.takeoff.joints.part import (
    Chord,
    Part,
    Spot,
    crossings,
    hit,
    interior_rad,
    tight_box,
)
from quotegen.takeoff.plan_geometry import Point

_UPRIGHT: tuple[Point, Point] = ((0.0, 1.0), (1.0, 0.0))
_SAMPLE_FT = 1.5
_MOST_SAMPLES = 36
_NEAR_FT = 1e-5


def candidates(part: Part, joint_ends: tuple[Point, ...], limits: Limits) -> Iterator[Chord]:
    """Yield chords, the likeliest first.

    Args:
        part: to be cut.
        joint_ends: where joints around it end, so that a new joint can continue one of them.
        limits: of the panels.
    """
    yield from chain(
        _from_inside_corners(part, limits),
        _from_joint_ends(part, joint_ends),
        _across(part, limits),
        _square_to_edges(part),
    )


def _from_inside_corners(part: Part, limits: Limits) -> Iterator[Chord]:
    """Start at each inside corner: along its sides, straight up or across, or halving its angle."""
    ring = part.ring
    for n, at in enumerate(ring):
        before, after = ring[n - 1], ring[(n + 1) % len(ring)]
        angle = interior_rad(before, at, after)
        if angle - math.pi < limits.turn_rad / 2:
            continue
        start = Spot(n, 0.0, at)
        onward, back = _unit(before, at), _unit(after, at)
        directions = [
            onward,
            back,
            *_four_directions(),
            _unit_of(onward[0] + back[0], onward[1] + back[1]),
        ]
        for direction in directions:
            if _leads_inside(before, at, after, direction):
                yield from _ray(part, start, direction)


def _from_joint_ends(part: Part, joint_ends: tuple[Point, ...]) -> Iterator[Chord]:
    """Start where a joint from outside ends: straight on, square to it."""
    ring = part.ring
    for n, start in enumerate(ring):
        if not part.cut[n]:
            continue
        end = ring[(n + 1) % len(ring)]
        long = math.dist(start, end)
        ux, uy = _unit(start, end)
        if part.cut[n - 1] and abs(interior_rad(ring[n - 1], start, end) - math.pi) < _NEAR_FT:
            yield from _ray(part, Spot(n, 0.0, start), (-uy, ux))
        for x, y in joint_ends:
            along = (x - start[0]) * ux + (y - start[1]) * uy
            off = (x - start[0]) * uy - (y - start[1]) * ux
            if abs(off) < _NEAR_FT < along < long - _NEAR_FT:
                yield from _ray(part, Spot(n, along / long, (x, y)), (-uy, ux))


def _across(part: Part, limits: Limits) -> Iterator[Chord]:
    """Divide length and width evenly, of the upright box around the part and of its tightest."""
    xs, ys = [p[0] for p in part.ring], [p[1] for p in part.ring]
    corner = (min(xs), min(ys))
    sizes = (max(xs) - corner[0], max(ys) - corner[1])
    yield from _evenly(part, corner, ((1.0, 0.0), (0.0, 1.0)), sizes, limits)
    box = tight_box(part.ring)
    at, one, other = box[0], box[1], box[3]
    axes = (_unit(at, one), _unit(at, other))
    if all(min(abs(axis[0]), abs(axis[1])) > _NEAR_FT for axis in axes):
        sides = (math.dist(at, one), math.dist(at, other))
        yield from _evenly(part, at, axes, sides, limits)


def _evenly(
    part: Part,
    corner: Point,
    axes: tuple[Point, Point],
    sizes: tuple[float, float],
    limits: Limits,
) -> Iterator[Chord]:
    counts = tiled(sizes[0], sizes[1], limits)
    for axis, other, size, least in zip(axes, axes[::-1], sizes, counts, strict=True):
        for count in (max(2, least), least + 1):
            for place in dict.fromkeys((count // 2, (count + 1) // 2, 1)):
                far = size * place / count
                through = (corner[0] + axis[0] * far, corner[1] + axis[1] * far)
                yield from crossings(part.ring, through, other)


def _square_to_edges(part: Part) -> Iterator[Chord]:
    """Leave the slanted and curved edges of the slab at right angles, every foot or two."""
    ring = part.ring
    sides = [n for n in range(len(ring)) if not part.cut[n] and not _is_upright(part, n)]
    long = math.fsum(math.dist(ring[n], ring[(n + 1) % len(ring)]) for n in sides)
    step = max(_SAMPLE_FT, long / _MOST_SAMPLES)
    left = step / 2
    for n in sides:
        start, end = ring[n], ring[(n + 1) % len(ring)]
        length = math.dist(start, end)
        ux, uy = _unit(start, end)
        while left < length:
            share = left / length
            point = (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
            yield from _ray(part, Spot(n, share, point), (-uy, ux))
            left += step
        left -= length


def _is_upright(part: Part, n: int) -> bool:
    start, end = part.ring[n], part.ring[(n + 1) % len(part.ring)]
    ux, uy = _unit(start, end)
    return min(abs(ux), abs(uy)) < _NEAR_FT and math.dist(start, end) > _SAMPLE_FT


def _ray(part: Part, start: Spot, direction: Point) -> Iterator[Chord]:
    end = hit(part.ring, start.point, direction)
    if end is not None:
        yield start, end


def _four_directions() -> tuple[Point, ...]:
    return (*_UPRIGHT, (0.0, -1.0), (-1.0, 0.0))


def _leads_inside(before: Point, at: Point, after: Point, direction: Point) -> bool:
    """Whether a direction from a corner leads into the part."""
    tip = (at[0] + direction[0], at[1] + direction[1])
    turn = interior_rad(before, at, after)
    return _NEAR_FT < _turned(after, at, tip) < turn - _NEAR_FT


def _turned(first: Point, at: Point, second: Point) -> float:
    """Return the angle from one point to another, counter-clockwise as seen from a corner."""
    one = math.atan2(first[1] - at[1], first[0] - at[0])
    other = math.atan2(second[1] - at[1], second[0] - at[0])
    return (other - one) % (2 * math.pi)


def _unit(start: Point, end: Point) -> Point:
    return _unit_of(end[0] - start[0], end[1] - start[1])


def _unit_of(x: float, y: float) -> Point:
    length = math.hypot(x, y) or 1.0
    return x / length, y / length
