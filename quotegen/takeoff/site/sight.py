"""What can be seen from a point, and the shortest routes around barriers: a visibility graph."""

import heapq
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TypeAlias

import shapely
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.takeoff.shapes.overlay import polygons

Edge: TypeAlias = tuple[Point, Point]

_FAR = 1_000.0  # a shadow is this many times as long as its edge is far
_CLEARANCE_FT = 0.02  # a route keeps this far from what it goes around
_SIMPLER_FT = 0.1
_CIRCLE_QUARTER = 64  # short sides in a quarter turn: off by less than 1/10,000 of the radius


@dataclass(frozen=True, slots=True, kw_only=True)
class Route:
    """The shortest route from a start to a corner: its length and the point before the corner."""

    length_ft: float
    before: Point | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Barriers:
    """What nothing passes through, as a person walks around it.

    Attributes:
        solid: all barriers together, a little simpler than drawn.
        corners: the points where a shortest route can turn.
    """

    solid: BaseGeometry
    corners: tuple[Point, ...]

    @classmethod
    def of(cls, shapes: tuple[BaseGeometry, ...]) -> "Barriers":
        """Combine shapes into barriers."""
        solid = shapely.union_all(list(shapes)).buffer(0).simplify(_SIMPLER_FT)
        grown = solid.buffer(_CLEARANCE_FT, join_style="mitre")
        shapely.prepare(solid)
        return cls(solid=solid, corners=tuple(_outer_corners(grown)))

    def in_sight(self, start: Point, points: Sequence[Point]) -> tuple[Point, ...]:
        """Return those points that no barrier hides from a start."""
        if not points:
            return ()
        lines = shapely.linestrings([(start, point) for point in points])
        hidden = shapely.crosses(self.solid, lines) | shapely.contains(self.solid, lines)
        pairs = zip(points, hidden.tolist(), strict=True)
        return tuple(point for point, is_hidden in pairs if not is_hidden)

    def visible_from(self, start: Point, reach_ft: float) -> BaseGeometry:
        """Return everything within a straight reach of a point that no barrier hides."""
        disc = shapely.Point(start).buffer(reach_ft, quad_segs=_CIRCLE_QUARTER)
        return disc.difference(_hidden(start, self.solid.intersection(disc)))

    def routes_from(self, start: Point) -> dict[Point, Route]:
        """Return the shortest route from a start to every corner (Dijkstra's algorithm)."""
        found: dict[Point, Route] = {}
        queue: list[tuple[float, Point, Point | None]] = [(0.0, start, None)]
        while queue:
            length, at, before = heapq.heappop(queue)
            if at in found:
                continue
            found[at] = Route(length_ft=length, before=before)
            ahead = [corner for corner in self.corners if corner not in found]
            for corner in self.in_sight(at, ahead):
                heapq.heappush(queue, (length + math.dist(at, corner), corner, at))
        return found

    def within(self, routes: dict[Point, Route], length_ft: float) -> BaseGeometry:
        """Return everything that a route of at most a given length reaches."""
        parts = [
            self.visible_from(corner, length_ft - route.length_ft)
            for corner, route in routes.items()
            if route.length_ft < length_ft
        ]
        return shapely.union_all(parts)

    def route_to(self, routes: dict[Point, Route], end: Point) -> tuple[float, Ring] | None:
        """Return the length and turns of the shortest route to a point; None if there is none."""
        last = min(
            (
                (routes[corner].length_ft + math.dist(corner, end), corner)
                for corner in self.in_sight(end, tuple(routes))
            ),
            default=None,
        )
        if last is None:
            return None
        turns, at = [end], last[1]
        while True:
            turns.append(at)
            before = routes[at].before
            if before is None:
                return last[0], tuple(reversed(turns))
            at = before


@lru_cache(maxsize=256)  # every access method asks from the same corners
def _hidden(light: Point, solid: BaseGeometry) -> BaseGeometry:
    """Return what something solid hides from a light, itself included."""
    edges = [
        ((x0, y0), (x1, y1))
        for part in polygons(solid)
        for (x0, y0), (x1, y1) in pairwise(part.exterior.coords)
    ]
    return shapely.union_all([solid, *_shadows(light, edges)])


def _shadows(light: Point, edges: Sequence[Edge]) -> list[BaseGeometry]:
    """The shadow of each edge, as seen from a light; none where the edge points at the light."""
    if not edges:
        return []

    def far(point: Point) -> Point:
        return light[0] + (point[0] - light[0]) * _FAR, light[1] + (point[1] - light[1]) * _FAR

    shadows = shapely.polygons([(one, other, far(other), far(one)) for one, other in edges])
    sound = (shapely.area(shadows) > 0) & shapely.is_valid(shadows)
    return list(shadows[sound])


def _outer_corners(shape: BaseGeometry) -> Iterator[Point]:
    """Yield the corners that stick out; a shortest route never turns at one that goes in."""
    for part in polygons(shape):
        ring = list(orient(part, sign=-1).exterior.coords)[:-1]
        for index, (x, y) in enumerate(ring):
            (x0, y0), (x1, y1) = ring[index - 1], ring[(index + 1) % len(ring)]
            turn = (x - x0) * (y1 - y) - (y - y0) * (x1 - x)
            if turn < 0:  # the ring runs clockwise
                yield x, y
