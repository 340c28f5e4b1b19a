"""Points, rings, runs of edge and spans on the plan: the words of every part of the takeoff."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import TypeAlias

from quotegen.quantity import Units

Point: TypeAlias = tuple[float, float]
"""Feet along the base line and feet out from it."""

Ring: TypeAlias = tuple[Point, ...]
"""The corners of a boundary in order, the first not repeated at the end."""


class Against(StrEnum):
    """What lies on the other side of an edge.

    The pool is met at its coping, or the slab is cast over its beam. Where two placements meet,
    the one that has the form is beside the other, with a soft strip or dowels between; the other,
    or both where they are poured in one, is joined to it.
    """

    OPEN = "open"
    HOUSE = "house"
    POOL = "pool"
    CAST = "cast"
    OPENING = "opening"
    GARAGE = "garage"
    SLAB = "slab"
    CURB = "curb"
    WALL = "wall"
    BESIDE = "beside"
    DOWELED = "doweled"
    JOINED = "joined"


BUILDING = frozenset({Against.HOUSE, Against.GARAGE})


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRun:
    """One run of edge between two corners, straight or curved, as a tape would follow it.

    Attributes:
        mark: the letter on the plan.
        against: what the edge meets.
        inner: whether it goes around a cut-out.
        points_ft: the run as drawn; two points when straight.
        length_ft: along the edge.
        chord_ft: straight from end to end.
        rise_ft: from the middle of the chord to the curve, zero when straight.
        radius_ft: of an arc; None for anything else.
        is_oval: whether it is part of an ellipse.
        is_smooth: whether it is a smooth curve through measured points.
    """

    mark: str
    against: Against
    inner: bool
    points_ft: Ring
    length_ft: Decimal
    chord_ft: Decimal
    rise_ft: Decimal
    radius_ft: Decimal | None
    is_oval: bool = False
    is_smooth: bool = False

    @property
    def is_curved(self) -> bool:
        return self.radius_ft is not None or self.is_oval or self.is_smooth


class SpanOf(StrEnum):
    """What a span measures: a whole part of the slab, a pool, or the deck beside a pool."""

    OVERALL = "overall"
    POOL = "pool"
    CLEAR = "clear"


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A straight distance between two points on the plan, to 0.01 ft."""

    of: SpanOf
    start_ft: Point
    end_ft: Point
    length_ft: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaRange:
    """How sure an area is, from the accuracy of the readings it rests on.

    Attributes:
        sd_sqft: one standard deviation, to 0.01 sq ft.
        low_sqft, high_sqft: the area lies between these 95 times in 100, to 0.1 sq ft.
        low_m2, high_m2: the same to 0.01 m2.
    """

    sd_sqft: Decimal
    low_sqft: Decimal
    high_sqft: Decimal
    low_m2: Decimal
    high_m2: Decimal

    def ends(self, units: Units) -> tuple[Decimal, Decimal]:
        """Return the low and the high end in the area unit of a job."""
        if units is Units.US:
            return self.low_sqft, self.high_sqft
        return self.low_m2, self.high_m2


@dataclass(frozen=True, slots=True, kw_only=True)
class FlightPlan:
    """A flight on the plan.

    Attributes:
        treads_ft: the ring of each step, the first at the edge.
        at_house: whether it stands on the slab, at a wall.
        off_edge_ft: how far the edge lies from the place that was typed.
    """

    treads_ft: tuple[Ring, ...]
    at_house: bool
    off_edge_ft: float
