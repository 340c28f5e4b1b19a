"""Shapes added and taken away to one slab: its exact area and its boundary."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from shapely.geometry.base import BaseGeometry

from quotegen.reading.files.shapes import Shape
from quotegen.takeoff.shapes.faults import Fault
from quotegen.takeoff.shapes.overlay import polygons, put_together, taken_from
from quotegen.takeoff.shapes.placed_shape import Figure, figure_of
from quotegen.takeoff.slab.checks import cut_out_faults, nothing_left, overlap_faults
from quotegen.takeoff.slab.trace import Boundary, boundary_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Slab:
    """One slab, measured but not yet rounded.

    Attributes:
        added: the figures that make it up.
        cut_outs: the figures that were taken away.
        area_sqft: exact sum of the added less the exact sum of the cut-outs, which holds because
            overlaps and cut-outs that stick out are faults.
        region: the slab as a polygon with many short sides.
        boundary: its exact rings.
    """

    added: tuple[Figure, ...]
    cut_outs: tuple[Figure, ...]
    area_sqft: float
    region: BaseGeometry
    boundary: Boundary


def slab_of(
    add: tuple[Shape, ...], take_away: tuple[Shape, ...] = ()
) -> tuple[Slab | None, tuple[Fault, ...]]:
    """Put shapes together to one slab.

    Returns:
        The slab, or None and every fault that can be told while another one stands.
    """
    added, add_faults = _figures(add, "add")
    cut_outs, cut_faults = _figures(take_away, "take_away")
    faults = (*add_faults, *overlap_faults(added, "add"), *cut_faults)
    faults = (*faults, *overlap_faults(cut_outs, "take_away"))
    if not added:
        return None, faults
    whole = put_together([figure.polygon for figure in added])
    if not add_faults:
        faults = (*faults, *cut_out_faults(whole, cut_outs))
    area_sqft = math.fsum(_signed_areas(added, cut_outs))
    if not faults:
        faults = tuple(nothing_left(area_sqft))
    if faults:
        return None, faults
    region = taken_from(whole, [figure.polygon for figure in cut_outs])
    boundary = boundary_of(
        polygons(region),
        [loop for figure in added for loop in figure.loops],
        [loop for figure in cut_outs for loop in figure.with_slab_outside()],
    )
    return Slab(
        added=added, cut_outs=cut_outs, area_sqft=area_sqft, region=region, boundary=boundary
    ), ()


def _figures(shapes: tuple[Shape, ...], group: str) -> tuple[tuple[Figure, ...], tuple[Fault, ...]]:
    figures: list[Figure] = []
    faults: list[Fault] = []
    for index, shape in enumerate(shapes):
        figure = figure_of(shape, group, index)
        if isinstance(figure, Figure):
            figures.append(figure)
        else:
            faults.extend(figure)
    return tuple(figures), tuple(faults)


def _signed_areas(added: tuple[Figure, ...], cut_outs: tuple[Figure, ...]) -> Iterator[float]:
    yield from (figure.area_sqft for figure in added)
    yield from (-figure.area_sqft for figure in cut_outs)
