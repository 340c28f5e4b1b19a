"""A deck of given width around a pool: its outside edge keeps that distance from the pool's."""

import math
from dataclasses import replace
from itertools import pairwise

from quotegen.quantity import Length
from quotegen.reading.files.shapes import Border, Corners
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.curve import curve_through
from quotegen.takeoff.shapes.faults import Fault, spot, tape_of
from quotegen.takeoff.shapes.oval import Oval
from quotegen.takeoff.shapes.path import Loop, Segment, signed_area_sqft
from quotegen.takeoff.shapes.segments import FULL_TURN_RAD, Arc, Line

_SMOOTH_RAD = 1e-6
_SHARPEST_RAD = math.radians(150)  # a sharper square corner would reach out four widths and more
_NUDGE = 1e-5  # of the way along a curve, to find its direction
_POINTS_PER_SPAN, _POINTS_PER_OVAL = 16, 192  # a curve beside a curve is good to 0.001 sq ft


def outside_of(border: Border, pool: Loop) -> Loop | Fault:
    """Return the outside edge, counter-clockwise, or why there is none.

    Args:
        border: the widths and corners.
        pool: its edge, counter-clockwise.
    """
    if border.pool.rectangle is not None:
        return _round_a_rectangle(border)
    assert border.width is not None
    return grown(pool, border.width.ft, border.corners)


def grown(loop: Loop, width_ft: float, corners: Corners) -> Loop | Fault:
    """Return the loop that runs outside another at a distance, or why there is none.

    A straight side moves out. An arc that bows out gains the width in radius, one that bows in
    loses it. At an outside corner an arc keeps the distance, or the sides extend until they meet;
    at an inside corner the sides end where they meet.
    """
    moved = [_moved(segment, width_ft) for segment in loop]
    faults = [one for one in moved if isinstance(one, Fault)]
    turns = [_turn_rad(one, loop[(n + 1) % len(loop)]) for n, one in enumerate(loop)]
    faults += [
        fault
        for n, turn_rad in enumerate(turns)
        if (fault := _corner_fault(loop, n, turn_rad, corners))
    ]
    if faults:
        return faults[0]
    beside = [one for one in moved if not isinstance(one, Fault)]
    joins: list[Loop] = []
    for n, turn_rad in enumerate(turns):
        after = (n + 1) % len(loop)
        meeting = _meeting(loop[n], beside[n].end, turn_rad, width_ft)
        if turn_rad < -_SMOOTH_RAD:  # both are straight
            beside[n] = Line(start=beside[n].start, end=meeting)
            beside[after] = Line(start=meeting, end=beside[after].end)
        joins.append(_join(loop[n].end, beside[n].end, meeting, beside[after].start,
                           turn_rad if corners is Corners.ROUNDED else None)
                     if turn_rad > _SMOOTH_RAD else ())  # fmt: skip
    return tuple(side for one, join in zip(beside, joins, strict=True) for side in (one, *join))


def outside_area_sqft(border: Border, pool: Loop) -> float:
    """Return the area within the outside edge, without drawing it.

    Steiner's formula for parallel curves: the area of the pool, width times its edge, and width
    squared times half of the full turn. A corner that is not rounded takes up the tangent of half
    its turn in place of half its turn.

    Args:
        border: the widths and corners.
        pool: its edge, counter-clockwise.
    """
    if border.pool.rectangle is not None:
        return signed_area_sqft(_round_a_rectangle(border))
    assert border.width is not None
    width_ft = border.width.ft
    turns = [_turn_rad(one, after) for one, after in zip(pool, (*pool[1:], pool[0]), strict=True)]
    cut = [turn for turn in turns if turn < 0 or border.corners is Corners.SQUARE]
    corners = math.fsum(math.tan(turn / 2) - turn / 2 for turn in cut)
    length_ft = math.fsum(segment.length_ft for segment in pool)
    return signed_area_sqft(pool) + width_ft * length_ft + width_ft**2 * (math.pi + corners)


def _round_a_rectangle(border: Border) -> Loop:
    size = border.pool.rectangle
    assert size is not None
    bottom, right, top, left = (
        _width_ft(own, border.width)
        for own in (border.bottom, border.right, border.top, border.left)
    )
    low: Point = (-left, -bottom)
    high: Point = (size.length.ft + right, size.width.ft + top)
    corners = (low, (high[0], low[1]), high, (low[0], high[1]))
    if border.corners is Corners.SQUARE:
        return tuple(Line(start=a, end=b) for a, b in pairwise((*corners, low)))
    pool_ft = border.pool.corner_radius.ft if border.pool.corner_radius else 0.0
    widths = (left, bottom, right, top, left)
    radii = [pool_ft + min(pair) for pair in pairwise(widths)]
    sides: list[Segment] = []
    for n, (corner, radius_ft) in enumerate(zip(corners, radii, strict=True)):
        before_rad = (n - 1) * FULL_TURN_RAD / 4  # the direction in, a quarter turn before that out
        inward = (_sign(n in {0, 3}), _sign(n in {0, 1}))
        center = (corner[0] + inward[0] * radius_ft, corner[1] + inward[1] * radius_ft)
        sides.append(Arc(center=center, radius_ft=radius_ft,
                         start_rad=before_rad - FULL_TURN_RAD / 4,
                         sweep_rad=FULL_TURN_RAD / 4))  # fmt: skip
    ends = [*sides[1:], sides[0]]
    lines = [Line(start=a.end, end=b.start) for a, b in zip(sides, ends, strict=True)]
    return tuple(part for pair in zip(sides, lines, strict=True) for part in pair if part.length_ft)


def _width_ft(own: Length | None, all_round: Length | None) -> float:
    width = own or all_round
    assert width is not None
    return width.ft


def _sign(positive: bool) -> int:  # noqa: FBT001
    return 1 if positive else -1


def _moved(segment: Segment, width_ft: float) -> Segment | Fault:
    if isinstance(segment, Line):
        return replace(segment, start=_out(segment, 0, width_ft), end=_out(segment, 1, width_ft))
    if isinstance(segment, Arc):
        radius_ft = segment.radius_ft + math.copysign(width_ft, segment.sweep_rad)
        if radius_ft > 0:
            return replace(segment, radius_ft=radius_ft)
        return Fault(
            code="border-too-wide", path=("width",),
            message=f"a border of {tape_of(width_ft)} does not fit in the bay near"
            f" {spot(segment.point_at(0.5))}, which bows in with a radius of"
            f" {tape_of(segment.radius_ft)}",
            hint="make the border narrower than that, or measure the outside edge too, as an"
            " `outline`")  # fmt: skip
    count = _POINTS_PER_OVAL if isinstance(segment, Oval) else _POINTS_PER_SPAN * len(segment.spans)
    shares = [n / count for n in range(count + (not segment.is_closed))]
    points = [_out(segment, share, width_ft) for share in shares]
    return curve_through(points, closed=segment.is_closed)


def _meeting(side: Segment, end: Point, turn_rad: float, width_ft: float) -> Point:
    """Return where two sides meet: width times the tangent of half the turn beyond the end."""
    (along, up), on_ft = _direction(side, 1), width_ft * math.tan(turn_rad / 2)
    return end[0] + along * on_ft, end[1] + up * on_ft


def _join(corner: Point, end: Point, meeting: Point, start: Point, turn_rad: float | None) -> Loop:
    """Return what closes an outside corner: an arc around it, or two straight ends."""
    if turn_rad is None:
        return Line(start=end, end=meeting), Line(start=meeting, end=start)
    start_rad = math.atan2(end[1] - corner[1], end[0] - corner[0])
    radius_ft = math.dist(corner, end)
    return (Arc(center=corner, radius_ft=radius_ft, start_rad=start_rad, sweep_rad=turn_rad),)


def _corner_fault(loop: Loop, n: int, turn_rad: float, corners: Corners) -> Fault | None:
    side, after = loop[n], loop[(n + 1) % len(loop)]
    if turn_rad < -_SMOOTH_RAD and not (isinstance(side, Line) and isinstance(after, Line)):
        return Fault(
            code="border-inside-corner", path=("pool",),
            message=f"the pool has an inside corner at {spot(side.end)} beside a curve; no border"
            " is figured round that",
            hint="measure the outside edge too, as an `outline`, and take the pool away"
            " from it")  # fmt: skip
    if turn_rad > _SHARPEST_RAD and corners is Corners.SQUARE:
        return Fault(
            code="border-sharp-corner", path=("corners",),
            message=f"the pool's corner at {spot(side.end)} is too sharp for a square outside"
            " corner",
            hint="type `corners: rounded`")  # fmt: skip
    return None


def _turn_rad(first: Segment, second: Segment) -> float:
    before, after = _direction(first, 1), _direction(second, 0)
    cross = before[0] * after[1] - before[1] * after[0]
    return math.atan2(cross, before[0] * after[0] + before[1] * after[1])


def _direction(segment: Segment, share: float) -> Point:
    """Return the direction of a segment at a share of the way along it, of length one."""
    (x0, y0), (x1, y1) = segment.point_at(share - _NUDGE), segment.point_at(share + _NUDGE)
    far = math.dist((x0, y0), (x1, y1))
    return (x1 - x0) / far, (y1 - y0) / far


def _out(segment: Segment, share: float, width_ft: float) -> Point:
    """Return the point at a distance square off a segment, on its right."""
    (x, y), (along, up) = segment.point_at(share), _direction(segment, share)
    return x + up * width_ft, y - along * width_ft
