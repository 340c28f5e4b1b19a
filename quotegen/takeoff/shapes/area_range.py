"""How sure an area is: how far off each reading may be, and what that does to the area.

The deviation of an area is the root of the sum of squares of how far each reading moves it, that
is half the change from one deviation below to one above (JCGM 100:2008, 5.1.2 and the note to
5.1.3). Readings are taken as independent of each other.
"""

import math
from collections.abc import Iterator, Sequence
from datetime import date
from fractions import Fraction

from quotegen.quantity import rounded
from quotegen.reading.files.shapes import Shape
from quotegen.takeoff.job_units import area_m2, area_sqft
from quotegen.takeoff.plan_geometry import AreaRange
from quotegen.takeoff.shapes.border import outside_area_sqft
from quotegen.takeoff.shapes.loops import area_of, loops_of
from quotegen.takeoff.shapes.offsets import area_by_rule_sqft, readings_fault
from quotegen.takeoff.shapes.readings import Reading, readings_of, with_reading
from quotegen.trade.measuring import half_range
from quotegen.trade.rules import RuleBook

_SD_PLACES = 2
_WORKING_PLACES = 9


def area_sd_sqft(shapes: Sequence[Shape], rules: RuleBook, on: date) -> float:
    """Return the standard deviation of the area of some shapes, added or taken away."""
    moves = (move for shape in shapes for move in _moves_sqft(shape, readings_of(shape, rules, on)))
    return math.sqrt(math.fsum(move**2 for move in moves))


def area_range(square_feet: float, sd_sqft: float, rules: RuleBook, on: date) -> AreaRange:
    """Return the deviation and the 95 % range of an area, rounded as areas are."""
    half_sqft = half_range_sqft(sd_sqft, rules, on)
    low, high = max(0.0, square_feet - half_sqft), square_feet + half_sqft
    return AreaRange(
        sd_sqft=rounded(sd_sqft, _SD_PLACES),
        low_sqft=area_sqft(low),
        high_sqft=area_sqft(high),
        low_m2=area_m2(low),
        high_m2=area_m2(high),
    )


def half_range_sqft(sd_sqft: float, rules: RuleBook, on: date) -> float:
    """Return how far from the stated area the true one may lie, 95 times in 100."""
    exact = Fraction(rounded(sd_sqft, _WORKING_PLACES))
    half = half_range(exact, rules, on)
    return half.numerator / half.denominator


def typed_area_sqft(shape: Shape) -> float | None:
    """Return the area of a shape as typed; None where its readings contradict each other.

    It is asked for with each reading changed, so nothing is drawn that the area does not need:
    offsets go by their rule, and a border by the edge of its pool.
    """
    if shape.offsets is not None:
        fault = readings_fault(shape.offsets)
        return None if fault else area_by_rule_sqft(shape.offsets, shape.offsets.rule)
    if shape.border is not None:
        pools, faults = loops_of(shape.border.pool)
        if faults or len(pools) > 1:
            return None
        return outside_area_sqft(shape.border, pools[0]) - area_of(shape.border.pool, pools)
    loops, faults = loops_of(shape)
    return None if faults else area_of(shape, loops)


def _moves_sqft(shape: Shape, readings: Sequence[Reading]) -> Iterator[float]:
    """Yield how far each reading moves the area; from one side where the other is impossible."""
    for reading in readings:
        changed = [with_reading(shape, reading, step * reading.deviation) for step in (-1, 1)]
        areas = [typed_area_sqft(one) for one in changed if one is not None]
        ends = [area for area in areas if area is not None]
        if len(ends) > 1:
            yield (ends[1] - ends[0]) / 2
        elif ends:
            yield ends[0] - (typed_area_sqft(shape) or 0.0)
