"""A part of a slab while it is being divided: a panel in the making, its corners and joints."""

import math
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TypeAlias

from shapely import get_coordinates, oriented_envelope, polygons

from quotegen.takeoff.plan_geometry import Point, Ring

_SAME_FT = 1e-6
_SMALLEST_SQFT = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A polygon without holes, its corners counter-clockwise.

    Attributes:
        ring: the corners.
        cut: for each corner, whether the side that starts there is a joint.
        area_sqft: the area inside.
    """

    ring: Ring
    cut: tuple[bool, ...]
    area_sqft: float = field(init=False, compare=False)

    def __post_init__(self) -> None:
        """Work out the area once, since every comparison asks for it."""
        object.__setattr__(self, "area_sqft", ring_area_sqft(self.ring))

    @property
    def around_ft(self) -> float:
        return sum(map(math.dist, self.ring, (*self.ring[1:], self.ring[0])))


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on a ring: the side, the share of the way along it, and the point."""

    side: int
    share: float
    point: Point


Chord: TypeAlias = tuple[Spot, Spot]


def ring_area_sqft(ring: Ring) -> float:
    """Return the area inside a ring, above zero when counter-clockwise."""
    ox, oy = ring[0]
    total = 0.0
    x0, y0 = ring[-1][0] - ox, ring[-1][1] - oy
    for px, py in ring:
        x, y = px - ox, py - oy
        total += x0 * y - x * y0
        x0, y0 = x, y
    return total / 2


@lru_cache(maxsize=4_000)
def tight_box(ring: Ring) -> Ring:
    """Return the corners of the smallest rectangle around a ring, at whatever angle."""
    box = oriented_envelope(polygons(ring))
    return tuple((x, y) for x, y in get_coordinates(box).tolist()[:-1])


def interior_rad(before: Point, at: Point, after: Point) -> float:
    """Return the angle inside a counter-clockwise ring at a corner."""
    ax, ay, bx, by = at[0] - before[0], at[1] - before[1], after[0] - at[0], after[1] - at[1]
    return math.pi - math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def interior_angles_rad(ring: Ring) -> list[float]:
    """Return the angle inside a counter-clockwise ring at each of its corners."""
    angles = []
    x0, y0 = ring[-2]
    x1, y1 = ring[-1]
    ax, ay = x1 - x0, y1 - y0
    for x2, y2 in ring:
        bx, by = x2 - x1, y2 - y1
        angles.append(math.pi - math.atan2(ax * by - ay * bx, ax * bx + ay * by))
        x1, y1, ax, ay = x2, y2, bx, by
    return [*angles[1:], angles[0]]


def spot_at(ring: Ring, side: int, share: float) -> Spot:
    """Return a place on a ring; one within a hair of a corner is that corner."""
    start, end = ring[side], ring[(side + 1) % len(ring)]
    length = math.dist(start, end)
    if share * length < _SAME_FT:
        return Spot(side, 0.0, start)
    if (1 - share) * length < _SAME_FT:
        return Spot((side + 1) % len(ring), 0.0, end)
    return Spot(
        side,
        share,
        (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share),
    )


def hit(ring: Ring, start: Point, direction: Point) -> Spot | None:
    """Return where a ray from a point of a ring first meets the ring again."""
    ox, oy = start
    ux, uy = direction
    best, found = math.inf, None
    count = len(ring)
    x0, y0 = ring[0]
    side0 = (x0 - ox) * uy - (y0 - oy) * ux
    for n in range(count):
        x1, y1 = ring[(n + 1) % count]
        side1 = (x1 - ox) * uy - (y1 - oy) * ux
        if (side0 <= _SAME_FT and side1 >= -_SAME_FT) or (side0 >= -_SAME_FT and side1 <= _SAME_FT):
            spread = side0 - side1
            share = side0 / spread if abs(spread) > _SAME_FT else 0.0
            share = min(1.0, max(0.0, share))
            far = (x0 + (x1 - x0) * share - ox) * ux + (y0 + (y1 - y0) * share - oy) * uy
            if 1e-4 < far < best - _SAME_FT:
                best, found = far, (n, share)
        x0, y0, side0 = x1, y1, side1
    return spot_at(ring, *found) if found else None


def crossings(ring: Ring, through: Point, direction: Point) -> tuple[Chord, ...]:
    """Return the stretches of a straight line that lie inside a ring."""
    ux, uy = direction
    found: list[tuple[float, Spot]] = []
    sides = [(x - through[0]) * uy - (y - through[1]) * ux for x, y in ring]
    for n, side in enumerate(sides):
        after = sides[(n + 1) % len(ring)]
        if (side >= 0) != (after >= 0):
            spot = spot_at(ring, n, side / (side - after))
            far = (spot.point[0] - through[0]) * ux + (spot.point[1] - through[1]) * uy
            found.append((far, spot))
    found.sort(key=lambda one: one[0])
    pairs = zip(found[::2], found[1::2], strict=True)
    return tuple((first[1], last[1]) for first, last in pairs if last[0] - first[0] > _SAME_FT)


def split(part: Part, chord: Chord) -> tuple[Part, Part] | None:
    """Cut a part along a chord; None where the chord runs along a side or outside the part."""
    first, last = sorted(chord, key=lambda spot: (spot.side, spot.share))
    if math.dist(first.point, last.point) < _SAME_FT:
        return None
    one, other = _between(part, first, last), _between(part, last, first)
    if one is None or other is None:
        return None
    small = min(one.area_sqft, other.area_sqft)
    whole = part.area_sqft
    if small < _SMALLEST_SQFT or abs(one.area_sqft + other.area_sqft - whole) > 1e-6 * whole:
        return None
    return one, other


def _between(part: Part, first: Spot, last: Spot) -> Part | None:
    """Return the part whose ring runs from one spot to another and back along the chord."""
    count = len(part.ring)
    ring: list[Point] = [first.point]
    cut: list[bool] = [part.cut[first.side]]
    side = first.side
    steps = (last.side - first.side) % count
    if steps == 0 and (last.share, last.side) < (first.share, first.side):
        steps = count
    for _ in range(steps):
        side = (side + 1) % count
        ring.append(part.ring[side])
        cut.append(part.cut[side])
    if last.share > 0:
        ring.append(last.point)
        cut.append(True)
    else:
        cut[-1] = True
    if len(ring) < 3:
        return None
    return Part(ring=tuple(ring), cut=tuple(cut))
