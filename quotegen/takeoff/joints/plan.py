"""The joint plan of a placement: our own layout, or the owner's lines, with every panel judged."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from shapely import LineString, Polygon

from quotegen.quantity import decimal_of, rounded
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.job_units import Shown, length_ft, length_m
from quotegen.takeoff.joints.cutting import Segment, joints_of
from quotegen.takeoff.joints.lay_out import lay_out
from quotegen.takeoff.joints.limits import Limits, limits_of
from quotegen.takeoff.joints.panels import divided, panel_of
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.joints.records import Joint, JointPlan
from quotegen.takeoff.joints.typed_joints import owners_lines
from quotegen.takeoff.plan_geometry import Against
from quotegen.takeoff.shapes.overlay import polygons
from quotegen.takeoff.slab.slab import Slab
from quotegen.trade.joints import governing_spacing, saw_depth_in
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

_PLACES = 2
_EXACT_PLACES = 4
_DEPTH_RULES = ("joint_depth_share", "joint_depth_min")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """One separate part of a slab, with its small openings filled and kept apart."""

    region: Polygon
    posts: tuple[Polygon, ...]


def joint_plan(
    spec: PlacementSpec, slab: Slab, shown: Shown, rules: RuleBook, on: date
) -> JointPlan:
    """Return the joint plan of a placement.

    Args:
        spec: the placement, with the owner's lines if there are any.
        slab: as measured.
        shown: the units of the job.
        rules: of the trade.
        on: the quote date.
    """
    limits = limits_of(spec.thickness, rules, on)
    parts: list[Part] = []
    posts: list[Polygon] = []
    for piece in _pieces(slab, limits):
        parts += divided(piece.region, _lines(spec, slab, piece, limits))
        posts += piece.posts
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
            panel_of(number, part, tuple(posts), limits) for number, part in enumerate(parts, 1)
        ),
        length_ft=length_ft(feet),
        length_m=length_m(feet),
        isolation_ft=length_ft(math.fsum(_isolated(slab))),
        working=tuple(_working(spec, joints, shown, (spacing_ft, spacing_rules), rules, on)),
    )


def _pieces(slab: Slab, limits: Limits) -> Iterator[_Piece]:
    for whole in polygons(slab.region):
        holes = [Polygon(ring) for ring in whole.interiors]
        posts = tuple(hole for hole in holes if hole.buffer(-limits.least_ft / 2).is_empty)
        wide = [hole.exterior for hole in holes if hole not in posts]
        yield _Piece(region=Polygon(whole.exterior, wide), posts=posts)


def _lines(spec: PlacementSpec, slab: Slab, piece: _Piece, limits: Limits) -> tuple[Segment, ...]:
    if spec.typed.joints is not None:
        return owners_lines(spec.typed.joints)
    loops = (*slab.boundary.outer, *slab.boundary.inner)
    posts = tuple((post.centroid.x, post.centroid.y) for post in piece.posts)
    return lay_out(piece.region, posts, loops, limits)


def _less_posts(joints: tuple[Segment, ...], posts: list[Polygon]) -> tuple[Segment, ...]:
    """Take small openings out of the joints that pass through them."""
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
    return Joint(start_ft=joint[0], end_ft=joint[1], length_ft=rounded(math.dist(*joint), _PLACES))


def _isolated(slab: Slab) -> Iterator[float]:
    for ring in (*slab.boundary.outer, *slab.boundary.inner):
        yield from (side.length_ft for side in ring if side.against is not Against.OPEN)


def _working(
    spec: PlacementSpec,
    joints: tuple[Segment, ...],
    shown: Shown,
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
    total = length_m(feet) if shown.is_metric else length_ft(feet)
    yield Step(
        name="Joint length",
        formula="sum of the joints, rounded once",
        inputs=tuple(
            shown.worked(f"Joint {number}", math.dist(*joint))
            for number, joint in enumerate(joints, 1)
        ),
        value=total,
        unit=shown.length_unit,
    )
