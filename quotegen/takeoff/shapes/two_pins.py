"""Points on an edge, each tied to two pins by two tapes, and the edge through them."""

import math
from itertools import pairwise

from quotegen.reading.files.shapes import EdgeLine, OffLine, TiePoint, Ties
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.arcs import TAPE_SLACK_FT
from quotegen.takeoff.shapes.curve import curve_through
from quotegen.takeoff.shapes.faults import Fault, spot, tape_of
from quotegen.takeoff.shapes.path import Loop
from quotegen.takeoff.shapes.segments import Line

_FEWEST = 3


def ties_loop(ties: Ties) -> Loop | tuple[Fault, ...]:
    """Return the edge as seen from the first pin, or every fault of the tapes."""
    if len(ties.points) < _FEWEST:
        return (Fault(
            code="ties-few", path=("ties", "points"),
            message=f"{len(ties.points)} tied points; it takes {_FEWEST} or more to enclose a slab",
            hint="tie the corners and a point every few feet along each curve"),)  # fmt: skip
    found = [tied_point(ties, index) for index in range(len(ties.points))]
    faults = tuple(fault.under("ties") for fault in found if isinstance(fault, Fault))
    if faults:
        return faults
    points = [point for point in found if not isinstance(point, Fault)]
    if ties.edge is EdgeLine.STRAIGHT:
        return _straight(points)
    return _smooth(points, [n for n, tied in enumerate(ties.points) if tied.corner])


def tied_point(ties: Ties, index: int) -> Point | Fault:
    """Return where the two tapes of one point meet (trilateration), or why they do not.

    The first pin is the origin and the second is `apart` along. Along = (a2 - b2 + apart2) over
    twice apart, off the line = the root of a2 less along2. Tapes that miss each other by less
    than 1/8 in meet on the line of the pins.
    """
    tied, apart_ft = ties.points[index], ties.apart.ft
    a_ft, b_ft = tied.a.ft, tied.b.ft
    short_ft = apart_ft - a_ft - b_ft
    long_ft = abs(a_ft - b_ft) - apart_ft
    if max(short_ft, long_ft) > TAPE_SLACK_FT:
        return _cannot_meet(tied, index, apart_ft)
    along_ft = (a_ft**2 - b_ft**2 + apart_ft**2) / (2 * apart_ft)
    off_ft = math.sqrt(max(0.0, a_ft**2 - along_ft**2))
    side = tied.side or ties.side
    if side is None and off_ft > TAPE_SLACK_FT:
        return Fault(
            code="ties-side", path=("points", index),
            message=f"point {index + 1} fits on both sides of the line of the pins, at"
            f" {spot((along_ft, off_ft))} and at {spot((along_ft, -off_ft))} from the first pin",
            hint="add `side: top` or `side: bottom` to the ties, or to this point")  # fmt: skip
    return along_ft, -off_ft if side is OffLine.BOTTOM else off_ft


def _cannot_meet(tied: TiePoint, index: int, apart_ft: float) -> Fault:
    a_ft, b_ft = tied.a.ft, tied.b.ft
    if a_ft + b_ft < apart_ft:
        how = (
            f"together they are {tape_of(a_ft + b_ft)}, {tape_of(apart_ft - a_ft - b_ft)} short of"
            f" the {tape_of(apart_ft)} between the pins"
        )
    else:
        how = (
            f"they differ by {tape_of(abs(a_ft - b_ft))},"
            f" {tape_of(abs(a_ft - b_ft) - apart_ft)} more than the {tape_of(apart_ft)} between"
            " the pins"
        )
    return Fault(
        code="ties-apart",
        path=("points", index),
        message=f"the tapes of point {index + 1}, {tape_of(a_ft)} and {tape_of(b_ft)}, cannot"
        f" meet: {how}",
        hint="measure this point again, and check that `a` is the tape of the first pin",
    )


def _straight(points: list[Point]) -> Loop:
    ends = [*points[1:], points[0]]
    return tuple(Line(start=a, end=b) for a, b in zip(points, ends, strict=True))


def _smooth(points: list[Point], corners: list[int]) -> Loop:
    """One smooth curve all around, or one from corner to corner, straight with no point between."""
    if not corners:
        return (curve_through(points, closed=True),)
    turned = [*points[corners[0] :], *points[: corners[0] + 1]]
    breaks = [corner - corners[0] for corner in corners] + [len(points)]
    runs = [turned[first : last + 1] for first, last in pairwise(breaks)]
    return tuple(
        curve_through(run) if len(run) > 2 else Line(start=run[0], end=run[1]) for run in runs
    )
