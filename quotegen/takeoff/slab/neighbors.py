"""What an edge meets that one slab alone does not know: the next placement, and a cast pool edge.

An edge that two placements share is formed once, with the placement that is typed first; what
stands between them is said by the later one. CIP 6 of the ready-mix association parts drives and
patios from walks and slabs by a soft strip, so that is what stands there if nothing is said.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely
import shapely.ops
from shapely.geometry.base import BaseGeometry

from quotegen.reading.files.site_parts import Between
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import Against, Point
from quotegen.takeoff.shapes.path import Loop, Segment, fine_corners
from quotegen.takeoff.slab.slab import Slab

_NEAR_FT = 0.02  # a quarter inch: nearer than a form board is thick
_SHORTEST_FT = 0.25  # where two slabs only touch at a corner there is no edge between them
_FIRST = {
    Between.FILLER: Against.BESIDE,
    Between.DOWELS: Against.DOWELED,
    Between.NOTHING: Against.JOINED,
}


def with_neighbors(
    slabs: Sequence[tuple[PlacementSpec, Slab]],
) -> list[tuple[PlacementSpec, Slab]]:
    """Return the slabs of a job, each edge with what it meets among the others."""
    return [(spec, _met(place, slabs)) for place, (spec, _) in enumerate(slabs)]


def _met(place: int, slabs: Sequence[tuple[PlacementSpec, Slab]]) -> Slab:
    spec, slab = slabs[place]
    others = [
        (Against.JOINED if other < place else _FIRST[its.typed.between], found.region)
        for other, (its, found) in enumerate(slabs)
        if other != place and found.region.distance(slab.region) < _NEAR_FT
    ]
    outer, inner = (
        tuple(_ring(ring, spec, others) for ring in rings)
        for rings in (slab.boundary.outer, slab.boundary.inner)
    )
    return replace(slab, boundary=replace(slab.boundary, outer=outer, inner=inner))


def _ring(loop: Loop, spec: PlacementSpec, others: list[tuple[Against, BaseGeometry]]) -> Loop:
    return tuple(part for segment in loop for part in _parts(segment, spec, others))


def _parts(
    segment: Segment, spec: PlacementSpec, others: list[tuple[Against, BaseGeometry]]
) -> Iterator[Segment]:
    """Yield a side in as many parts as it meets different things."""
    if segment.against is Against.POOL and spec.casts_pool_edge:
        yield replace(segment, against=Against.CAST)
        return
    if segment.against is not Against.OPEN or segment.is_closed:
        yield segment
        return
    done = 0.0
    for first, last, against in sorted(_shared(segment, others)):
        if first > done:
            yield segment.between(done, first)
        yield replace(segment.between(first, last), against=against)
        done = last
    if done == 0.0:
        yield segment
    elif done < 1.0:
        yield segment.between(done, 1.0)


def _shared(
    segment: Segment, others: list[tuple[Against, BaseGeometry]]
) -> Iterator[tuple[float, float, Against]]:
    """Yield from where to where a side runs along other slabs, as shares of its length."""
    line = shapely.LineString((*fine_corners(segment), segment.end))
    for against, region in others:
        along = shapely.line_merge(line.intersection(region.buffer(_NEAR_FT, join_style="mitre")))
        for stretch in getattr(along, "geoms", (along,)):
            if isinstance(stretch, shapely.LineString) and stretch.length > _SHORTEST_FT:
                ends = (stretch.coords[0], stretch.coords[-1])
                corners = _corners_near(ends, region)
                first, last = sorted(_share(segment, at) for at in corners)
                yield first, last, against


def _corners_near(ends: Sequence[tuple[float, ...]], region: BaseGeometry) -> Iterator[Point]:
    """Yield each end of a stretch, moved to the corner of the other slab that it means."""
    corners = shapely.MultiPoint(shapely.get_coordinates(region.boundary))
    for x, y, *_ in ends:
        near, _ = shapely.ops.nearest_points(corners, shapely.Point(x, y))
        yield (near.x, near.y) if near.distance(shapely.Point(x, y)) < 2 * _NEAR_FT else (x, y)


def _share(segment: Segment, at: Point) -> float:
    share = min(1.0, max(0.0, segment.share_at(at)))
    for end in (0.0, 1.0):
        if abs(share - end) * segment.length_ft < 2 * _NEAR_FT:
            return end
    return share
