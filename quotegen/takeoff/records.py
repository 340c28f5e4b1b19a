"""What the takeoff hands on: quantities and the lines of the plan, with no geometry library."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import Units, rounded
from quotegen.reading.files.order_parts import AccessKind
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.joints.records import JointPlan
from quotegen.takeoff.plan_geometry import AreaRange, EdgeRun, Point, Ring, Span
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
        share: of the area of the deck, from zero to one hundred, to 0.1 %.
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
        of: what zero stands for; empty for the highest point of the slab.
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
    edges_ft: Mapping[EdgeKind, Decimal]
    edges_m: Mapping[EdgeKind, Decimal]
    volume_cuyd: Decimal
    order_cuyd: Decimal
    outer_ft: tuple[Ring, ...]
    inner_ft: tuple[Ring, ...]
    pools_ft: tuple[Ring, ...]
    edges: tuple[EdgeRun, ...]
    spans: tuple[Span, ...]
    label_ft: Point
    label_room_ft: float
    joints: JointPlan
    working: tuple[Step, ...]

    def area(self, units: Units) -> Decimal:
        """Return the area that is priced, in the area unit of a job."""
        return self.area_sqft if units is Units.US else self.area_m2


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
    materials: tuple[Material, ...] = ()
    reach: Reach | None = None
    falls: tuple[PlacementFalls, ...] = ()
    prepared: Prepared | None = None

    def placement(self, placement_id: str) -> PlacementTakeoff:
        """Return the placement of that id."""
        return next(p for p in self.placements if p.id == placement_id)

    def area(self, units: Units) -> Decimal:
        """Add up the areas of all placements, each rounded as it is priced."""
        return sum((p.area(units) for p in self.placements), start=rounded(Fraction(0), 1))
