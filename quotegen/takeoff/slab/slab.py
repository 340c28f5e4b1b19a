"""Shapes added and taken away to form one slab: checked, with its exact area and boundary."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from shapely.geometry.base import BaseGeometry

from quotegen.quantity import LEAST_AREA_SQFT, rounded
from quotegen.reading.files.shapes import Shape
from quotegen.takeoff.shapes.faults import Fault, spot, sqft_text, tape_of
from quotegen.takeoff.shapes.overlay import (
    farthest_out_ft,
    inside_point,
    outside,
    overlap,
    polygons,
    put_together,
    taken_from,
)
from quotegen.takeoff.shapes.placed_shape import PlacedShape, place_shape
from quotegen.takeoff.slab.trace import Boundary, boundary_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Slab:
    """One slab, measured but not yet rounded.

    Attributes:
        added: the shapes that make it up.
        cut_outs: the shapes taken away from it.
        area_sqft: the exact areas added less those taken away. That is the area of the slab,
            because shapes that overlap and cut-outs that stick out are faults.
        region: the slab as a polygon with many short sides.
        boundary: its exact rings.
    """

    added: tuple[PlacedShape, ...]
    cut_outs: tuple[PlacedShape, ...]
    area_sqft: float
    region: BaseGeometry
    boundary: Boundary


def slab_of(
    add: tuple[Shape, ...], take_away: tuple[Shape, ...] = ()
) -> tuple[Slab | None, tuple[Fault, ...]]:
    """Form a slab from the shapes of the job file.

    Returns:
        The slab, or None and every fault that can be found while the others stand.
    """
    added, add_faults = _place_all(add, "add")
    cut_outs, cut_faults = _place_all(take_away, "take_away")
    faults = (*add_faults, *_overlap_faults(added, "add"), *cut_faults)
    faults = (*faults, *_overlap_faults(cut_outs, "take_away"))
    if not added:
        return None, faults
    whole = put_together([placed.polygon for placed in added])
    if not add_faults:
        faults = (*faults, *_cut_out_faults(whole, cut_outs))
    area_sqft = math.fsum(_signed_areas(added, cut_outs))
    if not faults:
        faults = tuple(_nothing_left(area_sqft))
    if faults:
        return None, faults
    region = taken_from(whole, [placed.polygon for placed in cut_outs])
    boundary = boundary_of(
        polygons(region),
        [loop for placed in added for loop in placed.loops],
        [loop for placed in cut_outs for loop in placed.with_slab_outside()],
    )
    return Slab(
        added=added, cut_outs=cut_outs, area_sqft=area_sqft, region=region, boundary=boundary
    ), ()


def _place_all(
    shapes: tuple[Shape, ...], group: str
) -> tuple[tuple[PlacedShape, ...], tuple[Fault, ...]]:
    placed: list[PlacedShape] = []
    faults: list[Fault] = []
    for index, shape in enumerate(shapes):
        found = place_shape(shape, group, index)
        if isinstance(found, PlacedShape):
            placed.append(found)
        else:
            faults.extend(found)
    return tuple(placed), tuple(faults)


def _signed_areas(
    added: tuple[PlacedShape, ...], cut_outs: tuple[PlacedShape, ...]
) -> Iterator[float]:
    yield from (placed.area_sqft for placed in added)
    yield from (-placed.area_sqft for placed in cut_outs)


def _overlap_faults(placed: tuple[PlacedShape, ...], group: str) -> Iterator[Fault]:
    """Yield the pairs of shapes in one group that overlap."""
    code = "pieces-overlap" if group == "add" else "cut-outs-overlap"
    for first, second in combinations(placed, 2):
        common = overlap(first.polygon, second.polygon)
        if common is not None:
            yield Fault(
                code=code,
                path=(group, second.index),
                message=f"{first.name} and {second.name} overlap by {sqft_text(common.area)}"
                f" near {spot(inside_point(common))}, which would count twice",
                hint="move or shorten one of them so that they share a side and no more",
            )


def _cut_out_faults(whole: BaseGeometry, cut_outs: tuple[PlacedShape, ...]) -> Iterator[Fault]:
    """Yield the cut-outs that reach beyond the slab."""
    for cut_out in cut_outs:
        beyond = outside(cut_out.polygon, whole)
        if beyond is not None:
            reach = tape_of(farthest_out_ft(beyond, whole))
            yield Fault(
                code="cut-out-outside",
                path=("take_away", cut_out.index),
                message=f"{cut_out.name} sticks out of the slab by {sqft_text(beyond.area)}"
                f" near {spot(inside_point(beyond))}, up to {reach} past its edge",
                hint="check `at` and the size; take away only what the added shapes cover",
            )


def _nothing_left(area_sqft: float) -> Iterator[Fault]:
    """Yield a fault where too little slab is left to have an area when printed."""
    if area_sqft < LEAST_AREA_SQFT:
        left = rounded(area_sqft, 1)
        yield Fault(
            code="nothing-left",
            path=("add",),
            message=f"everything is taken away again: {left} sq ft of slab are left",
            hint="check the sizes under `add` and `take_away`, and their units",
        )
