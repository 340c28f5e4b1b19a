"""What the takeoff hands on: quantities and the lines of the plan, free of the geometry library."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import Units, rounded
from quotegen.reading.files.order_parts import AccessKind, MaterialId
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.joints.records import JointPlan
from quotegen.takeoff.plan_geometry import AreaRange, EdgeRun, FlightPlan, Point, Ring, Span
from quotegen.working import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """One material of the order list.

    Attributes:
        id: what it is, such as `concrete` or `wire`; the key of its words in content/.
        placement: where it goes; None for the whole job.
        what: its make as the rate book names it; empty where the id says enough.
        needed, unit: the quantity that the working gives.
        buy, buy_unit: what to order, waste and all, rounded up to what is sold; no unit for a part
            that is ordered with the rest.
        working: how the quantity was worked out.
        bought_as: what is bought; None for what only tells more of it, such as a weight.
        waste: what is ordered beyond the quantity, in per cent; None where nothing is.
    """

    id: str
    placement: str | None
    what: str
    needed: Decimal
    unit: str
    buy: Decimal
    buy_unit: str
    working: Step
    bought_as: MaterialId | None = None
    waste: Step | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodReach:
    """How much of the deck one access method reaches.

    Attributes:
        share: of the area of the deck in per cent, to 0.1.
        covers: whether that is all of it, apart from what a rake can pull.
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
        obstacle_names: what each of them is.
        methods: in the order of the rate book.
        route_ft: length of the shortest walk from a truck to the farthest corner; None if no
            walk leads there.
        route: that walk, turn by turn.
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
    """The highest and lowest point of an edge, and how far it drops between them."""

    mark: str
    highest_ft: Decimal
    lowest_ft: Decimal
    drop_ft: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementFalls:
    """The heights of one placement, above the mark that its job file names.

    Attributes:
        of: what stands at zero; empty for the highest point of the slab.
    """

    placement: str
    of: str
    corners: tuple[CornerHeight, ...]
    edges: tuple[EdgeDrop, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """Ground that others prepared, and where it is too small.

    Attributes:
        outline_ft: its rings.
        short_ft: the rings of ground that is needed and missing.
        short_sqft: how much is missing, to 0.1 sq ft.
    """

    outline_ft: tuple[Ring, ...]
    short_ft: tuple[Ring, ...]
    short_sqft: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementTakeoff:
    """The quantities of one placement and the lines that draw it.

    Attributes:
        id: the placement's id in the job file.
        area_sqft: to 0.1 sq ft, as priced.
        area_m2: to 0.01 m2, as priced in a metric job.
        area_range: how sure the area is.
        edges_ft: the length of each kind of edge, to 0.1 ft.
        edges_m: the same, to 0.01 m.
        volume_cuyd: area times thickness, to working precision.
        order_cuyd: what to order for this placement alone: allowance added, rounded up once.
        outer_ft: the outer ring of each separate part.
        inner_ft: the ring of each cut-out inside.
        pools_ft: the ring of each pool that was taken away, for the drawing.
        edges: every run of edge, outer ones first.
        spans: straight distances that a tape can check.
        flight: its steps, where the job says at which edge.
        label_ft: the roomiest place on the slab.
        joints: where the contraction joints lie, and the panels between them.
        working: how the area, the volume and the order were worked out.
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
    flight: FlightPlan | None
    label_ft: Point
    joints: JointPlan
    working: tuple[Step, ...]

    @property
    def rings_ft(self) -> tuple[Ring, ...]:
        """Every ring: around each part, and around what is cut out of it."""
        return (*self.outer_ft, *self.inner_ft)

    def area(self, units: Units) -> Decimal:
        """Return the area that is priced, in the area unit of a job."""
        return self.area_sqft if units is Units.US else self.area_m2


@dataclass(frozen=True, slots=True, kw_only=True)
class Takeoff:
    """The takeoff of a job.

    Attributes:
        placements: in the order of the job file.
        volume_cuyd: net concrete of the whole job.
        order_cuyd: concrete to order for the whole job, rounded up once.
        working: how the order was worked out.
        materials: what to order for the chosen finish.
        reach: how concrete gets to the slab; None where no truck stand is typed.
        falls: the heights of each placement that has a fall.
        prepared: the ground that others prepared; None where none is typed.
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
