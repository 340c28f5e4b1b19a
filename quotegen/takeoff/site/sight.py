"""What can be seen from a point, and the shortest ways round things: a visibility graph."""

import heapq
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from shapely import (
    MultiPolygon,
    Point,
    Polygon,
    area,
    contains,
    crosses,
    is_valid,
    linestrings,
    polygons,
    prepare,
    union_all,
)
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

from quotegen.takeoff import plan_geometry

Edge: TypeAlias = tuple[plan_geometry.Point, plan_geometry.Point]

_FAR = 1_000.0  # a shadow is this many times as long as its edge is far
_GROWN_FT = 0.02  # a way keeps this clear of what it goes round
_SIMPLER_FT = 0.1
_CIRCLE_QUARTER = 64  # short sides in a quarter turn: strays less than 1/10,000 of the radius


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """The shortest way from a start to a corner: its length and the point before it."""

    length_ft: float
    before: plan_geometry.Point | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Barriers:
    """Things that nothing passes through, as a person goes round them.

    Attributes:
        solid: all of them, a little simpler than drawn.
        corners: the points at which a shortest way can turn.
    """

    solid: BaseGeometry
    corners: tuple[plan_geometry.Point, ...]

    @classmethod
    def of(cls, shapes: tuple[BaseGeometry, ...]) -> "Barriers":
        """Put barriers together."""
        solid = union_all(list(shapes)).buffer(0).simplify(_SIMPLER_FT)
        grown = solid.buffer(_GROWN_FT, join_style="mitre")
        prepare(solid)
        return cls(solid=solid, corners=tuple(_outer_corners(grown)))

    def sees(self, start: plan_geometry.Point, end: plan_geometry.Point) -> bool:
        """Say whether a straight line from one point to another meets no barrier."""
        return self.seen_from(start, (end,)) == (end,)

    def seen_from(
        self, start: plan_geometry.Point, ends: Sequence[plan_geometry.Point]
    ) -> tuple[plan_geometry.Point, ...]:
        """Return the points that a straight line from another reaches past no barrier."""
        if not ends:
            return ()
        lines = linestrings([(start, end) for end in ends])
        blocked = crosses(self.solid, lines) | contains(self.solid, lines)
        return tuple(end for end, is_hidden in zip(ends, blocked.tolist(), strict=True)
                     if not is_hidden)  # fmt: skip

    def seen(self, start: plan_geometry.Point, reach_ft: float) -> BaseGeometry:
        """Return all that lies within a straight reach of a point and in its sight."""
        disc = Point(start).buffer(reach_ft, quad_segs=_CIRCLE_QUARTER)
        near = self.solid.intersection(disc)
        return disc.difference(union_all([near, *_shadows(start, tuple(_edges(near)))]))

    def ways(self, start: plan_geometry.Point) -> dict[plan_geometry.Point, Way]:
        """Return the shortest way from a start to every corner (Dijkstra, on what is in sight)."""
        found: dict[plan_geometry.Point, Way] = {}
        queue: list[tuple[float, plan_geometry.Point, plan_geometry.Point | None]] = [
            (0.0, start, None)
        ]
        while queue:
            length, at, before = heapq.heappop(queue)
            if at in found:
                continue
            found[at] = Way(length_ft=length, before=before)
            ahead = [corner for corner in self.corners if corner not in found]
            for corner in self.seen_from(at, ahead):
                heapq.heappush(queue, (length + math.dist(at, corner), corner, at))
        return found

    def within(self, ways: dict[plan_geometry.Point, Way], reach_ft: float) -> BaseGeometry:
        """Return all that a way of at most so many feet comes to."""
        parts = [
            self.seen(corner, reach_ft - way.length_ft)
            for corner, way in ways.items()
            if way.length_ft < reach_ft
        ]
        return union_all(parts)

    def way_to(
        self, ways: dict[plan_geometry.Point, Way], end: plan_geometry.Point
    ) -> tuple[float, plan_geometry.Ring] | None:
        """Return the shortest way to a point and its length; None where there is no way."""
        last = min(
            (
                (ways[corner].length_ft + math.dist(corner, end), corner)
                for corner in self.seen_from(end, tuple(ways))
            ),
            default=None,
        )
        if last is None:
            return None
        turns, at = [end], last[1]
        while True:
            turns.append(at)
            before = ways[at].before
            if before is None:
                return last[0], tuple(reversed(turns))
            at = before


def _edges(shape: BaseGeometry) -> Iterator[Edge]:
    parts = shape.geoms if isinstance(shape, MultiPolygon) else (shape,)
    for part in parts:
        if isinstance(part, Polygon) and not part.is_empty:
            corners = list(part.exterior.coords)
            yield from pairwise(corners)


def _shadows(light: plan_geometry.Point, edges: Sequence[Edge]) -> list[BaseGeometry]:
    """The shadow that each edge throws, as seen from a light; none where the light is in line."""
    if not edges:
        return []

    def far(point: plan_geometry.Point) -> plan_geometry.Point:
        return light[0] + (point[0] - light[0]) * _FAR, light[1] + (point[1] - light[1]) * _FAR

    shadows = polygons([(one, other, far(other), far(one)) for one, other in edges])
    sound: list[BaseGeometry] = shadows[(area(shadows) > 0) & is_valid(shadows)].tolist()
    return sound


def _outer_corners(shape: BaseGeometry) -> Iterator[plan_geometry.Point]:
    """Yield the corners that stick out; a shortest way never turns at one that goes in."""
    parts = shape.geoms if isinstance(shape, MultiPolygon) else (shape,)
    for part in parts:
        if isinstance(part, Polygon) and not part.is_empty:
            ring = list(orient(part, sign=-1).exterior.coords)[:-1]
            for index, (x, y) in enumerate(ring):
                (x0, y0), (x1, y1) = ring[index - 1], ring[(index + 1) % len(ring)]
                turn = (x - x0) * (y1 - y) - (y - y0) * (x1 - x)
                if turn < 0:  # the ring runs clockwise
                    yield x, y
