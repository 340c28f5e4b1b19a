"""The boundary of the finished slab, traced back to the exact sides that it runs along.

The combined polygon only tells which side lies where. Lengths come from the sides themselves, so
they are exact even where shapes share part of a side or a pool opens to the edge of the deck.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import shapely
from shapely.geometry.polygon import orient

from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.arcs import TAPE_SLACK_FT
from quotegen.takeoff.shapes.path import Loop, Segment, fine_corners, joined

_ON_THE_SIDE_FT = 1e-4
_END_FT = 1e-3  # nearer than this to the end of a side is the end


@dataclass(frozen=True, slots=True, kw_only=True)
class Boundary:
    """The rings of the slab, each with the slab on its left."""

    outer: tuple[Loop, ...]
    inner: tuple[Loop, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    """A stretch of boundary along one side, and the place of that side in the job file."""

    place: int
    segment: Segment


class _Sides:
    """Finds the side that lies nearest to a point, among the sides of some loops."""

    def __init__(self, loops: Sequence[Loop]) -> None:
        self.segments = [segment for loop in loops for segment in loop]
        self._owners: list[int] = []
        edges: list[tuple[Point, Point]] = []
        for place, segment in enumerate(self.segments):
            corners = (*fine_corners(segment), segment.end)
            edges += pairwise(corners)
            self._owners += [place] * (len(corners) - 1)
        self._tree = shapely.STRtree(list(shapely.linestrings(edges)) if edges else [])

    def nearest(self, spots: Sequence[Point]) -> tuple[tuple[int, float], ...]:
        """Return the place of the nearest side for each point, and how far away it is."""
        if not self._owners:
            return tuple((0, math.inf) for _ in spots)
        (_, found), away_ft = self._tree.query_nearest(
            shapely.points(spots), all_matches=False, return_distance=True
        )
        pairs = zip(found.tolist(), away_ft.tolist(), strict=True)
        return tuple((self._owners[edge], away) for edge, away in pairs)


def boundary_of(
    slab: Sequence[shapely.Polygon], added: Sequence[Loop], cut_out: Sequence[Loop]
) -> Boundary:
    """Return the exact boundary of the slab, its rings in the order of the job file.

    Args:
        slab: the separate parts of the finished slab.
        added: loops of the shapes that were added.
        cut_out: loops of the shapes that were taken away, with the slab on their left.
    """
    sides = (_Sides(added), _Sides(cut_out))
    parts = [orient(part) for part in slab]
    outer = [_traced(part.exterior, sides) for part in parts]
    inner = [_traced(hole, sides) for part in parts for hole in part.interiors]
    return Boundary(outer=_in_order(outer), inner=_in_order(inner))


def _in_order(rings: Sequence[tuple[_Run, ...]]) -> tuple[Loop, ...]:
    ordered = sorted((ring for ring in rings if ring), key=lambda ring: ring[0].place)
    return tuple(tuple(run.segment for run in ring) for ring in ordered)


def _traced(ring: shapely.LinearRing, sides: tuple[_Sides, _Sides]) -> tuple[_Run, ...]:
    corners = list(ring.coords)
    middles = [((x0 + x1) / 2, (y0 + y1) / 2) for (x0, y0), (x1, y1) in pairwise(corners)]
    places = _places(middles, sides)
    segments = (*sides[0].segments, *sides[1].segments)
    starts = [n for n, place in enumerate(places) if place != places[n - 1]]
    if not starts:
        return (_Run(place=places[0], segment=segments[places[0]]),)
    runs: list[_Run] = []
    for n, first in enumerate(starts):
        last = starts[(n + 1) % len(starts)]
        part = _part(segments[places[first]], corners[first], corners[last])
        if part and _length_ft(corners, first, last) >= TAPE_SLACK_FT:
            runs.append(_Run(place=places[first], segment=part))
    return _first_side_first(_merged(runs))


def _places(middles: Sequence[Point], sides: tuple[_Sides, _Sides]) -> tuple[int, ...]:
    """Return the side of each stretch; the side of a cut-out goes before an added side under it."""
    added, cut_out = sides
    nearest = zip(added.nearest(middles), cut_out.nearest(middles), strict=True)
    return tuple(
        len(added.segments) + cut_place
        if cut_away_ft < max(_ON_THE_SIDE_FT, added_ft)
        else added_place
        for (added_place, added_ft), (cut_place, cut_away_ft) in nearest
    )


def _length_ft(corners: Sequence[tuple[float, ...]], first: int, last: int) -> float:
    steps = (last - first) % (len(corners) - 1)
    stretch = [corners[(first + step) % (len(corners) - 1)] for step in range(steps + 1)]
    return math.fsum(math.dist(a, b) for a, b in pairwise(stretch))


def _part(segment: Segment, start: tuple[float, ...], end: tuple[float, ...]) -> Segment | None:
    first, last = _share(segment, start), _share(segment, end)
    if segment.is_closed:
        return segment.between(first, last)
    return segment.between(min(first, last), max(first, last)) if first != last else None


def _share(segment: Segment, corner: tuple[float, ...]) -> float:
    point: Point = (corner[0], corner[1])
    for share in (0.0, 1.0):
        if math.dist(segment.point_at(share), point) < _END_FT:
            return share
    return segment.share_at(point)


def _merged(runs: list[_Run]) -> list[_Run]:
    """Join runs that continue each other: on one side, or on two sides in one line or circle."""
    merged: list[_Run] = []
    for run in runs:
        whole = joined(merged[-1].segment, run.segment) if merged else None
        if whole is None:
            merged.append(run)
        else:
            merged[-1] = _Run(place=min(merged[-1].place, run.place), segment=whole)
    if len(merged) > 1 and (whole := joined(merged[-1].segment, merged[0].segment)):
        merged[0] = _Run(place=min(merged[-1].place, merged[0].place), segment=whole)
        merged.pop()
    return merged


def _first_side_first(runs: list[_Run]) -> tuple[_Run, ...]:
    if not runs:
        return ()
    first = min(range(len(runs)), key=lambda n: runs[n].place)
    return (*runs[first:], *runs[:first])
