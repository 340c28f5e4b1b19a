"""Stage 2, measure: from the shapes of a job to areas, edges, volumes and concrete to order."""

from collections.abc import Iterator
from itertools import combinations
from typing import TypeAlias

from quotegen.problem import Problem, Severity
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.joints.faults import line_faults, line_warnings, too_many_panels
from quotegen.takeoff.placement import placement_takeoff
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.takeoff.shapes.close_points import close_points
from quotegen.takeoff.shapes.faults import Fault, spot, sqft_text
from quotegen.takeoff.shapes.overlay import inside_point, overlap
from quotegen.takeoff.slab.concrete_order import Concrete, job_order_steps
from quotegen.takeoff.slab.neighbors import with_neighbors
from quotegen.takeoff.slab.slab import Slab, slab_of
from quotegen.trade.rules import RuleBook

MeasuredSlab: TypeAlias = tuple[PlacementTakeoff, Concrete]
"""One placement, and its concrete unrounded for the total of the job."""


def measure(job: JobSpec, rules: RuleBook) -> tuple[Takeoff | None, tuple[Problem, ...]]:
    """Measure every placement of a job.

    Returns:
        The takeoff and its warnings, or None and every fault, in the order of the placements.
    """
    measured, problems = measure_each(job, rules)
    return (None if measured is None else put_together(job, measured)), problems


def measure_each(
    job: JobSpec, rules: RuleBook
) -> tuple[tuple[MeasuredSlab, ...] | None, tuple[Problem, ...]]:
    """Measure each placement by itself; the same warnings and faults as of the whole job."""
    slabs: list[tuple[PlacementSpec, Slab]] = []
    problems: list[Problem] = []
    for spec in job.placements:
        close = close_points(spec, rules, job.quote_date)
        slab, faults = (None, close) if close else slab_of(spec.add, spec.take_away)
        problems += [fault.under(*spec.path).problem(job) for fault in faults]
        if slab is not None:
            slabs.append((spec, slab))
            lines = line_faults(spec.typed.joints or (), slab)
            problems += [fault.under(*spec.path).problem(job) for fault in lines]
    problems += [fault.problem(job) for fault in too_many_panels(slabs, rules, job.quote_date)]
    problems += [fault.problem(job) for fault in _placements_overlap(slabs)]
    if problems:
        return None, tuple(problems)
    slabs = with_neighbors(slabs)
    measured = tuple(placement_takeoff(job, spec, slab, rules) for spec, slab in slabs)
    warnings = _joint_warnings(job, slabs, tuple(placement for placement, _ in measured))
    return measured, tuple(warnings)


def put_together(job: JobSpec, measured: tuple[MeasuredSlab, ...]) -> Takeoff:
    """Return the takeoff of a job: its placements, and the concrete of all, rounded up once."""
    volume, order = job_order_steps([concrete for _, concrete in measured], job.rate_book.order)
    return Takeoff(
        placements=tuple(placement for placement, _ in measured),
        volume_cuyd=volume.value,
        order_cuyd=order.value,
        working=(volume, order),
    )


def _joint_warnings(
    job: JobSpec, slabs: list[tuple[PlacementSpec, Slab]], measured: tuple[PlacementTakeoff, ...]
) -> Iterator[Problem]:
    """Yield a warning wherever joints that the owner typed break a rule."""
    for (spec, slab), placement in zip(slabs, measured, strict=True):
        if spec.typed.joints is not None:
            for fault in line_warnings(spec.typed.joints, slab, placement.joints):
                yield fault.under(*spec.path).problem(job, Severity.WARNING)


def _placements_overlap(slabs: list[tuple[PlacementSpec, Slab]]) -> Iterator[Fault]:
    for (first, first_slab), (second, second_slab) in combinations(slabs, 2):
        common = overlap(first_slab.region, second_slab.region)
        if common is not None:
            yield Fault(
                code="placements-overlap",
                path=second.path,
                message=f"the placements `{first.id}` and `{second.id}` overlap by"
                f" {sqft_text(common.area)} near {spot(inside_point(common))}",
                hint="all placements lie on one plan: move one with `at`, or take its area away"
                " from the other",
            )
