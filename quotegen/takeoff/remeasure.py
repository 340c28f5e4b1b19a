"""The takeoff repeated on the set forms: shapes measured again, or areas worked out on site."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType

from quotegen.problem import Problem
from quotegen.quantity import Length, decimal_of, rounded
from quotegen.reading.files.after_signing import Measured, MeasuredPlacement
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.job_units import area_m2, length_ft, length_m
from quotegen.takeoff.measure import measure
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.trade.concrete import net_volume_cuyd
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
    takeoff, problems = measure(again, rules)
    if takeoff is None:
        return None, problems
    placements = tuple(
        _as_typed(job, spec, shapes, measured.placements[spec.id], rules)
        for spec, shapes in zip(job.placements, takeoff.placements, strict=True)
    )
    return replace(takeoff, placements=placements), problems


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
    shapes: PlacementTakeoff,
    measured: MeasuredPlacement,
    rules: RuleBook,
) -> PlacementTakeoff:
    """Return the placement with the area and the edges worked out on site, where they were."""
    if measured.area is None:
        return shapes
    # Rounded once, as the quote promises; the volume follows the rounded area.
    area = rounded(measured.area, 1)
    volume = net_volume_cuyd(area, spec.thickness.inches, rules, job.quote_date)
    typed = measured.edges
    return replace(
        shapes,
        area_sqft=area,
        area_m2=area_m2(measured.area.numerator / measured.area.denominator),
        edges_ft=MappingProxyType(
            {edge: _feet(typed.get(edge), quoted) for edge, quoted in shapes.edges_ft.items()}
        ),
        edges_m=MappingProxyType(
            {edge: _meters(typed.get(edge), quoted) for edge, quoted in shapes.edges_m.items()}
        ),
        volume_cuyd=decimal_of(volume),
        working=(_typed_area(job, spec, measured.area),),
    )


def _feet(typed: Length | None, quoted: Decimal) -> Decimal:
    return quoted if typed is None else length_ft(typed.ft)


def _meters(typed: Length | None, quoted: Decimal) -> Decimal:
    return quoted if typed is None else length_m(typed.ft)


def _typed_area(job: JobSpec, spec: PlacementSpec, area: Fraction) -> Step:
    source = job.source("measured", "placements", spec.id, "area")
    return given(f"Area of {spec.name}, worked out on site", rounded(area, 1), "sq ft", source)
