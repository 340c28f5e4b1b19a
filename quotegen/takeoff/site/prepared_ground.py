"""Whether the ground that others filled and packed is large enough for the deck."""

from collections.abc import Iterator

from shapely import LineString, line_merge, union_all
from shapely.geometry.base import BaseGeometry

from quotegen.problem import Problem, Severity
from quotegen.quantity import rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.files.site_parts import PreparedGround
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import path_text
from quotegen.takeoff.records import Prepared, Takeoff
from quotegen.takeoff.shapes.faults import spot, sqft_text, tape_of
from quotegen.takeoff.shapes.overlay import inside_point, outside
from quotegen.takeoff.site.drawn_slabs import regions_of, rings_of
from quotegen.takeoff.slab.edges import runs_along
from quotegen.takeoff.slab.slab import slab_of

_PATH = ("prepared_ground",)


def prepared_ground(job: JobSpec, takeoff: Takeoff) -> tuple[Prepared | None, tuple[Problem, ...]]:
    """Compare the prepared ground with the deck and its margin.

    Returns:
        The ground and what is missing of it, or None where none is typed or a shape is faulty;
        and the problems: faults of the shapes, or a warning of how much is missing.
    """
    typed = job.typed.prepared_ground
    if typed is None:
        return None, ()
    ground, faults = slab_of(typed.add, typed.take_away)
    if ground is None:
        return None, tuple(fault.under(*_PATH).problem(job) for fault in faults)
    short = outside(wanted_ground(takeoff, typed.margin.ft), ground.region)
    prepared = Prepared(
        outline_ft=rings_of(ground.region.simplify(0.005)),
        short_ft=rings_of(short) if short is not None else (),
        short_sqft=rounded(short.area if short is not None else 0.0, 1),
    )
    return prepared, () if short is None else (_short(job, typed, short),)


def wanted_ground(takeoff: Takeoff, margin_ft: float) -> BaseGeometry:
    """Return the ground that the slabs need: under them, and a margin past each formed edge.

    At the house and at a pool no form stands, so no margin is needed.
    """
    return union_all([regions_of(takeoff), *_margins(takeoff, margin_ft)])


def _margins(takeoff: Takeoff, margin_ft: float) -> Iterator[BaseGeometry]:
    for measured in takeoff.placements:
        lines = [LineString(r.points_ft) for r in runs_along(measured.edges, EdgeKind.FORMED)]
        if lines:
            along = line_merge(union_all(lines))
            yield along.buffer(margin_ft, cap_style="flat", join_style="mitre")


def _short(job: JobSpec, typed: PreparedGround, short: BaseGeometry) -> Problem:
    return Problem(
        code="ground-too-small",
        source=job.source(*_PATH),
        path=path_text(_PATH),
        severity=Severity.WARNING,
        message=f"the prepared ground lacks {sqft_text(short.area)}, most of it near"
        f" {spot(inside_point(short))}: the deck needs ground"
        f" {tape_of(typed.margin.ft)} past its forms",
        hint="ask whoever makes the ground ready to widen it there, or make the deck smaller",
    )
