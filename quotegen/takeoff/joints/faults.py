"""What is wrong with joints: with the owner's own lines, or with a slab too large to lay out."""

from collections.abc import Iterable, Iterator
from datetime import date

from shapely import LineString, union_all

from quotegen.quantity import decimal_of, tape
from quotegen.reading.files.job import JointLine
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.joints.judge import limits_of
from quotegen.takeoff.joints.plan import TAPE_FT
from quotegen.takeoff.joints.records import BrokenRule, JointPlan, Panel, PanelRule
from quotegen.takeoff.shapes.faults import Fault, spot, sqft_text, tape_of
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.slab.slab import Slab
from quotegen.trade.rules import RuleBook

_SHORTEST_FT = 0.1
_HAIR_FT = 0.01
MOST_PANELS, MOST_IN_A_ROW = 3_000, 500
"""More would take minutes to lay out: feet were typed for inches, or next to no thickness."""


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
        if loose.length > TAPE_FT:
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


def too_many_panels(
    slabs: Iterable[tuple[PlacementSpec, Slab]], rules: RuleBook, on: date
) -> tuple[Fault, ...]:
    """Return a fault at the placement with which there are more panels than we lay out.

    They are counted as the largest that fit: as long as the rules let a slab of its mean width be.
    """
    in_all, in_a_row = 0.0, 0.0
    for spec, slab in slabs:
        limits, perimeter_ft = limits_of(spec.thickness, rules, on), slab.region.length
        mean_ft = max(limits.least_ft, 2 * slab.area_sqft / perimeter_ft)
        wide_ft = min(limits.most_ft, mean_ft)
        long_ft = min(limits.most_ft, limits.times * wide_ft)
        in_all += slab.area_sqft / (wide_ft * long_ft)
        in_a_row += perimeter_ft / 2 / long_ft
        if in_all > MOST_PANELS or in_a_row > MOST_IN_A_ROW:
            inches = f"{decimal_of(spec.thickness.inches):.4g}"
            said = (
                f"`{spec.id}` measures {sqft_text(slab.area_sqft)} and is {inches} in thick; at"
                f" most {MOST_PANELS:,} panels between joints are laid out in a job, and"
                f" {MOST_IN_A_ROW} in a row"
            )
            hint = "check feet and inches of its sides, and its thickness; or make two jobs of it"
            fault = Fault(code="slab-too-large", path=("add",), message=said, hint=hint)
            return (fault.under(*spec.path),)
    return ()
