"""Offsets from a straight base line: the area by the named rule, and the edge through the points.

The two rules are those of surveying textbooks. The drawn edge never prices anything: the area is
that of the rule, which the quote names.
"""

import math
from itertools import pairwise

from quotegen.reading.files.shapes import AreaRule, EdgeLine, Offsets
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.curve import curve_through
from quotegen.takeoff.shapes.faults import Fault, tape_of
from quotegen.takeoff.shapes.path import Loop
from quotegen.takeoff.shapes.segments import Line

_SAME_FT = 1e-6  # what two equal spacings of a metric tape may differ by as floats


def stations_ft(offsets: Offsets) -> tuple[float, ...]:
    """Return how far along the base line each reading was taken."""
    if offsets.along is not None:
        return tuple(place.ft for place in offsets.along)
    every_ft = offsets.every.ft if offsets.every else 0.0
    return tuple(n * every_ft for n in range(len(offsets.far)))


def widths_ft(offsets: Offsets) -> tuple[float, ...]:
    """Return the width of the slab at each reading."""
    return tuple(far - near for far, near in zip(*_edges_ft(offsets), strict=True))


def is_smooth(offsets: Offsets) -> bool:
    """Whether the edge is drawn smooth: as the job says, else with Simpson's rule."""
    if offsets.edge is not None:
        return offsets.edge is EdgeLine.SMOOTH
    return offsets.rule is AreaRule.SIMPSON


def area_by_rule_sqft(offsets: Offsets, rule: AreaRule) -> float:
    """Return the area by a rule; with Simpson's, a last odd strip is a trapezoid.

    Trapezoid: the sum over the strips of half the two widths times the spacing. Simpson: a third
    of the spacing, times the sum of the first and the last width, four times every other one from
    the second, and twice the rest; for an even number of equal strips.
    """
    widths, stations = widths_ft(offsets), stations_ft(offsets)
    simpson = (len(widths) - 1) // 2 * 2 if rule is AreaRule.SIMPSON else 0
    area = 0.0
    if simpson:
        even = widths[: simpson + 1]
        inner = 4 * math.fsum(even[1::2]) + 2 * math.fsum(even[2:-1:2])
        area = (stations[1] - stations[0]) / 3 * (even[0] + inner + even[-1])
    rest = list(zip(stations, widths, strict=True))[simpson:]
    return area + math.fsum((b - a) * (u + v) / 2 for (a, u), (b, v) in pairwise(rest))


def offsets_loop(offsets: Offsets) -> Loop | Fault:
    """Return the drawn edge, from the start of the base line, or what is wrong with the readings.

    Where both edges were read and meet at both ends, a smooth edge continues around the ends.
    """
    fault = readings_fault(offsets)
    if fault is not None:
        return fault.under("offsets")
    stations = stations_ft(offsets)
    far_ft, near_ft = _edges_ft(offsets)
    far = list(zip(stations, far_ft, strict=True))
    near = list(zip(stations, near_ft, strict=True))
    smooth = is_smooth(offsets)
    if smooth and offsets.near and near[0] == far[0] and near[-1] == far[-1]:
        return (curve_through([*near, *far[-2:0:-1]], closed=True),)
    parts = (
        _edge(near, smooth=smooth and offsets.near is not None),
        _edge([near[-1], far[-1]], smooth=False),
        _edge(far[::-1], smooth=smooth),
        _edge([far[0], near[0]], smooth=False),
    )
    return tuple(side for part in parts for side in part if side.length_ft > 0)


def _edges_ft(offsets: Offsets) -> tuple[tuple[float, ...], tuple[float, ...]]:
    far = tuple(reading.ft for reading in offsets.far)
    near = tuple(reading.ft for reading in offsets.near or ())
    return far, near if offsets.near is not None else tuple(0.0 for _ in far)


def _edge(points: list[Point], *, smooth: bool) -> Loop:
    if smooth and len(points) > 2:
        return (curve_through(points),)
    if all(point[1] == points[0][1] for point in points):
        points = [points[0], points[-1]]
    return tuple(Line(start=a, end=b) for a, b in pairwise(points))


def readings_fault(offsets: Offsets) -> Fault | None:
    """Return what is wrong with the readings or with the rule for them, if anything."""
    return _count_fault(offsets) or _order_fault(offsets) or _rule_fault(offsets)


def _count_fault(offsets: Offsets) -> Fault | None:
    count = len(offsets.far)
    if (offsets.every is None) == (offsets.along is None):
        both = "both are here" if offsets.every else "neither is here"
        return Fault(
            code="offsets-spacing", path=(),
            message=f"`every` is an even spacing, `along` the place of each reading; {both}",
            hint="keep one of the two")  # fmt: skip
    for name in ("along", "near"):
        other = getattr(offsets, name)
        if other is not None and len(other) != count:
            return Fault(
                code="offsets-count", path=(name,),
                message=f"`far` has {count} readings and `{name}` has {len(other)}",
                hint="type one reading for each place, also where it is 0")  # fmt: skip
    if count < 2:
        return Fault(
            code="offsets-count", path=("far",),
            message=f"`far` has {count or 'no'} reading; it takes 2 or more to make a strip",
            hint="type one reading for each place, also where it is 0")  # fmt: skip
    return None


def _order_fault(offsets: Offsets) -> Fault | None:
    stations = stations_ft(offsets)
    for n, (place, following) in enumerate(pairwise(stations), start=1):
        if following <= place:
            return Fault(
                code="offsets-order", path=("along", n),
                message=f"reading {n + 1} stands at {tape_of(following)} along the base line, not"
                f" beyond reading {n} at {tape_of(place)}",
                hint="type the readings in the order of the tape along the base line")  # fmt: skip
    for n, (far, near) in enumerate(zip(*_edges_ft(offsets), strict=True)):
        if far < near:
            return Fault(
                code="offsets-near", path=("far", n),
                message=f"at reading {n + 1} the far edge is {tape_of(far)} off the base line, less"
                f" than the near edge at {tape_of(near)}",
                hint="exchange the two, or correct one of them")  # fmt: skip
    if max(widths_ft(offsets)) <= 0:
        return Fault(
            code="offsets-near", path=("far",),
            message="the far edge lies on the near edge at every reading",
            hint="type how far the edge is from the base line at each place")  # fmt: skip
    return None


def _rule_fault(offsets: Offsets) -> Fault | None:
    if offsets.rule is not AreaRule.SIMPSON:
        return None
    stations = stations_ft(offsets)
    spacings = [b - a for a, b in pairwise(stations)]
    if max(spacings) - min(spacings) > _SAME_FT:
        return Fault(
            code="simpson-uneven", path=("rule",),
            message="Simpson's rule needs even strips; these are from"
            f" {tape_of(min(spacings))} to {tape_of(max(spacings))} wide",
            hint="type `rule: trapezoid`, or measure at even spacing")  # fmt: skip
    if len(spacings) < 2 or (len(spacings) % 2 and offsets.odd_strip is None):
        return Fault(
            code="simpson-odd-strips", path=("rule",),
            message=f"Simpson's rule needs an even number of strips; {len(offsets.far)} readings"
            f" make {len(spacings)}",
            hint="add `odd_strip: trapezoid` to take the last strip by the trapezoid rule, or type"
            " `rule: trapezoid`; a single strip is a trapezoid")  # fmt: skip
    return None
