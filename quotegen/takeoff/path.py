"""Closed loops of segments: area, length, direction, and the polygon that stands for them."""

import math
from typing import TypeAlias

from quotegen.takeoff.oval import Oval
from quotegen.takeoff.records import Ring
from quotegen.takeoff.segments import Arc, Line, Placing

Segment: TypeAlias = Line | Arc | Oval
Loop: TypeAlias = tuple[Segment, ...]

FINE_STEP_RAD = math.radians(0.25)  # for checks; a 20 ft arc strays less than 0.0001 ft from it
_DRAWN_STRAY_FT = 0.005  # about the width of a pencil line on the plan
_DRAWN_STEPS_RAD = (math.radians(1), math.radians(15))
_SAME_FT = 1e-4


def signed_area_sqft(loop: Loop) -> float:
    """Return the exact area in a loop, below nought when it runs clockwise.

    Green's theorem: the sum over the segments of half the integral of x dy less y dx.
    """
    return math.fsum(segment.green_sqft for segment in loop)


def loop_length_ft(loop: Loop) -> float:
    """Return the exact length along all segments."""
    return math.fsum(segment.length_ft for segment in loop)


def backwards(loop: Loop) -> Loop:
    """Return the same loop, gone round the other way."""
    return tuple(segment.backwards() for segment in reversed(loop))


def counter_clockwise(loop: Loop) -> Loop:
    """Return the loop so that what it encloses lies on its left."""
    return loop if signed_area_sqft(loop) >= 0 else backwards(loop)


def placed(loop: Loop, placing: Placing) -> Loop:
    """Return the loop turned and moved."""
    return tuple(segment.placed(placing) for segment in loop)


def fine_ring(loop: Loop) -> Ring:
    """Return the loop as many short sides, close enough for every check."""
    return tuple(point for segment in loop for point in segment.corners(FINE_STEP_RAD))


def drawn_ring(loop: Loop) -> Ring:
    """Return the loop as few sides as the eye needs."""
    return tuple(point for segment in loop for point in segment.corners(_drawn_step(segment)))


def drawn_run(segment: Segment) -> Ring:
    """Return one segment as drawn, from its start to its end."""
    return (*segment.corners(_drawn_step(segment)), segment.end)


def chord_ft(segment: Segment) -> float:
    """Return the straight length from end to end."""
    return 0.0 if segment.is_closed else math.dist(segment.start, segment.end)


def rise_ft(segment: Segment) -> float:
    """Return the length from the middle of the chord to the middle of the segment."""
    if isinstance(segment, Line):
        return 0.0
    (x0, y0), (x1, y1) = segment.start, segment.end
    return math.dist(((x0 + x1) / 2, (y0 + y1) / 2), segment.point_at(0.5))


def joined(first: Segment, second: Segment) -> Segment | None:
    """Return two segments as one where the second goes on as the first; None where it does not."""
    if first.against is not second.against:
        return None
    if isinstance(first, Line) and isinstance(second, Line):
        whole = Line(start=first.start, end=second.end, against=first.against)
        meeting = whole.point_at(whole.share_at(first.end)) if whole.length_ft else first.start
        goes_on = whole.length_ft + _SAME_FT > first.length_ft + second.length_ft
        return whole if goes_on and math.dist(meeting, first.end) < _SAME_FT else None
    if isinstance(first, Arc) and isinstance(second, Arc):
        same = (
            math.dist(first.centre, second.centre) < _SAME_FT
            and abs(first.radius_ft - second.radius_ft) < _SAME_FT
            and first.sweep_rad * second.sweep_rad > 0
        )
        share = (first.sweep_rad + second.sweep_rad) / first.sweep_rad
        return first.between(0, share) if same else None
    if isinstance(first, Oval) and isinstance(second, Oval):
        frame = (first.centre, first.half_length_ft, first.half_width_ft, first.tilt_rad)
        same = frame == (
            second.centre, second.half_length_ft, second.half_width_ft, second.tilt_rad
        )  # fmt: skip
        share = (first.sweep_rad + second.sweep_rad) / first.sweep_rad
        return first.between(0, share) if same else None
    return None


def _drawn_step(segment: Segment) -> float:
    if isinstance(segment, Line):
        return FINE_STEP_RAD
    if isinstance(segment, Arc):
        radius_ft = segment.radius_ft
    else:
        radius_ft = max(segment.half_length_ft, segment.half_width_ft)
    least, most = _DRAWN_STEPS_RAD
    step = 2 * math.acos(max(-1.0, 1 - _DRAWN_STRAY_FT / radius_ft))
    steps_per_turn = math.ceil(2 * math.pi / min(most, max(least, step)))
    return 2 * math.pi / steps_per_turn
