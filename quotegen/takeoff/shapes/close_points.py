"""Measured points that are closer together than the tape can tell."""

import math
from collections.abc import Iterator
from datetime import date
from itertools import pairwise
from typing import TypeAlias

from quotegen.reading.files.shapes import Shape
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.faults import Fault, tape_of
from quotegen.takeoff.shapes.offsets import stations_ft
from quotegen.takeoff.shapes.readings import accuracy_of
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.shapes.two_pins import tied_point
from quotegen.trade.rules import RuleBook

Path: TypeAlias = tuple[str | int, ...]
Chain: TypeAlias = list[tuple[Path, Point]]


def close_points(spec: PlacementSpec, rules: RuleBook, on: date) -> tuple[Fault, ...]:
    """Return a fault for each measured point that the tape cannot tell from the one before it.

    Plain corners may be as close as 1/8 in, which is checked elsewhere: a short side may be meant.
    """
    groups = (("add", spec.add), ("take_away", spec.take_away))
    return tuple(
        fault.under(group, index)
        for group, shapes in groups
        for index, shape in enumerate(shapes)
        for fault in _of_shape(shape, accuracy_of(shape, rules, on).ft)
    )


def _of_shape(shape: Shape, accuracy_ft: float) -> Iterator[Fault]:
    for chain in (*_smooth(shape), _tied(shape), _stations(shape)):
        for (_, before), (path, after) in pairwise(chain):
            apart_ft = math.dist(before, after)
            if apart_ft <= accuracy_ft:
                yield Fault(
                    code="points-too-close", path=path,
                    message=f"this point is {tape_of(apart_ft)} from the one before it; a reading"
                    f" here is good to {tape_of(accuracy_ft)}, so they cannot be told apart",
                    hint="leave one of the two out, or say how near the tape was read with"
                    " `accuracy`")  # fmt: skip


def _smooth(shape: Shape) -> Iterator[Chain]:
    """Yield each smooth side from its start to its end."""
    sides = shape.outline or ()
    for index, side in enumerate(sides):
        before = sides[index - 1]
        start = before.to or before.from_
        if side.smooth_through and side.to and start:
            here: Path = ("outline", index)
            through = enumerate(side.smooth_through)
            yield [
                (here, point_ft(start)),
                *(((*here, "smooth_through", n), point_ft(point)) for n, point in through),
                ((*here, "to"), point_ft(side.to)),
            ]


def _tied(shape: Shape) -> Chain:
    """Return the tied points, and the first again after the last; none while a tape is wrong."""
    ties = shape.ties
    if ties is None:
        return []
    chain: Chain = []
    for n in range(len(ties.points)):
        point = tied_point(ties, n)
        if isinstance(point, Fault):
            return []
        chain.append((("ties", "points", n), point))
    return [*chain, *((chain[-1][0], first) for _, first in chain[:1])]


def _stations(shape: Shape) -> Chain:
    """Return the places along the base line; none if they are out of order."""
    offsets = shape.offsets
    if offsets is None or offsets.along is None:
        return []
    stations = stations_ft(offsets)
    if list(stations) != sorted(set(stations)):
        return []
    return [(("offsets", "along", n), (at, 0.0)) for n, at in enumerate(stations)]
