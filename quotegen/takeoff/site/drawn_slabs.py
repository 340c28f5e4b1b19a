"""Slabs as polygons again, from the rings in their records, for questions about the site."""

from shapely import Polygon, union_all
from shapely.geometry.base import BaseGeometry

from quotegen.takeoff.plan_geometry import Ring
from quotegen.takeoff.records import PlacementTakeoff, Takeoff


def region_of(measured: PlacementTakeoff) -> BaseGeometry:
    """Return one slab, its cut-outs left out."""
    holes = [Polygon(ring) for ring in measured.inner_ft]
    whole = union_all([Polygon(ring) for ring in measured.outer_ft])
    return whole.difference(union_all(holes)) if holes else whole


def regions_of(takeoff: Takeoff) -> BaseGeometry:
    """Return all slabs of a job together."""
    return union_all([region_of(measured) for measured in takeoff.placements])


def rings_of(shape: BaseGeometry) -> tuple[Ring, ...]:
    """Return every ring of a shape, outer and inner, the first corner not repeated."""
    found: list[Ring] = []
    for part in getattr(shape, "geoms", (shape,)):
        if isinstance(part, Polygon) and not part.is_empty:
            found += [
                tuple((x, y) for x, y, *_ in list(ring.coords)[:-1])
                for ring in (part.exterior, *part.interiors)
            ]
    return tuple(found)
