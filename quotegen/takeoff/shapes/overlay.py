"""Polygons combined and compared, to within what a tape can tell.

Two shapes that are meant to share a side, typed to a sixteenth of an inch, may leave a gap or
overlap by a hair. Such slivers, nowhere as wide as 1/8 in, are no fault and leave no edge.
"""

from collections.abc import Sequence

import shapely
from shapely.geometry.base import BaseGeometry

from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.arcs import TAPE_SLACK_FT

GRID_FT = 1e-6  # every corner of a combined polygon stands on this grid
_TOUCHING_FT = 1e-5
_SHARPEST = 20.0  # how far a mitre may reach, in widths
_MARGIN_FT = 10.0
_SHORTEST_GAP_FT = 0.1  # less has no edge that would be printed


def is_wide(shape: BaseGeometry) -> bool:
    """Whether a shape is anywhere as wide as a tape can tell."""
    return not shape.buffer(-TAPE_SLACK_FT / 2).is_empty


def polygons(shape: BaseGeometry) -> tuple[shapely.Polygon, ...]:
    """Return the polygons in a shape, without stray points and lines."""
    parts = getattr(shape, "geoms", (shape,))
    return tuple(part for part in parts if isinstance(part, shapely.Polygon) and not part.is_empty)


def overlap(first: BaseGeometry, second: BaseGeometry) -> BaseGeometry | None:
    """Return where two shapes overlap; None where it is nowhere as wide as a tape can tell."""
    if not first.intersects(second):
        return None
    common = first.intersection(second, grid_size=GRID_FT)
    return common if is_wide(common) else None


def outside(shape: BaseGeometry, whole: BaseGeometry) -> BaseGeometry | None:
    """Return what sticks out of another shape; None where a tape cannot tell."""
    beyond = shape.difference(whole, grid_size=GRID_FT)
    return beyond if is_wide(beyond) else None


def farthest_out_ft(part: BaseGeometry, whole: BaseGeometry) -> float:
    """Return how far a part that sticks out of a shape reaches from it."""
    corners = [shapely.Point(corner) for each in polygons(part) for corner in each.exterior.coords]
    return max((whole.distance(corner) for corner in corners), default=0.0)


def inside_point(shape: BaseGeometry) -> Point:
    """Return a point in the largest part of a shape."""
    largest = max(polygons(shape), key=lambda part: part.area)
    point = largest.representative_point()
    return point.x, point.y


def put_together(parts: Sequence[BaseGeometry]) -> BaseGeometry:
    """Return the union of some parts, hairline gaps between them closed."""
    whole = shapely.union_all(list(parts), grid_size=GRID_FT)
    if len(parts) == 1:
        return whole
    grown = whole.buffer(TAPE_SLACK_FT, join_style="mitre", mitre_limit=_SHARPEST)
    closed = grown.buffer(-TAPE_SLACK_FT)
    between = polygons(closed.difference(whole, grid_size=GRID_FT))
    gaps = [gap for gap in between if _is_hairline(gap) and _touches_two(gap, parts)]
    return shapely.union_all([whole, *gaps], grid_size=GRID_FT)


def taken_from(whole: BaseGeometry, parts: Sequence[BaseGeometry]) -> BaseGeometry:
    """Return a shape without some parts, and without strips too thin to measure beside them."""
    if not parts:
        return whole
    least_x, least_y, most_x, most_y = whole.bounds
    field = shapely.box(
        least_x - _MARGIN_FT, least_y - _MARGIN_FT, most_x + _MARGIN_FT, most_y + _MARGIN_FT
    )
    air = [field.difference(whole, grid_size=GRID_FT), *parts]
    return whole.difference(put_together(air), grid_size=GRID_FT)


def _is_hairline(gap: shapely.Polygon) -> bool:
    """Whether a gap is thin all along, unlike one where an arc and a side diverge from a point."""
    return gap.length > 2 * _SHORTEST_GAP_FT and not is_wide(gap)


def _touches_two(gap: shapely.Polygon, parts: Sequence[BaseGeometry]) -> bool:
    return sum(part.distance(gap) < _TOUCHING_FT for part in parts) > 1
