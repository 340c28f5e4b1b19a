"""What the takeoff adds once the slabs are measured: heights, ground, reach and order list."""

from dataclasses import replace

from quotegen.problem import Problem, has_error
from quotegen.reading.records import JobSpec
from quotegen.takeoff.materials.order_list import order_list
from quotegen.takeoff.records import Takeoff
from quotegen.takeoff.site.fall_checks import fall_warnings
from quotegen.takeoff.site.falls import falls_of, surface_of
from quotegen.takeoff.site.prepared_ground import prepared_ground
from quotegen.takeoff.site.reach import reach_of
from quotegen.takeoff.site.size_checks import size_warnings
from quotegen.takeoff.site.water_checks import water_problems
from quotegen.trade.rules import RuleBook


def on_site(job: JobSpec, takeoff: Takeoff, rules: RuleBook) -> tuple[Takeoff, tuple[Problem, ...]]:
    """Add heights, prepared ground, reach and the order list to a takeoff.

    Returns:
        The takeoff with them, and the problems: warnings, and an error for each faulty shape of
        the site, which leaves the takeoff as it was.
    """
    pairs = tuple(zip(job.placements, takeoff.placements, strict=True))
    surfaces = {
        spec.id: surface
        for spec, measured in pairs
        if (surface := surface_of(spec, measured)) is not None
    }
    prepared, ground_problems = prepared_ground(job, takeoff)
    reach, reach_problems = reach_of(job, takeoff)
    water = tuple(water_problems(job, takeoff, surfaces, rules))
    problems = (
        *size_warnings(job, takeoff, rules),
        *water,
        *(() if has_error(water) else fall_warnings(job, takeoff, surfaces, rules)),
        *ground_problems,
        *reach_problems,
    )
    if has_error(problems):
        return takeoff, problems
    return replace(
        takeoff,
        materials=order_list(job, takeoff, rules),
        reach=reach,
        falls=tuple(
            falls_of(spec, measured, surfaces[spec.id])
            for spec, measured in pairs
            if spec.id in surfaces
        ),
        prepared=prepared,
    ), problems
