"""Whether shapes lie as they must: pieces side by side, cut-outs inside and apart."""

from collections.abc import Iterator
from itertools import combinations

from shapely.geometry.base import BaseGeometry

from quotegen.quantity import rounded
from quotegen.takeoff.shapes.faults import Fault, spot, tape_of
from quotegen.takeoff.shapes.overlay import farthest_out_ft, inside_point, outside, overlap
from quotegen.takeoff.shapes.placed_shape import Figure


def overlap_faults(figures: tuple[Figure, ...], group: str) -> Iterator[Fault]:
    """Yield the pairs of shapes of one group that lie over each other."""
    code = "pieces-overlap" if group == "add" else "cut-outs-overlap"
    for first, second in combinations(figures, 2):
        common = overlap(first.polygon, second.polygon)
        if common is not None:
            yield Fault(
                code=code,
                path=(group, second.index),
                message=f"{first.name} and {second.name} overlap by {sqft_text(common.area)}"
                f" near {spot(inside_point(common))}, which would count twice",
                hint="move or shorten one of them so that they share a side and no more",
            )


def cut_out_faults(whole: BaseGeometry, cut_outs: tuple[Figure, ...]) -> Iterator[Fault]:
    """Yield the cut-outs that reach beyond the slab that they are taken from."""
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


def nothing_left(area_sqft: float) -> Iterator[Fault]:
    """Yield a fault where the shapes leave no slab that has a figure to print."""
    if rounded(area_sqft, 1) <= 0:
        yield Fault(
            code="nothing-left",
            path=("add",),
            message="everything is taken away again:"
            f" {rounded(area_sqft, 1)} sq ft of slab are left",
            hint="check the sizes under `add` and `take_away`, and their units",
        )


def sqft_text(area_sqft: float) -> str:
    """Print an area of a fault to 0.1 sq ft, or that it is less."""
    shown = rounded(area_sqft, 1)
    return f"{shown:,} sq ft" if shown else "less than 0.1 sq ft"
