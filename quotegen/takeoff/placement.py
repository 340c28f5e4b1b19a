"""One placement: a measured slab, rounded as it is printed, with its working."""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from quotegen.quantity import rounded
from quotegen.spec.records import JobSpec, PlacementSpec
from quotegen.takeoff.edges import edge_lengths_ft, edge_runs
from quotegen.takeoff.order import Concrete, concrete_of
from quotegen.takeoff.path import drawn_ring
from quotegen.takeoff.records import Against, EdgeOf, EdgeRun, PlacementTakeoff
from quotegen.takeoff.shape_steps import shape_step
from quotegen.takeoff.shown import FT_PLACES, SQFT_PLACES, Shown, area_m2, length_m
from quotegen.takeoff.slab import Slab
from quotegen.trade.rules import RuleBook
from quotegen.working import Step

_SUM_FORMULA = "all that is added, less all that is taken away, rounded once"


def placement_takeoff(
    job: JobSpec, spec: PlacementSpec, slab: Slab, rules: RuleBook
) -> tuple[PlacementTakeoff, Concrete]:
    """Return the quantities of one placement, and its concrete unrounded for the sum of the job."""
    shown = Shown(units=job.units)
    area_sqft = rounded(slab.area_sqft, SQFT_PLACES)
    areas = _area_steps(job, spec, slab, shown)
    concrete = concrete_of(
        area=areas[0],
        area_sqft=area_sqft,
        thickness=spec.thickness,
        thickness_source=job.source(*spec.path, "thickness"),
        order=job.rate_book.order,
        rules=rules,
        on=job.date,
    )
    runs = edge_runs(slab.boundary)
    lengths_ft = edge_lengths_ft(slab.boundary)
    pools = [figure.loops[0] for figure in slab.cut_outs if figure.is_pool]
    takeoff = PlacementTakeoff(
        id=spec.id,
        area_sqft=area_sqft,
        area_m2=area_m2(slab.area_sqft),
        edges_ft=MappingProxyType({edge: rounded(ft, FT_PLACES) for edge, ft in lengths_ft.items()}),
        edges_m=MappingProxyType({edge: length_m(ft) for edge, ft in lengths_ft.items()}),
        volume_cuyd=concrete.volume_step.value,
        order_cuyd=concrete.order_step.value,
        outer_ft=tuple(drawn_ring(ring) for ring in slab.boundary.outer),
        inner_ft=tuple(drawn_ring(ring) for ring in slab.boundary.inner),
        pools_ft=tuple(drawn_ring(loop) for loop in pools),
        edges=runs,
        working=(
            *areas, *_edge_steps(lengths_ft, runs, shown),
            concrete.volume_step, concrete.order_step,
        ),
    )  # fmt: skip
    return takeoff, concrete


def _area_steps(job: JobSpec, spec: PlacementSpec, slab: Slab, shown: Shown) -> tuple[Step, ...]:
    shapes = tuple(
        shape_step(figure, group, shown, job.source(*spec.path, group, figure.index))
        for group, figures in (("add", slab.added), ("take_away", slab.cut_outs))
        for figure in figures
    )
    in_sqft = Step(
        name=f"Area of {spec.name}",
        formula=_SUM_FORMULA,
        inputs=() if shown.is_metric else shapes,
        value=rounded(slab.area_sqft, SQFT_PLACES),
        unit="sq ft",
    )
    if not shown.is_metric:
        return (in_sqft,)
    in_m2 = Step(
        name=f"Area of {spec.name}",
        formula=_SUM_FORMULA,
        inputs=shapes,
        value=area_m2(slab.area_sqft),
        unit="m2",
    )
    return in_sqft, in_m2


def _edge_steps(
    lengths_ft: Mapping[EdgeOf, float], runs: tuple[EdgeRun, ...], shown: Shown
) -> Iterator[Step]:
    for edge, length_ft in lengths_ft.items():
        if length_ft:
            yield shown.edge(edge, length_ft, tuple(run for run in runs if _counts(run, edge)))


def _counts(run: EdgeRun, edge: EdgeOf) -> bool:
    return {
        EdgeOf.OUTER: not run.inner,
        EdgeOf.INNER: run.inner,
        EdgeOf.FORMED: not run.inner and run.against not in {Against.HOUSE, Against.POOL},
        EdgeOf.HOUSE: run.against is Against.HOUSE,
        EdgeOf.POOL: run.against is Against.POOL,
        EdgeOf.STRAIGHT: not run.is_curved,
        EdgeOf.CURVED: run.is_curved,
    }[edge]
