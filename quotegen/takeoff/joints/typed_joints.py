"""Joints that the owner types in the job: their lines, and what is wrong with them."""

import math
from collections.abc import Iterator

from shapely import LineString, union_all

from quotegen.quantity import tape
from quotegen.reading.files.job import JointLine
from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.records import BrokenRule, JointPlan, Panel, PanelRule
from quotegen.takeoff.shapes.faults import Fault, spot, tape_of
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.slab.slab import Slab

_TAPE_FT = 0.25  # a line that ends this near to an edge or a joint is meant to end there
_SHORTEST_FT = 0.1
_HAIR_FT = 0.01


def owners_lines(typed: tuple[JointLine, ...]) -> tuple[Segment, ...]:
    """Return the owner's lines, each 3 in longer at both ends so that it meets what it nears."""
    lines = (tuple(point_ft(end) for end in (line.from_, line.to)) for line in typed)
    return tuple(_extended((start, end)) for start, end in lines if math.dist(start, end) > 0)


def line_faults(typed: tuple[JointLine, ...], slab: Slab) -> Iterator[Fault]:
    """Yield a fault for each line that does not cross the slab at all."""
    for index, line in enumerate(typed):
        start, end = point_ft(line.from_), point_ft(line.to)
        if LineString((start, end)).intersection(slab.region).length < _SHORTEST_FT:
            yield Fault(
                code="joint-off-slab",
                path=("joints", index),
                message=f"the joint from {spot(start)} to {spot(end)} does not cross the slab",
                hint="its two points are feet on the plan, as in the shapes above",
            )


def line_warnings(typed: tuple[JointLine, ...], slab: Slab, plan: JointPlan) -> Iterator[Fault]:
    """Yield the lines that stop inside a panel, and the panels that break a rule."""
    cuts = union_all([LineString((joint.start_ft, joint.end_ft)) for joint in plan.joints])
    for index, line in enumerate(typed):
        start, end = point_ft(line.from_), point_ft(line.to)
        loose = LineString((start, end)).intersection(slab.region).difference(cuts.buffer(_HAIR_FT))
        if loose.length > _TAPE_FT:
            yield Fault(
                code="joint-stops-short",
                path=("joints", index),
                message=f"the joint from {spot(start)} to {spot(end)} stops inside a panel:"
                f" {tape_of(loose.length)} of it divides nothing",
                hint="carry it on to an edge or to another joint; a crack will",
            )
    for panel in plan.exceptions:
        yield Fault(
            code="joint-panel",
            path=("joints",),
            message=f"panel {panel.number} near {spot(panel.label_ft)}: "
            + "; ".join(_in_words(one, panel) for one in panel.broken),
            hint="add or move a line, or leave `joints` out and they are laid out for you",
        )


def _in_words(broken: BrokenRule, panel: Panel) -> str:
    if broken.rule is PanelRule.SPACING:
        return f"it is {tape(panel.long_ft, parts=4)} long, at most {tape(broken.allowed)}"
    if broken.rule is PanelRule.RATIO:
        return f"its sides are {broken.found} to 1, at most {broken.allowed.normalize()} to 1"
    if broken.rule is PanelRule.SLIVER:
        return f"it is {tape(broken.found, parts=4)} wide, at least {tape(broken.allowed)}"
    if broken.rule is PanelRule.CORNER:
        return f"it has a corner of {broken.found} degrees, at least {broken.allowed}"
    if broken.rule is PanelRule.INSIDE_CORNER:
        return f"an inside corner of {broken.found} degrees has no joint"
    return f"it follows a curve by {broken.found} degrees, at most {broken.allowed}"


def _extended(line: Segment) -> Segment:
    (x0, y0), (x1, y1) = line
    long = math.dist(*line)
    dx, dy = (x1 - x0) / long * _TAPE_FT, (y1 - y0) / long * _TAPE_FT
    return (x0 - dx, y0 - dy), (x1 + dx, y1 + dy)
