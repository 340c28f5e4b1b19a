"""Warnings about water, steps and heights by the trade's rules."""

from collections.abc import Iterator
from fractions import Fraction

import shapely
from shapely.geometry.base import BaseGeometry

from quotegen.problem import Problem
from quotegen.quantity import mixed_number, nearest, rounded, tape
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.plan_geometry import EdgeRun, Point
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.takeoff.shapes.faults import spot, tape_of
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.site.drawn_slabs import region_of
from quotegen.takeoff.site.falls import BUILDING, Surface, inches_per_foot, middles
from quotegen.takeoff.slab.edges import runs_along
from quotegen.trade.rules import RuleBook
from quotegen.trade.slopes import drains_from_house, drains_from_pool
from quotegen.trade.steps import riser_too_high, risers_even

_ON_THE_EDGE_FT = 0.05
_NEAR_EDGE_FT = 0.5
_UPHILL = -1e-6  # nearer to level is float noise


def fall_warnings(
    job: JobSpec,
    takeoff: Takeoff,
    surfaces: dict[str, Surface],
    rules: RuleBook,
) -> Iterator[Problem]:
    """Yield a warning for everything that a finisher would not build as typed."""
    house = tuple(
        run for p in takeoff.placements for edge in BUILDING for run in runs_along(p.edges, edge)
    )
    for spec, measured in zip(job.placements, takeoff.placements, strict=True):
        surface = surfaces.get(spec.id)
        if surface is not None:
            if EdgeKind.HOUSE not in spec.typed.drained_edges:
                yield from _at_house(job, spec, region_of(measured), house, surface, rules)
            if EdgeKind.POOL not in spec.typed.drained_edges:
                yield from _at_pool(job, spec, measured, surface, rules)
            yield from _over_ground(job, spec, measured, surface)
        yield from _steps(job, spec, rules)
        yield from _steps_place(job, spec, measured)


def _at_house(
    job: JobSpec,
    spec: PlacementSpec,
    region: BaseGeometry,
    house: tuple[EdgeRun, ...],
    surface: Surface,
    rules: RuleBook,
) -> Iterator[Problem]:
    """Check the fall away from the house, for every slab within the distance of its rule."""
    reach_ft = rules.number("slope_house_reach", job.quote_date)
    near = [run for run in house if shapely.LineString(run.points_ft).distance(region) < reach_ft]
    falls = [
        inches_per_foot(surface.fall_along(at, (-outward[0], -outward[1])))
        for run in near
        for at, outward in middles(run)
        for at in [_on_slab(region, at)]
    ]
    if not falls:
        return
    least, path = min(falls), (*spec.path, "fall")
    reference = rules.rule("slope_by_house").at(job.quote_date).reference
    if least < _UPHILL:
        yield job.places.warning(
            path,
            "falls-to-house",
            f"{spec.name} falls toward the house, {_slope(-least)}; water would stand at the wall",
            "turn the fall away from the house, or put a drain there and say"
            " `drained_edges: [house edge]`",
        )
    elif not drains_from_house(least, rules, job.quote_date):
        rule = rules.text("slope_by_house", job.quote_date)
        yield job.places.warning(
            path,
            "fall-at-house",
            f"{spec.name} falls {_slope(least)} away from the house; within"
            f" {rules.text('slope_house_reach', job.quote_date)} of it at least {rule} is asked"
            f" ({reference})",
            "1/4 in per ft is enough; local code decides",
        )


def _on_slab(region: BaseGeometry, at: Point) -> Point:
    """Return the point of a slab that is nearest to a point of the house."""
    line = region.boundary
    nearest = line.interpolate(line.project(shapely.Point(at)))
    return nearest.x, nearest.y


def _at_pool(
    job: JobSpec,
    spec: PlacementSpec,
    measured: PlacementTakeoff,
    surface: Surface,
    rules: RuleBook,
) -> Iterator[Problem]:
    """Check the fall away from the pool at each of its edges."""
    least: dict[str, Fraction] = {}
    for run in runs_along(measured.edges, EdgeKind.POOL):
        away = [
            inches_per_foot(surface.fall_along(at, (-outward[0], -outward[1])))
            for at, outward in middles(run)
        ]
        least[run.mark] = min(away)
    on, path = job.quote_date, (*spec.path, "fall")
    toward = [mark for mark, fall in least.items() if fall < _UPHILL]
    if toward:
        worst = -min(least.values())
        yield job.places.warning(
            path,
            "falls-to-pool",
            f"{spec.name} falls toward the pool at the {_edges(toward)}, up to {_slope(worst)};"
            " dirt and yard water would run into it",
            "say `falls_away_from: pool`, or put a drain there and say"
            " `drained_edges: [pool edge]`",
        )
    elif least and not drains_from_pool(min(least.values()), rules, on):
        low = [mark for mark, fall in least.items() if not drains_from_pool(fall, rules, on)]
        yield job.places.warning(
            path,
            "fall-at-pool",
            f"{spec.name} falls {_slope(min(least.values()))} away from the pool at the"
            f" {_edges(low)}; {rules.text('pool_deck_slope', on)} is asked"
            f" ({rules.rule('pool_deck_slope').at(on).reference})",
            "that rule is for public pools and good practice at home; local code decides",
        )


def _over_ground(
    job: JobSpec, spec: PlacementSpec, measured: PlacementTakeoff, surface: Surface
) -> Iterator[Problem]:
    """Find where the bottom of the slab, or of its deep edge, would show above the ground."""
    for index, typed in enumerate(spec.typed.ground):
        at = point_ft(typed.at)
        proud_ft = surface.height_ft(at) - typed.height.ft
        depth_ft = _edge_depth_ft(spec, measured, at)
        if rounded(proud_ft - depth_ft, 4) > 0:
            yield job.places.warning(
                (*spec.path, "ground", index),
                "deck-stands-proud",
                f"at {spot(at)} the finished top stands {tape_of(proud_ft)} over the ground and"
                f" the concrete is {tape_of(depth_ft)} deep there, so its base would show",
                "price a `turned_down_edge`, fill or a wall before you quote, or lower the deck",
            )


def _edge_depth_ft(spec: PlacementSpec, measured: PlacementTakeoff, at: Point) -> float:
    depths = [spec.thickness.ft]
    for deep in spec.deep_edges:
        runs = runs_along(measured.edges, deep.along)
        near = any(
            shapely.LineString(r.points_ft).distance(shapely.Point(at)) < _ON_THE_EDGE_FT
            for r in runs
        )
        if near:
            depths.append(deep.depth.ft)
    return max(depths)


def _steps(job: JobSpec, spec: PlacementSpec, rules: RuleBook) -> Iterator[Problem]:
    if spec.typed.steps is None:
        return
    on, path = job.quote_date, (*spec.path, "steps", "risers")
    risers = [riser.inches for riser in spec.typed.steps.risers]
    heights = [tape(riser.feet) for riser in spec.typed.steps.risers]
    if not risers_even(risers, rules, on):
        yield job.places.warning(
            path,
            "risers-differ",
            f"the steps are from {heights[risers.index(min(risers))]} to"
            f" {heights[risers.index(max(risers))]} high; in one flight they may differ by at most"
            f" {rules.text('riser_variation', on)}"
            f" ({rules.rule('riser_variation').at(on).reference})",
            "share the whole height out evenly; people trip on the odd one",
        )
    for index, riser in enumerate(risers):
        if riser_too_high(riser, rules, on):
            yield job.places.warning(
                (*path, index),
                "riser-too-high",
                f"this step is {heights[index]} high; at most"
                f" {rules.text('riser_height_max', on)} is allowed"
                f" ({rules.rule('riser_height_max').at(on).reference})",
                "add a step",
            )


def _steps_place(
    job: JobSpec, spec: PlacementSpec, measured: PlacementTakeoff
) -> Iterator[Problem]:
    flight = measured.flight
    if flight and flight.off_edge_ft > _NEAR_EDGE_FT:
        yield job.places.warning(
            (*spec.path, "steps", "at"),
            "steps-off-edge",
            f"the steps of {spec.name} are drawn at its nearest edge,"
            f" {tape_of(flight.off_edge_ft)} from the point that was typed",
            "type where the middle of the flight meets the edge, like `at: [12 ft, 0]`",
        )


def _edges(marks: list[str]) -> str:
    return f"edge{'s' if len(marks) > 1 else ''} {', '.join(marks)} of its plan"


def _slope(inches: Fraction) -> str:
    sixteenths = nearest(inches)
    return f"{mixed_number(sixteenths)} in per ft" if sixteenths else "not at all"
