"""The joint plan of a placement: our layout or the owner's lines, and every panel judged."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from shapely import LineString, Polygon, maximum_inscribed_circle

from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.job import JointLine
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.job_units import JobUnits, length_ft, length_m
from quotegen.takeoff.joints.cutting import Segment, cut_along, joints_of, parts_of
from quotegen.takeoff.joints.judge import Breach, Limits, breaches, limits_of, sides_ft
from quotegen.takeoff.joints.lay_out import lay_out
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.joints.records import BrokenRule, Joint, JointPlan, Panel, PanelRule
from quotegen.takeoff.shapes.overlay import polygons
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.slab.edges import edge_lengths_ft
from quotegen.takeoff.slab.slab import Slab
from quotegen.trade.joints import governing_spacing, saw_depth_in
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

_SIZE_PLACES, _AREA_PLACES, _DEGREE_PLACES, _EXACT_PLACES = 2, 1, 0, 4
TAPE_FT = 0.25  # a line that ends this near to an edge or a joint is meant to end there
_LABEL_FT = 0.5
_DRAWN_FT = 0.02
_ROW_FT = 2.0  # panels whose middles lie within this of each other are numbered as one row
_DEPTH_RULES = ("joint_depth_share", "joint_depth_min")
_BY_ANGLE = frozenset({PanelRule.CORNER, PanelRule.INSIDE_CORNER, PanelRule.WRAP})
_WAIVED_AT_POSTS = frozenset({PanelRule.INSIDE_CORNER, PanelRule.WRAP})


@dataclass(frozen=True, slots=True, kw_only=True)
class _Region:
    """One separate part of a slab, with its small openings (posts) filled and listed."""

    whole: Polygon
    posts: tuple[Polygon, ...]


def joint_plan(
    spec: PlacementSpec, slab: Slab, units: JobUnits, rules: RuleBook, on: date
) -> JointPlan:
    """Return the joint plan of a placement.

    Args:
        spec: the placement, with the owner's own joints if it has any.
        slab: as measured.
        units: of the job.
        rules: of the trade.
        on: the quote date.
    """
    limits = limits_of(spec.thickness, rules, on)
    parts: list[Part] = []
    posts: list[Polygon] = []
    for one in _regions(slab, limits):
        parts += _divided(one.whole, _lines(spec, slab, one, limits))
        posts += one.posts
    joints = _less_posts(joints_of(parts), posts)
    feet = math.fsum(math.dist(*joint) for joint in joints)
    spacing_ft, spacing_rules = governing_spacing(spec.thickness.inches, rules, on)
    return JointPlan(
        is_owners=spec.typed.joints is not None,
        spacing_ft=decimal_of(spacing_ft),
        spacing_rules=spacing_rules,
        saw_depth_in=saw_depth_in(spec.thickness.inches, rules, on),
        joints=tuple(_joint(joint) for joint in joints),
        panels=tuple(
            _panel(number, part, tuple(posts), limits) for number, part in enumerate(parts, 1)
        ),
        length_ft=length_ft(feet),
        length_m=length_m(feet),
        isolation_ft=length_ft(edge_lengths_ft(slab.boundary)[EdgeKind.ISOLATED]),
        working=tuple(_working(spec, joints, units, (spacing_ft, spacing_rules), rules, on)),
    )


def _regions(slab: Slab, limits: Limits) -> Iterator[_Region]:
    for whole in polygons(slab.region):
        holes = [Polygon(ring) for ring in whole.interiors]
        posts = tuple(hole for hole in holes if hole.buffer(-limits.least_ft / 2).is_empty)
        wide = [hole.exterior for hole in holes if hole not in posts]
        yield _Region(whole=Polygon(whole.exterior, wide), posts=posts)


def _lines(spec: PlacementSpec, slab: Slab, one: _Region, limits: Limits) -> tuple[Segment, ...]:
    if spec.typed.joints is not None:
        return _owners_lines(spec.typed.joints)
    loops = (*slab.boundary.outer, *slab.boundary.inner)
    posts = tuple((post.centroid.x, post.centroid.y) for post in one.posts)
    return lay_out(one.whole, posts, loops, limits)


def _owners_lines(typed: tuple[JointLine, ...]) -> tuple[Segment, ...]:
    """Return the owner's lines, each 3 in longer at both ends so that it meets what it nears."""
    lines = (tuple(point_ft(end) for end in (line.from_, line.to)) for line in typed)
    return tuple(_extended((start, end)) for start, end in lines if math.dist(start, end) > 0)


def _extended(line: Segment) -> Segment:
    (x0, y0), (x1, y1) = line
    long = math.dist(*line)
    dx, dy = (x1 - x0) / long * TAPE_FT, (y1 - y0) / long * TAPE_FT
    return (x0 - dx, y0 - dy), (x1 + dx, y1 + dy)


def _less_posts(joints: tuple[Segment, ...], posts: list[Polygon]) -> tuple[Segment, ...]:
    """Cut small openings out of the joints that pass through them."""
    for post in posts:
        left = []
        for joint in joints:
            rest = LineString(joint).difference(post)
            for line in getattr(rest, "geoms", (rest,)):
                ends = list(line.coords)
                if len(ends) > 1:
                    left.append(((ends[0][0], ends[0][1]), (ends[-1][0], ends[-1][1])))
        joints = tuple(left)
    return joints


def _joint(joint: Segment) -> Joint:
    return Joint(
        start_ft=joint[0], end_ft=joint[1], length_ft=rounded(math.dist(*joint), _SIZE_PLACES)
    )


def _working(
    spec: PlacementSpec,
    joints: tuple[Segment, ...],
    units: JobUnits,
    spacing: tuple[Fraction, tuple[str, ...]],
    rules: RuleBook,
    on: date,
) -> Iterator[Step]:
    thickness = given("Thickness", rounded(spec.thickness.inches, _EXACT_PLACES), "in")
    spacing_ft, spacing_rules = spacing
    yield Step(
        name="Longest space between joints",
        formula="the lesser of a multiple of the thickness and the table by thickness",
        inputs=(thickness,),
        value=decimal_of(spacing_ft),
        unit="ft",
        rules=spacing_rules,
    )
    yield Step(
        name="Depth of a joint, at least",
        formula="a share of the thickness, and never under the least depth",
        inputs=(thickness,),
        value=decimal_of(saw_depth_in(spec.thickness.inches, rules, on)),
        unit="in",
        rules=_DEPTH_RULES,
    )
    feet = math.fsum(math.dist(*joint) for joint in joints)
    total = length_m(feet) if units.is_metric else length_ft(feet)
    yield Step(
        name="Joint length",
        formula="sum of the joints, rounded once",
        inputs=tuple(
            units.worked_length(f"Joint {number}", math.dist(*joint))
            for number, joint in enumerate(joints, 1)
        ),
        value=total,
        unit=units.length_unit,
    )


def _divided(region: Polygon, joints: Sequence[Segment]) -> tuple[Part, ...]:
    """Return the parts that joints divide a region into, row by row from the lower left."""
    parts = parts_of(cut_along(region, joints), region)
    return tuple(sorted(parts, key=_reading_order))


def _panel(number: int, part: Part, posts: tuple[Polygon, ...], limits: Limits) -> Panel:
    """Return a part as a numbered panel with the rules that it breaks."""
    long_ft, short_ft = sides_ft(part.ring)
    shape = Polygon(part.ring)
    label = maximum_inscribed_circle(shape, _LABEL_FT).coords[0]
    found = breaches(part, limits)
    if posts:
        found = tuple(
            one for one in found if one.rule not in _WAIVED_AT_POSTS or not _at_post(part, posts)
        )
    return Panel(
        number=number,
        outline_ft=tuple((x, y) for x, y in shape.simplify(_DRAWN_FT).boundary.coords[:-1]),
        long_ft=rounded(long_ft, _SIZE_PLACES),
        short_ft=rounded(short_ft, _SIZE_PLACES),
        ratio=rounded(long_ft / short_ft, _SIZE_PLACES),
        area_sqft=rounded(part.area_sqft, _AREA_PLACES),
        broken=tuple(_broken_rule(one, limits) for one in found),
        label_ft=(label[0], label[1]),
    )


def _at_post(part: Part, posts: tuple[Polygon, ...]) -> bool:
    """Whether a small opening lies at the edge of a panel, where joints meet in its middle."""
    return any(Polygon(part.ring).distance(post) < _DRAWN_FT for post in posts)


def _broken_rule(breach: Breach, limits: Limits) -> BrokenRule:
    allowed = {
        PanelRule.SPACING: limits.most_ft,
        PanelRule.RATIO: limits.times,
        PanelRule.CORNER: limits.corner_rad,
        PanelRule.SLIVER: limits.least_ft,
        PanelRule.INSIDE_CORNER: limits.turn_rad,
        PanelRule.WRAP: limits.wrap_rad,
    }[breach.rule]
    if breach.rule in _BY_ANGLE:
        return BrokenRule(
            rule=breach.rule,
            found=rounded(math.degrees(breach.value), _DEGREE_PLACES),
            allowed=rounded(math.degrees(allowed), _DEGREE_PLACES),
        )
    return BrokenRule(
        rule=breach.rule,
        found=rounded(breach.value, _SIZE_PLACES),
        allowed=rounded(allowed, _SIZE_PLACES),
    )


def _reading_order(part: Part) -> tuple[int, float, float]:
    middle = Polygon(part.ring).centroid
    return math.floor(middle.y / _ROW_FT), middle.x, middle.y
