"""What the takeoff says besides sizes: materials, reach of the truck, heights, prepared ground."""

from dataclasses import dataclass
from decimal import Decimal

from quotegen.spec.order_parts import AccessKind
from quotegen.takeoff.records import Point, Ring
from quotegen.working import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """One material of the order list.

    Attributes:
        id: what it is, such as `concrete` or `wire`; the key of its words in content/.
        placement: where it goes, None for the whole job.
        what: its make as the rate book names it, empty where the kind says enough.
        needed, unit: the quantity that the working gives.
        buy, buy_unit: what to order, rounded up to what is sold; no unit for a part that is
            ordered with the rest.
        working: how it came about.
    """

    id: str
    placement: str | None
    what: str
    needed: Decimal
    unit: str
    buy: Decimal
    buy_unit: str
    working: Step


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodReach:
    """What one way of access reaches.

    Attributes:
        share: of the area of the deck, from nought to one hundred, to 0.1 %.
        covers: whether that is all of it, but for what a rake can pull.
        edge_ft: where its reach ends on the slab.
    """

    id: str
    name: str
    kind: AccessKind
    reach_ft: Decimal
    share: Decimal
    covers: bool
    edge_ft: tuple[Ring, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """How concrete gets from where the truck stands to all of the slab.

    Attributes:
        stands_ft: where trucks stand.
        obstacles_ft: the ring of each obstacle that was typed.
        obstacle_names: what each is.
        methods: in the order of the rate book.
        route_ft: the shortest way on foot from a truck to the farthest corner, None if there
            is none.
        route: that way, turn by turn.
    """

    stands_ft: tuple[Point, ...]
    obstacles_ft: tuple[Ring, ...]
    obstacle_names: tuple[str, ...]
    methods: tuple[MethodReach, ...]
    route_ft: Decimal | None
    route: Ring


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerHeight:
    """The finished height of a corner, and the letters of the edges that meet there."""

    marks: tuple[str, str]
    at_ft: Point
    height_ft: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeDrop:
    """How high an edge lies at its highest and lowest, and how far it drops between."""

    mark: str
    highest_ft: Decimal
    lowest_ft: Decimal
    drop_ft: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementFalls:
    """The heights of one placement, over the mark that its job file names.

    Attributes:
        of: what nought stands for; empty for the highest point of the slab.
    """

    placement: str
    of: str
    corners: tuple[CornerHeight, ...]
    edges: tuple[EdgeDrop, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """Ground that others made ready, and where it is too small.

    Attributes:
        outline_ft: its rings.
        short_ft: the rings of ground that is wanted and missing.
        short_sqft: how much of it, to 0.1 sq ft.
    """

    outline_ft: tuple[Ring, ...]
    short_ft: tuple[Ring, ...]
    short_sqft: Decimal
