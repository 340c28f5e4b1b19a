"""Edges deeper than the slab: the strip along them and the concrete below it."""

from collections.abc import Iterator, Sequence
from datetime import date
from fractions import Fraction

from shapely import LinearRing, LineString, line_merge, union_all
from shapely.geometry.base import BaseGeometry

from quotegen.problem import Source
from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.site_parts import DeepEdge
from quotegen.takeoff.plan_geometry import EdgeRun
from quotegen.takeoff.slab.edges import runs_along
from quotegen.trade.concrete import net_volume_cuyd
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

_STRIP_PLACES = 2
_GIVEN_PLACES = 4
_VOLUME_RULE = "sqft_inches_per_cubic_yard"


def strip_sqft(region: BaseGeometry, runs: Sequence[EdgeRun], width_ft: float) -> float:
    """Return the area of the slab within a width of some edges; a corner counts once."""
    return strip(region, runs, width_ft).area if width_ft else 0.0


def strip(region: BaseGeometry, runs: Sequence[EdgeRun], width_ft: float) -> BaseGeometry:
    """Return the part of the slab within a width of some edges, square at their ends."""
    merged = line_merge(union_all([LineString(run.points_ft) for run in runs]))
    lines = [line for line in getattr(merged, "geoms", (merged,)) if isinstance(line, LineString)]
    bands = [_band(line, width_ft) for line in lines]
    return region.intersection(union_all(bands))


def _band(line: LineString, width_ft: float) -> BaseGeometry:
    whole = LinearRing(line.coords) if line.is_ring else line
    return whole.buffer(width_ft, cap_style="flat", join_style="mitre")


def deep_edge_step(
    *,
    name: str,
    deep: DeepEdge,
    region: BaseGeometry,
    runs: tuple[EdgeRun, ...],
    thickness: Fraction,
    source: Source,
    rules: RuleBook,
    on: date,
) -> Step | None:
    """Return the concrete below the slab along a deep edge; None where there is none.

    The strip is measured on the plan, so that no corner counts twice. With a taper it is the
    average of the strip at the bottom and the strip at the top.

    Args:
        name: what messages and the working call the edge.
        deep: its sizes.
        region: the slab.
        runs: every run of edge of the slab.
        thickness: of the slab, in feet.
        source: where the job file gives the deep edge.
        rules: of the trade.
        on: the quote date.
    """
    along = runs_along(runs, deep.along)
    if not along or deep.depth.feet <= thickness:
        return None
    bottom = strip_sqft(region, along, deep.width.ft)
    top = bottom
    if deep.taper:
        top = strip_sqft(region, along, deep.width.ft + deep.taper.ft)
    area = Step(
        name=f"Strip along the {deep.along.value}",
        formula="area of the slab within the width of the edge, corners once; with a taper, the"
        " average of the strip at the bottom and at the top",
        inputs=tuple(_sizes(deep, along)),
        value=rounded((bottom + top) / 2, _STRIP_PLACES),
        unit="sq ft",
    )
    deeper_in = (deep.depth.feet - thickness) * 12
    volume = net_volume_cuyd(area.value, deeper_in, rules, on)
    return Step(
        name=name,
        formula="area of the strip x how much deeper it is than the slab, in inches, over the"
        " square feet that one cubic yard covers one inch thick",
        inputs=(
            area,
            given("Deeper than the slab", rounded(deeper_in, _GIVEN_PLACES), "in", source),
        ),
        value=decimal_of(volume),
        unit="cu yd",
        rules=(_VOLUME_RULE,),
    )


def _sizes(deep: DeepEdge, along: Sequence[EdgeRun]) -> Iterator[Step]:
    yield given("Length of the edge", sum((r.length_ft for r in along), rounded(0.0, 2)), "ft")
    yield given("Width", rounded(deep.width.inches, _GIVEN_PLACES), "in")
    if deep.taper:
        yield given("Taper", rounded(deep.taper.inches, _GIVEN_PLACES), "in")
