"""The takeoff repeated on the set forms: shapes measured again, or areas worked out on site."""

from dataclasses import replace
from decimal import Decimal
from types import MappingProxyType

from quotegen.problem import Problem
from quotegen.quantity import Length, rounded
from quotegen.reading.files.after_signing import Measured, MeasuredPlacement
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.job_units import area_m2, length_ft, length_m
from quotegen.takeoff.measure import MeasuredSlab, measure_each, put_together
from quotegen.takeoff.records import Takeoff
from quotegen.takeoff.slab.concrete_order import concrete_of
from quotegen.takeoff.slab.flight_volume import STEPS
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given


def remeasure(
    job: JobSpec, measured: Measured, rules: RuleBook
) -> tuple[Takeoff | None, tuple[Problem, ...]]:
    """Measure the job again as formed.

    Returns:
        The takeoff with the same placements as the quote, or None and every fault of the shapes.
    """
    again = replace(
        job, placements=tuple(_again(p, measured.placements[p.id]) for p in job.placements)
    )
    each, problems = measure_each(again, rules)
    if each is None:
        return None, problems
    as_formed = tuple(
        _as_typed(job, spec, shapes, measured.placements[spec.id], rules)
        for spec, shapes in zip(job.placements, each, strict=True)
    )
    return put_together(job, as_formed), problems


def _again(spec: PlacementSpec, measured: MeasuredPlacement) -> PlacementSpec:
    """Return the placement with the shapes measured in the forms, where any were."""
    if not measured.add:
        return spec
    return replace(
        spec,
        path=("measured", "placements", spec.id),
        add=measured.add,
        take_away=measured.take_away,
    )


def _as_typed(
    job: JobSpec,
    spec: PlacementSpec,
    shapes: MeasuredSlab,
    typed: MeasuredPlacement,
    rules: RuleBook,
) -> MeasuredSlab:
    """Return the placement with the area and the edges worked out on site, where they were.

    Its deep edges and steps stay as the shapes give them: only the flat slab follows the area.
    """
    if typed.area is None:
        return shapes
    placement, concrete = shapes
    # Rounded once, as the quote promises; the volume follows the rounded area.
    area = rounded(typed.area, 1)
    step = _typed_area(job, spec, area)
    poured = concrete_of(
        area=step,
        deep_edges=concrete.deep_edges,
        steps=next((step for step in concrete.beside if step.name == STEPS), None),
        thickness=spec.thickness,
        thickness_source=job.source(*spec.path, "thickness"),
        order=job.rate_book.order,
        rules=rules,
        on=job.quote_date,
    )
    edges = typed.edges
    return replace(
        placement,
        area_sqft=area,
        area_m2=area_m2(typed.area.numerator / typed.area.denominator),
        edges_ft=MappingProxyType(
            {edge: _feet(edges.get(edge), quoted) for edge, quoted in placement.edges_ft.items()}
        ),
        edges_m=MappingProxyType(
            {edge: _meters(edges.get(edge), quoted) for edge, quoted in placement.edges_m.items()}
        ),
        volume_cuyd=poured.volume_step.value,
        order_cuyd=poured.order_step.value,
        working=(step, poured.volume_step, poured.order_step),
    ), poured


def _feet(typed: Length | None, quoted: Decimal) -> Decimal:
    return quoted if typed is None else length_ft(typed.ft)


def _meters(typed: Length | None, quoted: Decimal) -> Decimal:
    return quoted if typed is None else length_m(typed.ft)


def _typed_area(job: JobSpec, spec: PlacementSpec, area_sqft: Decimal) -> Step:
    source = job.source("measured", "placements", spec.id, "area")
    return given(f"Area of {spec.name}, worked out on site", area_sqft, "sq ft", source)
