"""From joint lines to the parts they cut a slab into, and from parts back to joint lines."""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import TypeAlias

from shapely import (
    LineString,
    Polygon,
    STRtree,
    dwithin,
    get_coordinates,
    get_parts,
    multipoints,
    points,
    polygonize,
    prepare,
    union_all,
)
from shapely.geometry.polygon import orient

from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.plan_geometry import Point

Segment: TypeAlias = tuple[Point, Point]

_GRID_FT = 1e-5  # coarser than the grid of the frame, so that a joint meets the corner it aims at
_ON_EDGE_FT = 1e-4
_REACH_FT = 0.03
_AT_CORNER_FT = 1e-3
_TURN_RAD = 0.01
_OFF_LINE_FT = 1e-3
_CRUMB_SQFT = 0.01  # three joints that miss one point by a hair leave no panel between them


def cut_along(region: Polygon, lines: Sequence[Segment]) -> tuple[Polygon, ...]:
    """Return the pieces that straight lines cut a region into; a loose end cuts nothing."""
    if not lines:
        return (region,)
    corners = STRtree(get_parts(multipoints(get_coordinates(region))))
    drawn = [LineString(longer(_to_corners(line, corners))) for line in lines]
    work = union_all([region.boundary, *drawn], grid_size=_GRID_FT)
    pieces = get_parts(polygonize(get_parts(work)))
    prepare(region)
    return tuple(
        orient(piece)
        for piece in pieces
        if piece.area > _CRUMB_SQFT and region.contains(piece.representative_point())
    )


def _to_corners(line: Segment, corners: STRtree) -> Segment:
    """Move the ends of a line onto the corners that they miss by a hair."""
    spots = corners.geometries
    near, _ = corners.query_nearest(points(line), return_distance=True, all_matches=False)
    ends = []
    for end, place in zip(line, near[1].tolist(), strict=True):
        corner: Point = (spots[place].x, spots[place].y)
        ends.append(corner if math.dist(corner, end) < _AT_CORNER_FT else end)
    return (ends[0], ends[1]) if ends[0] != ends[1] else line


def longer(line: Segment) -> Segment:
    """Return a line a hair longer at both ends, so that it meets what it ends at."""
    (x0, y0), (x1, y1) = line
    length = math.dist(*line)
    dx, dy = (x1 - x0) / length * _REACH_FT, (y1 - y0) / length * _REACH_FT
    return (x0 - dx, y0 - dy), (x1 + dx, y1 + dy)


def parts_of(pieces: Iterable[Polygon], region: Polygon) -> tuple[Part, ...]:
    """Return pieces as parts; a side that is not on the edge of the slab is a joint.

    A piece that still encloses an opening is first cut through the middle of the opening.
    """
    edge = region.boundary
    prepare(edge)
    parts: list[Part] = []
    for piece in pieces:
        if piece.interiors:
            parts += parts_of(_through(piece), region)
            continue
        ring = tuple((x, y) for x, y in orient(piece).exterior.coords[:-1])
        middles = [
            ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
        ]
        on_edge = dwithin(edge, points(middles), _ON_EDGE_FT).tolist()
        parts.append(Part(ring=ring, cut=tuple(not lies_there for lies_there in on_edge)))
    return tuple(parts)


def _through(piece: Polygon) -> tuple[Polygon, ...]:
    """Cut a piece through the middle of its largest opening, along the shorter line."""
    hole = max((Polygon(ring) for ring in piece.interiors), key=lambda one: one.area)
    x, y = hole.centroid.x, hole.centroid.y
    left, bottom, right, top = piece.bounds
    lines = (((left - 1, y), (right + 1, y)), ((x, bottom - 1), (x, top + 1)))
    line = min(lines, key=lambda one: LineString(one).intersection(piece).length)
    return cut_along(piece, (line,))


def joints_of(parts: Iterable[Part]) -> tuple[Segment, ...]:
    """Return the joints between parts as straight lines, each in one piece as far as it runs."""
    lines = _Lines()
    for part in parts:
        for n, is_joint in enumerate(part.cut):
            if is_joint:
                lines.add(part.ring[n], part.ring[(n + 1) % len(part.ring)])
    return lines.runs()


class _Lines:
    """Collects stretches of joint by the straight line that they lie on."""

    def __init__(self) -> None:
        self._axes: dict[int, list[tuple[Point, Point]]] = defaultdict(list)
        self._stretches: dict[tuple[Point, Point], list[Point]] = defaultdict(list)

    def add(self, start: Point, end: Point) -> None:
        """Add a stretch to the others on its line."""
        length = math.dist(start, end)
        if length < _ON_EDGE_FT:
            return
        axis = self._axis(start, end, length)
        (ox, oy), (ux, uy) = axis
        ends = sorted((x - ox) * ux + (y - oy) * uy for x, y in (start, end))
        self._stretches[axis].append((ends[0], ends[1]))

    def runs(self) -> tuple[Segment, ...]:
        """Return every unbroken stretch."""
        found = []
        for ((ox, oy), (ux, uy)), stretches in self._stretches.items():
            for low, high in _unbroken(stretches):
                ends = [(ox + ux * far, oy + uy * far) for far in (low, high)]
                found.append((min(ends), max(ends)))
        return tuple(sorted(found))

    def _axis(self, start: Point, end: Point, length: float) -> tuple[Point, Point]:
        ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        turn = math.floor((math.atan2(uy, ux) % math.pi) / _TURN_RAD)
        whole = math.ceil(math.pi / _TURN_RAD)
        for near in (turn, (turn - 1) % whole, (turn + 1) % whole):
            for (ox, oy), (vx, vy) in self._axes[near]:
                off = max(abs((x - ox) * vy - (y - oy) * vx) for x, y in (start, end))
                if off < _OFF_LINE_FT:
                    return (ox, oy), (vx, vy)
        self._axes[turn].append((start, (ux, uy)))
        return start, (ux, uy)


def _unbroken(stretches: list[Point]) -> tuple[Point, ...]:
    """Join the stretches of one line that touch or overlap."""
    joined: list[Point] = []
    for low, high in sorted(stretches):
        if joined and low <= joined[-1][1] + _OFF_LINE_FT:
            joined[-1] = (joined[-1][0], max(high, joined[-1][1]))
        else:
            joined.append((low, high))
    return tuple(joined)


def is_same_line(one: Segment, other: Segment, within_ft: float) -> bool:
    """Whether two lines have the same ends, whichever comes first."""
    return any(
        math.dist(one[0], ends[0]) < within_ft and math.dist(one[1], ends[1]) < within_ft
        for ends in (other, other[::-1])
    )
