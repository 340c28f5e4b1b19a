"""Whether water was thought of: a fall, a pool's edge that is level, and drains that are low."""

import math
from collections.abc import Iterator
from fractions import Fraction

import shapely
from shapely.geometry.base import BaseGeometry

from quotegen.problem import Problem
from quotegen.quantity import INCHES_PER_FOOT, rounded, tape
from quotegen.reading.files.job import Use
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.files.site_parts import Drain
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.reading.yaml.located import DocumentPath
from quotegen.takeoff.plan_geometry import EdgeRun, Point
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.takeoff.shapes.faults import spot, tape_of
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.site.drawn_slabs import region_of
from quotegen.takeoff.site.falls import BUILDING, Surface, drop_of
from quotegen.takeoff.slab.edges import runs_along
from quotegen.trade.rules import RuleBook

DRAIN = "drain"
"""The scope item that pays for a drain."""

_ASKED = {Use.POOL_DECK, Use.APRON}
"""What is never poured without a fall, whatever stands beside it."""
_BESIDE_FT = 1.0  # how far beside a drain its slab must not be lower
_LOWER_FT = 1 / 96  # an eighth of an inch: what a screed leaves
_ON_THE_EDGE_FT = 0.02
_ALONG = (0.1, 0.3, 0.5, 0.7, 0.9)


def water_problems(
    job: JobSpec, takeoff: Takeoff, surfaces: dict[str, Surface], rules: RuleBook
) -> Iterator[Problem]:
    """Yield an error of a pool's edge that is not level, and warnings of what was left out."""
    for spec, measured in zip(job.placements, takeoff.placements, strict=True):
        surface = surfaces.get(spec.id)
        if surface is None:
            yield from _no_fall(job, spec, measured)
        else:
            yield from _out_of_level(job, spec, measured, surface, rules)
            yield from _not_drained(job, spec, surface)
        for index, drain in enumerate(spec.typed.drains):
            yield from _drain(job, spec, (*spec.path, "drains", index), drain, measured, surface)


def _no_fall(job: JobSpec, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[Problem]:
    at_building = any(runs_along(measured.edges, edge) for edge in BUILDING)
    if spec.use not in _ASKED and not at_building:
        return
    what = f"a {spec.use.value}" if spec.use in _ASKED else "a slab at a building"
    yield job.places.warning(
        (*spec.path, "use"),
        "fall-missing",
        f"{spec.name} has no fall, and {what} is never poured level",
        "type `fall: 1/4 in per ft` with `falls_toward: top`, bottom, left or right, or with"
        " `falls_away_from: pool` or house; say where the water goes with `water_goes_to`",
    )


def _out_of_level(
    job: JobSpec,
    spec: PlacementSpec,
    measured: PlacementTakeoff,
    surface: Surface,
    rules: RuleBook,
) -> Iterator[Problem]:
    """Hold each pool against the level of its water, all its edges together."""
    most = rules.exact("pool_edge_level", job.quote_date)
    most_text = rules.text("pool_edge_level", job.quote_date)
    for pool in measured.pools_ft:
        runs = _edges_of(shapely.Polygon(pool).exterior, measured)
        drops = [drop_of(run, surface) for run in runs]
        if not drops:
            continue
        drop_ft = Fraction(max(d.highest_ft for d in drops) - min(d.lowest_ft for d in drops))
        if rounded(drop_ft * INCHES_PER_FOOT, 2) > most:
            yield job.places.fault(
                (*spec.path, "fall"),
                "pool-edge-not-level",
                f"the edge of the pool in {spec.name} would drop {tape(drop_ft)}; a pool's"
                f" edge is level to its water, within {most_text}",
                "say `falls_away_from: pool`; where the slab is also at the house, say"
                " `falls_away_from: [pool, house]` and draw the drain between them under `drains`",
            )


def _edges_of(pool: BaseGeometry, measured: PlacementTakeoff) -> tuple[EdgeRun, ...]:
    return tuple(
        run
        for run in runs_along(measured.edges, EdgeKind.POOL)
        if pool.distance(shapely.Point(run.points_ft[0])) < _ON_THE_EDGE_FT
    )


def _not_drained(job: JobSpec, spec: PlacementSpec, surface: Surface) -> Iterator[Problem]:
    if len(surface.edges) > 1 and not spec.typed.drains:
        yield job.places.warning(
            (*spec.path, "falls_away_from"),
            "low-line-not-drained",
            f"the water of {spec.name} meets on a low line between pool and house, and no drain"
            " stands there",
            "draw it: `drains: [{from: [4 ft, 5 ft], to: [20 ft, 5 ft]}]`, with `by` and a name"
            " where somebody else supplies it",
        )


def _drain(
    job: JobSpec,
    spec: PlacementSpec,
    path: DocumentPath,
    drain: Drain,
    measured: PlacementTakeoff,
    surface: Surface | None,
) -> Iterator[Problem]:
    """Check that a drain lies in its slab, that water runs to it, and that somebody supplies it."""
    ends = point_ft(drain.from_), point_ft(drain.to)
    region = region_of(measured)
    if not region.buffer(_ON_THE_EDGE_FT).covers(shapely.LineString(ends)):
        yield job.places.warning(
            path,
            "drain-off-slab",
            f"the drain from {spot(ends[0])} to {spot(ends[1])} leaves {spec.name}",
            "check both points; a drain along an edge is said with `drained_edges`",
        )
    elif surface is not None and (lower := _lower_beside(ends, region, surface)):
        at, by_ft = lower
        yield job.places.warning(
            path,
            "drain-not-low",
            f"the slab beside the drain near {spot(at)} lies {tape_of(by_ft)} lower than the"
            " drain, so its water runs past it",
            "move the drain to the low line, or turn the fall toward it",
        )
    if drain.by is None and not job.rate_book.pays_for(DRAIN, {*job.include, *spec.include}):
        yield job.places.warning(
            path,
            "drain-not-priced",
            "no line of the price pays for this drain, and it is not said who supplies it",
            "put the rate of the drain under `include` with its length, or add"
            " `by: your pool builder`",
        )


def _lower_beside(
    ends: tuple[Point, Point], region: BaseGeometry, surface: Surface
) -> tuple[Point, float] | None:
    """Return where the slab beside a drain is lower than the drain, and by how much."""
    (x0, y0), (x1, y1) = ends
    length = math.dist(*ends) or 1.0
    across = ((y1 - y0) / length * _BESIDE_FT, (x0 - x1) / length * _BESIDE_FT)
    found: list[tuple[float, Point]] = []
    for share in _ALONG:
        at = (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)
        for side in (1, -1):
            beside = (at[0] + side * across[0], at[1] + side * across[1])
            if region.covers(shapely.Point(beside)):
                found.append((surface.height_ft(at) - surface.height_ft(beside), at))
    by_ft, at = max(found, default=(0.0, ends[0]))
    return (at, by_ft) if by_ft > _LOWER_FT else None
