"""From an outline as typed, corner after corner, to a closed loop of sides, arcs and curves."""

import math
from dataclasses import dataclass, replace

from quotegen.reading.files.shapes import Bow, OutlineSide
from quotegen.takeoff.plan_geometry import Against, Point
from quotegen.takeoff.shapes.arcs import (
    TAPE_SLACK_FT,
    arc_by_sweep,
    sweep_by_length,
    sweep_by_radius,
    sweep_by_rise,
    sweep_through,
)
from quotegen.takeoff.shapes.curve import curve_through
from quotegen.takeoff.shapes.faults import Fault, spot
from quotegen.takeoff.shapes.path import Loop, Segment, crossing_of, signed_area_sqft
from quotegen.takeoff.shapes.segments import Line, point_ft

_FEWEST_CORNERS = 3
_CURVES = ("radius", "rise", "through", "arc_length", "smooth_through")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Leg:
    """One side between two known corners; `side` is None for a closing side that was left out."""

    index: int
    start: Point
    end: Point
    side: OutlineSide | None


def outline_sides(sides: tuple[OutlineSide, ...]) -> tuple[Loop, tuple[Fault, ...]]:
    """Return the loop in the order typed, or every fault that prevents one.

    A side bows out or in as seen from the slab, so it matters which way around the corners run;
    points that a curve passes through count as corners there. Two corners run counter-clockwise.
    """
    faults = _order_faults(sides)
    if faults:
        return (), faults
    legs = _legs(sides)
    faults = _corner_faults(legs)
    if faults:
        return (), faults
    built = [_segment(leg, counter_clockwise=_runs_counter_clockwise(legs)) for leg in legs]
    faults = tuple(fault for fault in built if isinstance(fault, Fault))
    if faults:
        return (), faults
    return tuple(segment for segment in built if not isinstance(segment, Fault)), ()


def _order_faults(sides: tuple[OutlineSide, ...]) -> tuple[Fault, ...]:
    faults: list[Fault] = []
    if not sides or sides[0].from_ is None:
        faults.append(Fault(
            code="outline-start", path=(0,), message="the outline does not say where it starts",
            hint="begin the outline with the first corner, such as `- from: [0, 0]`"))  # fmt: skip
    for index, side in enumerate(sides):
        curves = [name for name in _CURVES if getattr(side, name) is not None]
        if index and side.from_ is not None:
            faults.append(Fault(
                code="outline-start", path=(index, "from"),
                message="`from` stands here again; each side starts where the last one ended",
                hint="write `to:` here, or begin a second shape for a second outline"))  # fmt: skip
        if side.to is None and (index or curves):
            faults.append(Fault(
                code="outline-no-end", path=(index,),
                message="this side does not say where it goes to",
                hint="add the corner that it ends at, such as `to: [24 ft, 0]`"))  # fmt: skip
        if len(curves) > 1:
            faults.append(Fault(
                code="outline-two-ways", path=(index, curves[1]),
                message=f"this side has {' and '.join(curves)}; one of them makes the arc",
                hint="keep the one that was measured best"))  # fmt: skip
    return tuple(faults)


def _legs(sides: tuple[OutlineSide, ...]) -> tuple[_Leg, ...]:
    first = sides[0].from_
    here = start = point_ft(first) if first else (0.0, 0.0)
    legs: list[_Leg] = []
    for index, side in enumerate(sides):
        if side.to is not None:
            legs.append(_Leg(index=index, start=here, end=point_ft(side.to), side=side))
            here = legs[-1].end
    if legs and math.dist(here, start) < TAPE_SLACK_FT:
        legs[-1] = replace(legs[-1], end=start)
    elif legs:
        legs.append(_Leg(index=legs[-1].index, start=here, end=start, side=None))
    return tuple(legs)


def _corner_faults(legs: tuple[_Leg, ...]) -> tuple[Fault, ...]:
    same = tuple(
        Fault(
            code="outline-same-point",
            path=(leg.index, "to"),
            message=f"this side ends where it starts, at {spot(leg.start)}",
            hint="take the corner out, or correct it; use a `circle` for a full circle",
        )
        for leg in legs
        if math.dist(leg.start, leg.end) < TAPE_SLACK_FT and not _closes_smoothly(leg.side)
    )
    if legs and _closes_smoothly(legs[0].side) and len(legs) == 1:
        return same
    curved = any(_is_curved(leg.side) for leg in legs)
    if same or len(legs) >= _FEWEST_CORNERS - curved:
        return same
    corners = f"{len(legs)} corners" if len(legs) > 1 else "one corner"
    return (Fault(
        code="outline-short", path=(),
        message=f"the outline has {corners}; it takes at least 3,"
        " or 2 with an arc between them",
        hint="add the corners that are missing, in order round the slab"),)  # fmt: skip


def _runs_counter_clockwise(legs: tuple[_Leg, ...]) -> bool:
    corners: list[Point] = []
    for leg in legs:
        corners.append(leg.start)
        if leg.side and leg.side.through:
            corners.append(point_ft(leg.side.through))
        if leg.side and leg.side.smooth_through:
            corners += [point_ft(point) for point in leg.side.smooth_through]
    sides = zip(corners, [*corners[1:], corners[0]], strict=True)
    loop = tuple(Line(start=start, end=end) for start, end in sides)
    return signed_area_sqft(loop) >= 0


def _segment(leg: _Leg, *, counter_clockwise: bool) -> Segment | Fault:
    side = leg.side
    against = _against(side)
    if side is None or not _is_curved(side):
        return Line(start=leg.start, end=leg.end, against=against)
    if side.smooth_through is not None:
        between = [point_ft(point) for point in side.smooth_through]
        if math.dist(leg.start, leg.end) < TAPE_SLACK_FT:
            return replace(curve_through([leg.start, *between], closed=True), against=against)
        return replace(curve_through([leg.start, *between, leg.end]), against=against)
    sweep_rad = _sweep(leg, side, counter_clockwise=counter_clockwise)
    if isinstance(sweep_rad, Fault):
        return sweep_rad.under(leg.index)
    return replace(arc_by_sweep(leg.start, leg.end, sweep_rad), against=against)


def _against(side: OutlineSide | None) -> Against:
    if side is not None and side.against is not None:
        return Against(side.against.value)
    return Against.HOUSE if side is not None and side.against_house else Against.OPEN


def _sweep(leg: _Leg, side: OutlineSide, *, counter_clockwise: bool) -> float | Fault:
    if side.through:
        return sweep_through(leg.start, point_ft(side.through), leg.end)
    sweep_rad: float | Fault = 0.0
    if side.rise:
        sweep_rad = sweep_by_rise(math.dist(leg.start, leg.end), side.rise.ft)
    elif side.radius:
        sweep_rad = sweep_by_radius(leg.start, leg.end, side.radius.ft)
    elif side.arc_length:
        sweep_rad = sweep_by_length(leg.start, leg.end, side.arc_length.ft)
    if isinstance(sweep_rad, Fault):
        return sweep_rad
    return sweep_rad if (side.bows is Bow.OUT) == counter_clockwise else -sweep_rad


def outline_crossing(loop: Loop) -> tuple[Fault, ...]:
    """Return a fault where the sides of an outline cross; they are numbered as typed."""
    crossing = crossing_of(loop)
    if crossing is None:
        return ()
    first, second, point = crossing
    what = f"sides {first + 1} and {second + 1} of the outline cross or touch"
    if first == second:
        what = f"side {first + 1} of the outline runs into itself"
    return (Fault(
        code="outline-crosses", path=(),
        message=f"{what} near {spot(point)}, so it does not enclose one area",
        hint="check the order of the corners there, and which way each arc bows;"
        " sides count from the first corner"),)  # fmt: skip


def _closes_smoothly(side: OutlineSide | None) -> bool:
    """Whether a side may end where it starts: a smooth curve through two points or more."""
    return side is not None and len(side.smooth_through or ()) >= _FEWEST_CORNERS - 1


def _is_curved(side: OutlineSide | None) -> bool:
    return side is not None and any(getattr(side, name) is not None for name in _CURVES)
