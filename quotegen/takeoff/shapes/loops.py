"""A typed shape around its own origin: its exact loops, and its area by the rule it names."""

import math

from quotegen.reading.files.shapes import AreaRule, Border, Offsets, Piece, Shape
from quotegen.takeoff.shapes.border import outside_of
from quotegen.takeoff.shapes.faults import Fault, spot, tape_of
from quotegen.takeoff.shapes.offsets import area_by_rule_sqft, offsets_loop
from quotegen.takeoff.shapes.outline import outline_crossing, outline_sides
from quotegen.takeoff.shapes.path import (
    Loop,
    backwards,
    counter_clockwise,
    crossing_of,
    signed_area_sqft,
)
from quotegen.takeoff.shapes.pieces import piece_loops
from quotegen.takeoff.shapes.two_pins import ties_loop

Loops = tuple[Loop, ...]
Faults = tuple[Fault, ...]


def loops_of(shape: Piece) -> tuple[Loops, Faults]:
    """Return the outer loop counter-clockwise and any hole clockwise, or every fault.

    A loop may still cross itself, which `crossings_of` finds.
    """
    if isinstance(shape, Shape) and shape.border is not None:
        return _border_loops(shape.border)
    if shape.outline is not None:
        loop, faults = outline_sides(shape.outline)
        return (counter_clockwise(loop),), tuple(fault.under("outline") for fault in faults)
    if shape.ties is not None:
        return _one_loop(ties_loop(shape.ties))
    if shape.offsets is not None:
        found = offsets_loop(shape.offsets)
        return _one_loop((found,) if isinstance(found, Fault) else found)
    loops = piece_loops(shape)
    return ((), (loops,)) if isinstance(loops, Fault) else (loops, ())


def crossings_of(shape: Piece, loops: Loops) -> Faults:
    """Return a fault where the edge of a shape crosses itself; a plain piece cannot."""
    if isinstance(shape, Shape) and shape.border is not None:
        faults = tuple(
            f.under("border", "pool") for f in crossings_of(shape.border.pool, loops[1:])
        )
        return faults or _border_crossing(shape.border, loops)
    if shape.outline is not None:
        as_typed, _ = outline_sides(shape.outline)  # sides are numbered in that order
        return tuple(fault.under("outline") for fault in outline_crossing(as_typed))
    crossing = crossing_of(loops[0]) if shape.kind in {"ties", "offsets"} else None
    if crossing is None:
        return ()
    return (Fault(
        code="curve-crosses", path=(shape.kind,),
        message=f"the edge through these points crosses or touches itself near"
        f" {spot(crossing[2])} from their origin, so it does not enclose one area",
        hint="type the points in order round the edge, and check the readings there"),
    )  # fmt: skip


def area_of(shape: Piece, loops: Loops) -> float:
    """Return the area that is priced: exact for the loops, for offsets by their rule."""
    if isinstance(shape, Shape) and shape.border is not None:
        outside_sqft = abs(signed_area_sqft(loops[0]))
        return outside_sqft - area_of(shape.border.pool, loops[1:])
    if shape.offsets is not None:
        return area_by_rule_sqft(shape.offsets, shape.offsets.rule)
    return abs(math.fsum(signed_area_sqft(loop) for loop in loops))


def rule_spread_sqft(offsets: Offsets) -> float:
    """Return how much the two rules differ on the same readings."""
    by_trapezoid = area_by_rule_sqft(offsets, AreaRule.TRAPEZOID)
    return abs(by_trapezoid - area_by_rule_sqft(offsets, AreaRule.SIMPSON))


def _one_loop(found: Loop | Faults) -> tuple[Loops, Faults]:
    faults = tuple(one for one in found if isinstance(one, Fault))
    loop = tuple(one for one in found if not isinstance(one, Fault))
    return ((), faults) if faults else ((counter_clockwise(loop),), ())


def _border_loops(border: Border) -> tuple[Loops, Faults]:
    pools, faults = loops_of(border.pool)
    if faults:
        return (), tuple(fault.under("border", "pool") for fault in faults)
    if len(pools) > 1:
        return (), (Fault(
            code="border-pool", path=("border", "pool"),
            message="a whole ring has a hole in it, so it is no pool",
            hint="type the pool as a `circle`"),)  # fmt: skip
    outside = outside_of(border, pools[0])
    if isinstance(outside, Fault):
        return (), (outside.under("border"),)
    return (outside, backwards(pools[0])), ()


def _border_crossing(border: Border, loops: Loops) -> Faults:
    crossing = crossing_of(loops[0])
    grows = signed_area_sqft(loops[0]) > -signed_area_sqft(loops[1])
    if crossing is None and grows:
        return ()
    near = spot(crossing[2] if crossing else loops[0][0].start)
    width_ft = border.width.ft if border.width else 0.0
    return (Fault(
        code="border-too-wide", path=("border", "width"),
        message=f"a border of {tape_of(width_ft)} runs into itself near {near} from the pool's"
        " origin: the pool bows in there more tightly than that",
        hint="make the border narrower, or measure the outside edge too, as an"
        " `outline`"),)  # fmt: skip
