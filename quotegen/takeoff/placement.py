"""One placement: a measured slab, rounded as printed, with its working."""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.job_units import JobUnits, area_m2, area_sqft, length_ft, length_m
from quotegen.takeoff.joints.plan import joint_plan
from quotegen.takeoff.plan_geometry import EdgeRun
from quotegen.takeoff.records import PlacementTakeoff
from quotegen.takeoff.shapes.area_range import area_range, area_sd_sqft
from quotegen.takeoff.shapes.path import drawn_ring
from quotegen.takeoff.slab.concrete_order import Concrete, concrete_of
from quotegen.takeoff.slab.deep_edges import deep_edge_step
from quotegen.takeoff.slab.edges import edge_lengths_ft, edge_runs, runs_along
from quotegen.takeoff.slab.flight_plan import flight_plan
from quotegen.takeoff.slab.flight_volume import flight_step
from quotegen.takeoff.slab.slab import Slab
from quotegen.takeoff.slab.spans import label_point, spans_of
from quotegen.takeoff.steps.shape_steps import shape_step
from quotegen.trade.rules import RuleBook
from quotegen.working import Step

_SUM_FORMULA = "all that is added, less all that is taken away, rounded once"


def placement_takeoff(
    job: JobSpec, spec: PlacementSpec, slab: Slab, rules: RuleBook
) -> tuple[PlacementTakeoff, Concrete]:
    """Return the quantities of one placement, and its concrete unrounded for the job's total."""
    units = JobUnits(units=job.units)
    sd_sqft = area_sd_sqft((*spec.add, *spec.take_away), rules, job.quote_date)
    areas = _area_steps(job, spec, slab, units)
    runs = edge_runs(slab.boundary)
    concrete = concrete_of(
        area=areas[-1],
        deep_edges=tuple(_deep_edges(job, spec, slab, runs, rules)),
        steps=flight_step(spec.typed.steps, job.source(*spec.path, "steps"), rules, job.quote_date),
        thickness=spec.thickness,
        thickness_source=job.source(*spec.path, "thickness"),
        order=job.rate_book.order,
        rules=rules,
        on=job.quote_date,
    )
    lengths = edge_lengths_ft(slab.boundary)
    joints = joint_plan(spec, slab, units, rules, job.quote_date)
    pools = [pool for placed in (*slab.added, *slab.cut_outs) for pool in placed.pools]
    outer = tuple(drawn_ring(ring) for ring in slab.boundary.outer)
    inner = tuple(drawn_ring(ring) for ring in slab.boundary.inner)
    drawn_pools = tuple(drawn_ring(loop) for loop in pools)
    label_ft, _ = label_point(outer, inner)
    takeoff = PlacementTakeoff(
        id=spec.id,
        area_sqft=area_sqft(slab.area_sqft),
        area_m2=area_m2(slab.area_sqft),
        edges_ft=MappingProxyType(
            {edge: length_ft(ft) for edge, ft in lengths.items()}
            | {EdgeKind.JOINT: joints.length_ft}
        ),
        edges_m=MappingProxyType(
            {edge: length_m(ft) for edge, ft in lengths.items()} | {EdgeKind.JOINT: joints.length_m}
        ),
        area_range=area_range(slab.area_sqft, sd_sqft, rules, job.quote_date),
        volume_cuyd=concrete.volume_step.value,
        order_cuyd=concrete.order_step.value,
        outer_ft=outer,
        inner_ft=inner,
        pools_ft=drawn_pools,
        edges=runs,
        spans=spans_of(outer, inner, drawn_pools),
        flight=flight_plan(spec.typed.steps, runs, outer),
        label_ft=label_ft,
        joints=joints,
        working=(
            *areas, *_edge_steps(lengths, runs, units), *joints.working,
            concrete.volume_step, concrete.order_step,
        ),
    )  # fmt: skip
    return takeoff, concrete


def _area_steps(job: JobSpec, spec: PlacementSpec, slab: Slab, units: JobUnits) -> tuple[Step, ...]:
    steps = tuple(
        shape_step(placed, group, units, job.source(*spec.path, group, placed.index))
        for group, shapes in (("add", slab.added), ("take_away", slab.cut_outs))
        for placed in shapes
    )
    in_units = Step(
        name=f"Area of {spec.name}",
        formula=_SUM_FORMULA,
        inputs=steps,
        value=area_m2(slab.area_sqft) if units.is_metric else area_sqft(slab.area_sqft),
        unit=units.area_unit,
    )
    if not units.is_metric:
        return (in_units,)
    in_sqft = Step(
        name=f"Area of {spec.name} in square feet",
        formula="the same area, before it was rounded, in square feet",
        inputs=(in_units,),
        value=area_sqft(slab.area_sqft),
        unit="sq ft",
    )
    return in_units, in_sqft


def _deep_edges(
    job: JobSpec, spec: PlacementSpec, slab: Slab, runs: tuple[EdgeRun, ...], rules: RuleBook
) -> Iterator[Step]:
    for key, deep in (
        ("thickened_edge", spec.typed.thickened_edge),
        ("turned_down_edge", spec.typed.turned_down_edge),
    ):
        step = deep and deep_edge_step(
            name=key.replace("_", " ").capitalize(),
            deep=deep,
            region=slab.region,
            runs=runs,
            thickness=spec.thickness.feet,
            source=job.source(*spec.path, key),
            rules=rules,
            on=job.quote_date,
        )
        if step:
            yield step


def _edge_steps(
    lengths: Mapping[EdgeKind, float], runs: tuple[EdgeRun, ...], units: JobUnits
) -> Iterator[Step]:
    for edge, feet in lengths.items():
        if feet:
            yield units.edge(edge, feet, runs_along(runs, edge))
