"""What the takeoff hands on: quantities and the lines of the plan, with no geometry library."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import TYPE_CHECKING, TypeAlias

from quotegen.working import Step

if TYPE_CHECKING:
    from quotegen.takeoff.joints.records import JointPlan
    from quotegen.takeoff.site_records import Material, PlacementFalls, Prepared, Reach

Point: TypeAlias = tuple[float, float]
"""Feet along the base line and feet out from it."""

Ring: TypeAlias = tuple[Point, ...]
"""Corner after corner round a boundary, the first not repeated at the end."""


class Against(StrEnum):
    """What lies on the other side of an edge."""

    OPEN = "open"
    HOUSE = "house"
    POOL = "pool"
    OPENING = "opening"


class EdgeOf(StrEnum):
    """The lengths of edge, and of joint, that a rate may be priced by."""

    OUTER = "outer edge"
    INNER = "inner edge"
    FORMED = "formed edge"
    HOUSE = "house edge"
    POOL = "pool edge"
    STRAIGHT = "straight edge"
    CURVED = "curved edge"
    JOINT = "joint length"


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRun:
    """One run of edge between two corners, straight or one arc, as a tape would follow it.

    Attributes:
        mark: the letter on the plan.
        against: what the edge meets.
        inner: whether it goes round a cut-out.
        points_ft: the run as drawn; two points when straight.
        length_ft: along the edge.
        chord_ft: straight from end to end.
        rise_ft: from the middle of the chord to the arc, nought when straight.
        radius_ft: of the arc, None when straight or part of an ellipse.
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
    """What a span measures."""

    OVERALL = "overall"
    POOL = "pool"
    CLEAR = "clear"


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A straight distance between two points of the plan, to 0.01 ft."""

    of: SpanOf
    start_ft: Point
    end_ft: Point
    length_ft: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaRange:
    """How sure an area is, from the accuracy of the tape readings that it rests on.

    Attributes:
        sd_sqft: one standard deviation, to 0.01 sq ft.
        low_sqft, high_sqft: between these the area lies 95 times in 100, to 0.1 sq ft.
        low_m2, high_m2: the same to 0.01 m2.
    """

    sd_sqft: Decimal
    low_sqft: Decimal
    high_sqft: Decimal
    low_m2: Decimal
    high_m2: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementTakeoff:
    """The quantities of one placement and the lines that draw it.

    Attributes:
        id: the placement's name in the job file.
        area_sqft: to 0.1 sq ft, the figure that is priced.
        area_m2: to 0.01 m2, the figure that is priced in a metric job.
        area_range: how sure the area is.
        edges_ft: each kind of edge length, to 0.1 ft.
        edges_m: each kind of edge length, to 0.01 m.
        volume_cuyd: area times thickness, unrounded but for working precision.
        order_cuyd: what to order for this placement by itself: allowance added, rounded up once.
        outer_ft: the boundary ring of each separate part.
        inner_ft: the ring of each cut-out inside.
        pools_ft: the ring of each pool that was taken away, for the drawing.
        edges: every run of edge, outer ones first.
        spans: straight distances that a tape can check.
        label_ft, label_room_ft: the roomiest place on the slab, and how far it is from any edge.
        joints: where contraction joints lie, and the panels between them.
        working: how the area, the volume and the order came about.
    """

    id: str
    area_sqft: Decimal
    area_m2: Decimal
    area_range: AreaRange
    edges_ft: Mapping[EdgeOf, Decimal]
    edges_m: Mapping[EdgeOf, Decimal]
    volume_cuyd: Decimal
    order_cuyd: Decimal
    outer_ft: tuple[Ring, ...]
    inner_ft: tuple[Ring, ...]
    pools_ft: tuple[Ring, ...]
    edges: tuple[EdgeRun, ...]
    spans: tuple[Span, ...]
    label_ft: Point
    label_room_ft: float
    joints: "JointPlan"
    working: tuple[Step, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Takeoff:
    """All placements of a job.

    Attributes:
        placements: in the order of the job file.
        volume_cuyd: net concrete of the whole job.
        order_cuyd: concrete to order for the whole job, rounded up once.
        working: how the order came about.
        materials: what to order at the chosen finish.
        reach: how concrete gets to the slab, None where no truck stand is typed.
        falls: the heights of each placement with a fall.
        prepared: the ground that others made ready, None where none is typed.
    """

    placements: tuple[PlacementTakeoff, ...]
    volume_cuyd: Decimal
    order_cuyd: Decimal
    working: tuple[Step, ...]
    materials: "tuple[Material, ...]" = ()
    reach: "Reach | None" = None
    falls: "tuple[PlacementFalls, ...]" = ()
    prepared: "Prepared | None" = None

    def placement(self, placement_id: str) -> PlacementTakeoff:
        """Return the placement of that id."""
        return next(p for p in self.placements if p.id == placement_id)
