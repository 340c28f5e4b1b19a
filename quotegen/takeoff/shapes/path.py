"""Closed loops of segments: their area, length and direction, and the rings that stand for them."""

import math
from functools import lru_cache
from typing import TypeAlias

import shapely

from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.takeoff.shapes.curve import Curve
from quotegen.takeoff.shapes.oval import Oval
from quotegen.takeoff.shapes.segments import FULL_TURN_RAD, Arc, Line, Placing

Segment: TypeAlias = Line | Arc | Oval | Curve
Loop: TypeAlias = tuple[Segment, ...]

_FINE_STEP_RAD = math.radians(0.5)
_FINE_RADIUS_FT = 20.0  # such a step strays less than 0.0002 ft up to here; beyond, it is shorter
_DRAWN_STRAY_FT = 0.005  # about the width of a pencil line on the plan
_DRAWN_STEPS_RAD = (math.radians(1), math.radians(15))
_SAME_FT = 1e-4


def signed_area_sqft(loop: Loop) -> float:
    """Return the exact area inside a loop, below zero when it runs clockwise.

    Green's theorem: the sum over the segments of half the integral of x dy less y dx.
    """
    return math.fsum(segment.green_sqft for segment in loop)


def loop_length_ft(loop: Loop) -> float:
    """Return the exact length along all segments."""
    return math.fsum(segment.length_ft for segment in loop)


def backwards(loop: Loop) -> Loop:
    """Return the same loop in the other direction."""
    return tuple(segment.backwards() for segment in reversed(loop))


def counter_clockwise(loop: Loop) -> Loop:
    """Return the loop in the direction that has what it encloses on its left."""
    return loop if signed_area_sqft(loop) >= 0 else backwards(loop)


def placed(loop: Loop, placing: Placing) -> Loop:
    """Return the loop turned and moved."""
    return tuple(segment.placed(placing) for segment in loop)


def fine_ring(loop: Loop) -> Ring:
    """Return the loop as many short sides, close enough for every check."""
    return tuple(point for segment in loop for point in fine_corners(segment))


@lru_cache(maxsize=256)  # each check of a shape asks for them again
def fine_corners(segment: Segment) -> tuple[Point, ...]:
    """Return the points of a segment close enough for every check, without the last."""
    parts = math.ceil(math.sqrt(max(1.0, _reach_ft(segment) / _FINE_RADIUS_FT)))
    return segment.corners(_FINE_STEP_RAD / parts)


def drawn_ring(loop: Loop) -> Ring:
    """Return the loop with as few sides as the eye needs."""
    return tuple(point for segment in loop for point in drawn_run(segment)[:-1])


def drawn_run(segment: Segment) -> Ring:
    """Return one segment as drawn, from its start to its end."""
    run = (*segment.corners(_drawn_step(segment)), segment.end)
    if isinstance(segment, Curve):
        fewer = shapely.LineString(run).simplify(_DRAWN_STRAY_FT).coords
        return tuple((x, y) for x, y in fewer)
    return run


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
    """Return two segments as one if the second continues the first, or None."""
    if first.against is not second.against:
        return None
    if isinstance(first, Line) and isinstance(second, Line):
        whole = Line(start=first.start, end=second.end, against=first.against)
        meeting = whole.point_at(whole.share_at(first.end)) if whole.length_ft else first.start
        continues = whole.length_ft + _SAME_FT > first.length_ft + second.length_ft
        return whole if continues and math.dist(meeting, first.end) < _SAME_FT else None
    if isinstance(first, Arc) and isinstance(second, Arc):
        same = (
            math.dist(first.center, second.center) < _SAME_FT
            and abs(first.radius_ft - second.radius_ft) < _SAME_FT
            and first.sweep_rad * second.sweep_rad > 0
        )
        share = (first.sweep_rad + second.sweep_rad) / first.sweep_rad
        return first.between(0, share) if same else None
    if isinstance(first, Oval) and isinstance(second, Oval):
        frame = (first.center, first.half_length_ft, first.half_width_ft, first.tilt_rad)
        same = frame == (
            second.center, second.half_length_ft, second.half_width_ft, second.tilt_rad
        )  # fmt: skip
        share = (first.sweep_rad + second.sweep_rad) / first.sweep_rad
        return first.between(0, share) if same else None
    if isinstance(first, Curve) and isinstance(second, Curve) and first.continues_into(second):
        return Curve(spans=(*first.spans, *second.spans), against=first.against)
    return None


def _drawn_step(segment: Segment) -> float:
    least, most = _DRAWN_STEPS_RAD
    stray = _DRAWN_STRAY_FT / max(_DRAWN_STRAY_FT, _reach_ft(segment))
    step = 2 * math.acos(1 - stray)
    steps_per_turn = math.ceil(FULL_TURN_RAD / min(most, max(least, step)))
    return FULL_TURN_RAD / steps_per_turn


def _reach_ft(segment: Segment) -> float:
    """The radius of an arc, the larger half axis of an oval, zero for what has neither."""
    if isinstance(segment, Line | Curve):
        return 0.0
    if isinstance(segment, Arc):
        return segment.radius_ft
    return max(segment.half_length_ft, segment.half_width_ft)


def crossing_of(loop: Loop) -> tuple[int, int, Point] | None:
    """Return which two segments cross or touch, and roughly where; None for a sound loop."""
    ring = fine_ring(loop)
    if shapely.Polygon(ring).is_valid:
        return None
    owners = [i for i, part in enumerate(loop) for _ in fine_corners(part)]
    edges = [shapely.LineString(pair) for pair in zip(ring, (*ring[1:], ring[0]), strict=True)]
    pairs = shapely.STRtree(edges).query(edges, predicate="intersects").T.tolist()
    for first, second in sorted(pairs):
        if first >= second:
            continue
        meeting = edges[first].intersection(edges[second])
        beside = second - first in {1, len(edges) - 1}
        if not (beside and isinstance(meeting, shapely.Point)):
            at = meeting.representative_point()
            return owners[first], owners[second], (at.x, at.y)
    return 0, len(loop) - 1, loop[0].start
