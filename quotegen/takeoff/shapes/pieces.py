"""Plain pieces as measured one by one, each as loops around its own origin.

The origin is the lower left corner of a straight-sided piece and the center of a round one; the
job's `at` says where it goes. The outer loop comes first and runs counter-clockwise, a hole
clockwise.
"""

import math
from collections.abc import Callable, Mapping

from quotegen.quantity import Length
from quotegen.reading.fields.text_fields import Size
from quotegen.reading.files.shapes import Piece, Ring, Round
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.arcs import TAPE_SLACK_FT, arc_by_sweep, sweep_by_rise
from quotegen.takeoff.shapes.faults import Fault, tape_of
from quotegen.takeoff.shapes.oval import Oval
from quotegen.takeoff.shapes.path import Loop
from quotegen.takeoff.shapes.segments import FULL_TURN_RAD, Arc, Line

Loops = tuple[Loop, ...]

_FULL_TURN_DEG = 360
_CENTER: Point = (0.0, 0.0)
_FEWEST_SIDES, _MOST_SIDES = 3, 60


def piece_loops(shape: Piece) -> Loops | Fault:
    """Return the loops of a piece around its own origin, or what is wrong with it."""
    return _BUILDERS[shape.kind](shape)


def radius_ft(typed: Round) -> float:
    """Return the radius of a circle given by radius or diameter."""
    return typed.radius.ft if typed.radius else _whole(typed.diameter) / 2


def outer_radius_ft(ring: Ring) -> float:
    """Return the outer radius of a ring: arc length over angle where the arc was measured."""
    if ring.outer_radius:
        return ring.outer_radius.ft
    return _whole(ring.outer_arc) / math.radians(ring.sweep)


def _whole(length: Length | None) -> float:
    return length.ft if length else 0.0


def _polygon(*corners: Point) -> Loops:
    ends = (*corners[1:], corners[0])
    return (tuple(Line(start=a, end=b) for a, b in zip(corners, ends, strict=True) if a != b),)


def _rectangle(shape: Piece) -> Loops | Fault:
    size = _size(shape.rectangle)
    length_ft, width_ft = size.length.ft, size.width.ft
    if shape.corner_radius is None:
        return _polygon(_CENTER, (length_ft, 0), (length_ft, width_ft), (0, width_ft))
    corner_ft, short_ft = shape.corner_radius.ft, min(length_ft, width_ft)
    if shape.corner_radius.feet * 2 > min(size.length, size.width).feet:
        return Fault(
            code="corner-radius",
            path=("corner_radius",),
            message=(
                f"a corner radius of {tape_of(corner_ft)} does not fit a rectangle of"
                f" {tape_of(length_ft)} x {tape_of(width_ft)}: at most half the short side,"
                f" {tape_of(short_ft / 2)}"
            ),
            hint="give a smaller radius, or the size over the outside of the rounded corners",
        )
    return _rounded_rectangle(length_ft, width_ft, corner_ft)


def _rounded_rectangle(length_ft: float, width_ft: float, corner_ft: float) -> Loops:
    right, top = length_ft - corner_ft, width_ft - corner_ft
    centers = ((right, corner_ft), (right, top), (corner_ft, top), (corner_ft, corner_ft))
    arcs = [
        Arc(center=center, radius_ft=corner_ft, start_rad=(n - 1) * FULL_TURN_RAD / 4,
            sweep_rad=FULL_TURN_RAD / 4)
        for n, center in enumerate(centers)
    ]  # fmt: skip
    flats = (
        Line(start=(corner_ft, 0), end=(right, 0)),
        Line(start=(length_ft, corner_ft), end=(length_ft, top)),
        Line(start=(right, width_ft), end=(corner_ft, width_ft)),
        Line(start=(0, top), end=(0, corner_ft)),
    )
    sides = (side for pair in zip(flats, arcs, strict=True) for side in pair)
    return (tuple(side for side in sides if side.length_ft > 0),)


def _right_triangle(shape: Piece) -> Loops:
    legs = _size(shape.right_triangle)
    return _polygon(_CENTER, (legs.length.ft, 0), (0, legs.width.ft))


def _triangle(shape: Piece) -> Loops | Fault:
    triangle = shape.triangle
    assert triangle is not None
    if triangle.height is None:
        return _three_sides(triangle.base.ft, _whole(triangle.left), _whole(triangle.right))
    peak_ft = triangle.peak_at.ft if triangle.peak_at else triangle.base.ft / 2
    return _polygon(_CENTER, (triangle.base.ft, 0), (peak_ft, triangle.height.ft))


def _three_sides(base_ft: float, left_ft: float, right_ft: float) -> Loops | Fault:
    """The peak stands where the two upper sides meet: cosine rule."""
    sides = {"base": base_ft, "left": left_ft, "right": right_ft}
    longest = max(sides, key=lambda name: sides[name])
    others_ft = math.fsum(sides.values()) - sides[longest]
    if sides[longest] >= others_ft:
        return Fault(
            code="triangle-sides",
            path=("triangle", longest),
            message=f"sides of {tape_of(base_ft)}, {tape_of(left_ft)} and {tape_of(right_ft)} do"
            f" not close a triangle: the {longest} must be less than the other two together,"
            f" {tape_of(others_ft)}",
            hint="measure the three sides again",
        )
    peak_ft = (base_ft**2 + left_ft**2 - right_ft**2) / (2 * base_ft)
    height_ft = math.sqrt(max(0.0, left_ft**2 - peak_ft**2))
    return _polygon(_CENTER, (base_ft, 0), (peak_ft, height_ft))


def _parallelogram(shape: Piece) -> Loops:
    typed = shape.parallelogram
    assert typed is not None
    base_ft, offset_ft, height_ft = typed.base.ft, typed.offset.ft, typed.height.ft
    return _polygon(_CENTER, (base_ft, 0), (base_ft + offset_ft, height_ft), (offset_ft, height_ft))


def _regular_polygon(shape: Piece) -> Loops | Fault:
    """Corners on a circle about the center, with one side level at the bottom."""
    typed = shape.regular_polygon
    assert typed is not None
    if not _FEWEST_SIDES <= typed.sides <= _MOST_SIDES:
        return Fault(
            code="polygon-sides",
            path=("regular_polygon", "sides"),
            message=f"{typed.sides} sides; a regular polygon has {_FEWEST_SIDES} to {_MOST_SIDES}",
            hint="use a `circle` for a round slab",
        )
    step_rad = FULL_TURN_RAD / typed.sides
    if typed.side:
        corner_ft = typed.side.ft / (2 * math.sin(step_rad / 2))
    else:  # with an odd number the longest distance is a little less than twice the radius
        odd = math.cos(step_rad / 4) if typed.sides % 2 else 1.0
        corner_ft = _whole(typed.across_corners) / 2 / odd
    first_rad = -FULL_TURN_RAD / 4 - step_rad / 2
    angles = (first_rad + n * step_rad for n in range(typed.sides))
    return _polygon(*((corner_ft * math.cos(a), corner_ft * math.sin(a)) for a in angles))


def _segment(shape: Piece) -> Loops:
    """The chord level from the origin, the arc above it."""
    typed = shape.segment
    assert typed is not None
    start, end = _CENTER, (typed.chord.ft, 0.0)
    arc = arc_by_sweep(end, start, sweep_by_rise(typed.chord.ft, typed.rise.ft))
    return ((Line(start=start, end=end), arc),)


def _trapezoid(shape: Piece) -> Loops:
    typed = shape.trapezoid
    assert typed is not None
    left_ft = _whole(typed.offset)
    return _polygon(
        _CENTER,
        (typed.bottom.ft, 0),
        (left_ft + typed.top.ft, typed.height.ft),
        (left_ft, typed.height.ft),
    )


def _circle_part(typed: Round | None, sweep_rad: float) -> Loops:
    assert typed is not None
    arc = Arc(center=_CENTER, radius_ft=radius_ft(typed), start_rad=0, sweep_rad=sweep_rad)
    return ((arc,),)


def _circle(shape: Piece) -> Loops:
    return _circle_part(shape.circle, FULL_TURN_RAD)


def _half_circle(shape: Piece) -> Loops:
    ((arc,),) = _circle_part(shape.half_circle, FULL_TURN_RAD / 2)
    return ((Line(start=arc.end, end=arc.start), arc),)


def _quarter_circle(shape: Piece) -> Loops:
    ((arc,),) = _circle_part(shape.quarter_circle, FULL_TURN_RAD / 4)
    return ((Line(start=_CENTER, end=arc.start), arc, Line(start=arc.end, end=_CENTER)),)


def _ellipse(shape: Piece) -> Loops:
    axes = _size(shape.ellipse)
    half_length_ft, half_width_ft = axes.length.ft / 2, axes.width.ft / 2
    if axes.length == axes.width:
        circle = Arc(center=_CENTER, radius_ft=half_length_ft, start_rad=0, sweep_rad=FULL_TURN_RAD)
        return ((circle,),)
    return ((Oval(center=_CENTER, half_length_ft=half_length_ft, half_width_ft=half_width_ft),),)


def _ring(shape: Piece) -> Loops | Fault:
    ring = shape.ring
    assert ring is not None
    if not 0 < ring.sweep <= _FULL_TURN_DEG:
        return Fault(
            code="ring-sweep",
            path=("ring", "sweep"),
            message=f"a sweep of {ring.sweep} deg is not part of a turn; it must be above 0 deg"
            " and at most 360 deg",
            hint="measure the angle at the center, counter-clockwise; `turn` says where it begins",
        )
    outer_ft, width_ft = outer_radius_ft(ring), ring.width.ft
    if width_ft >= outer_ft:
        return Fault(
            code="ring-width",
            path=("ring", "width"),
            message=f"a ring of {tape_of(width_ft)} width does not fit an outer radius of"
            f" {tape_of(outer_ft)}: the inner radius would be zero or less",
            hint="check the width and the radius, or use a `circle` or a part of one",
        )
    sweep_rad = math.radians(ring.sweep)
    if (FULL_TURN_RAD - sweep_rad) * outer_ft < TAPE_SLACK_FT:
        sweep_rad = FULL_TURN_RAD
    outer = Arc(center=_CENTER, radius_ft=outer_ft, start_rad=0, sweep_rad=sweep_rad)
    inner = Arc(center=_CENTER, radius_ft=outer_ft - width_ft, start_rad=0, sweep_rad=sweep_rad)
    inner = inner.backwards()
    if outer.is_closed:
        return (outer,), (inner,)
    return ((
        outer, Line(start=outer.end, end=inner.start),
        inner, Line(start=inner.end, end=outer.start),
    ),)  # fmt: skip


def _size(size: Size | None) -> Size:
    assert size is not None
    return size


_BUILDERS: Mapping[str, Callable[[Piece], Loops | Fault]] = {
    "rectangle": _rectangle,
    "right_triangle": _right_triangle,
    "triangle": _triangle,
    "trapezoid": _trapezoid,
    "parallelogram": _parallelogram,
    "regular_polygon": _regular_polygon,
    "circle": _circle,
    "half_circle": _half_circle,
    "quarter_circle": _quarter_circle,
    "segment": _segment,
    "ellipse": _ellipse,
    "ring": _ring,
}
