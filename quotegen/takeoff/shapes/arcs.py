"""Arcs as a person measures them: by radius, rise, length, or a point that they go through."""

import math

from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.faults import Fault, spot, tape_of
from quotegen.takeoff.shapes.segments import FULL_TURN_RAD, Arc, Line

TAPE_SLACK_FT = 1 / 96  # 1/8 in: what two readings of a tape may differ by
LEAST_RISE_FT = 1 / 192  # 1/16 in: the finest mark of a tape
_HALVINGS = 60  # of a half turn: to float precision


def arc_by_sweep(start: Point, end: Point, sweep_rad: float) -> Arc:
    """Return the arc from one point to another that turns by an angle, counter-clockwise above 0.

    The center stands off the middle of the chord by half the chord over the tangent of half the
    angle.
    """
    half_chord_ft = math.dist(start, end) / 2
    along_x, along_y = (end[0] - start[0]) / 2, (end[1] - start[1]) / 2
    off = 1 / math.tan(sweep_rad / 2)
    center = (start[0] + along_x - along_y * off, start[1] + along_y + along_x * off)
    return Arc(
        center=center,
        radius_ft=half_chord_ft / abs(math.sin(sweep_rad / 2)),
        start_rad=math.atan2(start[1] - center[1], start[0] - center[0]),
        sweep_rad=sweep_rad,
    )


def sweep_by_rise(chord_ft: float, rise_ft: float) -> float:
    """Return the angle of an arc: four times the one whose tangent is rise over half the chord.

    It also holds past a half circle, where the rise is more than half the chord.
    """
    return 4 * math.atan2(2 * rise_ft, chord_ft)


def sweep_by_radius(start: Point, end: Point, radius_ft: float) -> float | Fault:
    """Return the angle of the smaller of the two arcs of a radius between two points."""
    chord_ft = math.dist(start, end)
    if radius_ft < chord_ft / 2 - TAPE_SLACK_FT:
        return Fault(
            code="arc-radius",
            path=("radius",),
            message=(
                f"a radius of {tape_of(radius_ft)} cannot reach from {spot(start)} to {spot(end)}:"
                f" they are {tape_of(chord_ft)} apart, so it must be at least"
                f" {tape_of(chord_ft / 2)}"
            ),
            hint="measure the radius again, or give the `rise` at the middle of the chord instead",
        )
    return 2 * math.asin(min(1.0, chord_ft / 2 / radius_ft))


def sweep_by_length(start: Point, end: Point, arc_ft: float) -> float | Fault:
    """Return the angle of the arc of a measured length between two points.

    Chord over arc is the sine of half the angle over half the angle; found by bisection.
    """
    chord_ft = math.dist(start, end)
    if arc_ft <= chord_ft:
        return Fault(
            code="arc-length",
            path=("arc_length",),
            message=(
                f"an arc of {tape_of(arc_ft)} cannot reach from {spot(start)} to {spot(end)}: they"
                f" are {tape_of(chord_ft)} apart in a straight line, and an arc is longer"
            ),
            hint="measure along the curve again, or leave `arc_length` out for a straight side",
        )
    low, high = 0.0, math.pi
    for _ in range(_HALVINGS):
        half = (low + high) / 2
        if math.sin(half) * arc_ft > half * chord_ft:
            low = half
        else:
            high = half
    return low + high


def sweep_through(start: Point, through: Point, end: Point) -> float | Fault:
    """Return the angle, with its direction, of the arc from start to end through a point.

    The angle at that point between the two ends is half of what is left of the full circle.
    """
    chord = Line(start=start, end=end)
    (ax, ay) = (start[0] - through[0], start[1] - through[1])
    (bx, by) = (end[0] - through[0], end[1] - through[1])
    cross, dot = ax * by - ay * bx, ax * bx + ay * by
    if abs(cross) / chord.length_ft < LEAST_RISE_FT:
        return Fault(
            code="arc-through",
            path=("through",),
            message=(
                f"{spot(through)} lies on the straight line through {spot(start)} and"
                f" {spot(end)}, so no arc goes through it"
            ),
            hint="leave `through` out for a straight side, or give a point out on the curve",
        )
    inscribed_rad = math.atan2(abs(cross), dot)
    return math.copysign(FULL_TURN_RAD - 2 * inscribed_rad, -cross)
