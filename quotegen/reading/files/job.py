"""The job file: one customer's work at one site, as typed."""

from datetime import date, timedelta
from enum import StrEnum
from typing import Annotated, Self

from pydantic import AfterValidator, Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.quantity import Length, Units
from quotegen.reading.fields.typed_fields import (
    AmountField,
    AngleField,
    CountField,
    DateField,
    DaysField,
    DistanceField,
    DriveTimeField,
    EmailField,
    LanguageCode,
    LengthField,
    Model,
    PickedId,
    PointField,
    QuoteNumber,
    ShareField,
    SlopeField,
    Slug,
    StateCode,
    Text,
    WholeField,
    Word,
    YesNoField,
    cut_to,
)
from quotegen.reading.files.after_signing import Accepted, Actual, Change, Completed, Measured, Paid
from quotegen.reading.files.costs import JobBill
from quotegen.reading.files.forecast import Forecast
from quotegen.reading.files.other_bids import OtherBid
from quotegen.reading.files.shapes import Shape
from quotegen.reading.files.site_parts import (
    Along,
    AwayFrom,
    Between,
    DeepEdge,
    Drain,
    Flight,
    GroundHeight,
    Obstacle,
    PreparedGround,
    StatedHeight,
    Toward,
)

MOST_PLACEMENTS, MOST_SHAPES, MOST_CHANGES, MOST_POURS, MOST_PHOTOS = 40, 100, 100, 5, 12
"""Far more than a yard has; each is worked out and drawn, which takes its time."""


class Responsibility(StrEnum):
    """Work that content/ has a page for: it says who does it where nothing else is typed."""

    PERMITS = "permits"
    PRIVATE_LINES = "private_lines"
    GROUND = "ground"
    POOL_FILL = "pool_fill"
    POOL_PIPES = "pool_pipes"
    BONDING = "bonding"
    POOL_SEAL = "pool_seal"
    BARRIER = "barrier"
    LAWN = "lawn"
    DOWNSPOUTS = "downspouts"
    COVERS = "covers"
    SHARED_WAY = "shared_way"


class Use(StrEnum):
    """What a placement is for."""

    POOL_DECK = "pool deck"
    PATIO = "patio"
    WALK = "walk"
    DRIVE = "drive"
    APRON = "apron"
    PAD = "pad"


ROUND_A_POOL = frozenset({Use.POOL_DECK})
DRIVEN_ON = frozenset({Use.DRIVE, Use.APRON, Use.PAD})


class Customer(Model):
    """Who asked for the quote.

    Attributes:
        over_65: or just 65: some states give more days to cancel.
    """

    name: Word
    first_names: Word | None = None
    email: EmailField | None = None
    phone: Word | None = None
    over_65: YesNoField = False


class Site(Model):
    """Where the work is."""

    address: Word
    town: Word
    state: StateCode | None = None
    distance: DistanceField | None = None
    drive_time: DriveTimeField | None = None


class Wish(Model):
    """What the homeowner asked for, and by which day: `what: the pool open`."""

    what: Word
    by: DateField


class Access(Model):
    """How concrete gets from the truck to the slab.

    Attributes:
        note: in the owner's words.
        truck_stand, truck_stands: where a truck can stand.
        obstacles: what the way goes round.
        chute: the length of the truck's chute, if it is not the one in the rate book.
        method: the way to use, one of `access` in the rate book; the cheapest if left out.
    """

    note: Word
    truck_stand: PointField | None = None
    truck_stands: tuple[PointField, ...] = Field(default=(), max_length=10)
    obstacles: tuple[Obstacle, ...] = Field(default=(), max_length=40)
    chute: LengthField | None = None
    method: PickedId | None = None

    @property
    def stands(self) -> tuple[tuple[Length, Length], ...]:
        """Every place where a truck can stand."""
        return (*((self.truck_stand,) if self.truck_stand else ()), *self.truck_stands)


class JointLine(Model):
    """One contraction joint of the owner's: straight from one point of the plan to another."""

    from_: PointField = Field(alias="from")
    to: PointField


class Placement(Model):
    """One slab area with its own shape, thickness, use and finish.

    Attributes:
        between: what stands between it and those before it, where they meet.
        fall: of the finished top; `falls_toward` or `falls_away_from` says which way.
        drains: drawn on the plan; an edge with a drain along it stands in `drained_edges`.
        over_lawn: how high the finished top stands over the lawn beside it.
        below_sill: how far the finished top lies below the sill of the door.
    """

    id: Slug
    name: Word | None = None
    use: Use
    add: tuple[Shape, ...] = Field(min_length=1, max_length=MOST_SHAPES)
    take_away: tuple[Shape, ...] = Field(default=(), max_length=MOST_SHAPES)
    thickness: LengthField | None = None
    base: LengthField | None = None
    reinforcement: PickedId | None = None
    finish: PickedId | None = None
    alternates: tuple[PickedId, ...] = ()
    between: Between = Between.FILLER
    fall: SlopeField | None = None
    falls_toward: Toward = Field(default=(), max_length=2)
    falls_away_from: AwayFrom = Field(default=(), max_length=2)
    drains: tuple[Drain, ...] = Field(default=(), max_length=20)
    drained_edges: tuple[Along, ...] = ()
    water_goes_to: Word | None = None
    stated_height: StatedHeight | None = None
    over_lawn: LengthField | None = None
    below_sill: LengthField | None = None
    ground: tuple[GroundHeight, ...] = ()
    thickened_edge: DeepEdge | None = None
    turned_down_edge: DeepEdge | None = None
    steps: Flight | None = None
    include: dict[PickedId, CountField] = Field(default_factory=dict)
    joints: tuple[JointLine, ...] | None = None


class Subcontractor(Model):
    """Who does a part of the work for us; some states want each one named in the contract."""

    name: Word
    does: Word
    address: Word | None = None
    license: Word | None = None


class Excluded(Model):
    """Something that this price does not cover, and who does it.

    `responsibility` names the responsibility of content/ that it stands in for, such as `bonding`.
    """

    what: Word
    who: Word
    responsibility: Responsibility | None = None


class Look(Model):
    """A color for the slab, a second tone for it, or both together."""

    base: PickedId | None = None
    second: PickedId | None = None

    @property
    def colors(self) -> tuple[str, ...]:
        """The colors of the look, the base first."""
        return tuple(color for color in (self.base, self.second) if color)


class Discount(Model):
    """What is taken off the price on purpose, before tax: a sum, or a share of the price.

    Attributes:
        name: why, as the homeowner reads it.
    """

    name: Word
    amount: AmountField | None = None
    share: ShareField | None = None

    @model_validator(mode="after")
    def _sum_or_share(self) -> Self:
        if (self.amount is None) == (self.share is None) or not (self.amount or self.share):
            raise PydanticCustomError(
                "discount-how-much",
                "a discount is a sum or a share above zero; type `amount: $300` or `share: 3 %`",
            )
        return self


def _pours_in_a_week(pours: int) -> int:
    if not 1 <= pours <= MOST_POURS:
        said = f"a slab is poured in 1 to {MOST_POURS} parts; type it like `pours: 2`"
        raise PydanticCustomError("too-many-pours", said)
    return pours


class Job(Model):
    """A job file without what is private in it: this is what goes on to every later stage.

    Attributes:
        language: of its papers, a folder in the company's content/; English if left out.
        pours: in how many parts the slab is poured, each on a day of its own.
    """

    quote: QuoteNumber
    revision: WholeField = 1
    date: DateField
    holds_days: DaysField | None = None
    start: DateField
    units: Units = Units.US
    language: LanguageCode | None = None
    customer: Customer
    site: Site
    title: Word
    finish: PickedId
    compare: tuple[PickedId, ...] = ()
    placements: tuple[Placement, ...] = Field(min_length=1, max_length=MOST_PLACEMENTS)
    include: dict[PickedId, CountField] = Field(default_factory=dict)
    extras: dict[PickedId, CountField] = Field(default_factory=dict)
    color: Look | None = None
    colors: tuple[Look, ...] = ()
    discount: Discount | None = None
    tax_exempt: Word | None = None
    pours: Annotated[WholeField, AfterValidator(_pours_in_a_week)] = 1
    access: Access | None = None
    prepared_ground: PreparedGround | None = None
    north: AngleField | None = None
    not_included: tuple[Excluded, ...] = ()
    subcontractors: tuple[Subcontractor, ...] = ()
    references: tuple[PickedId, ...] | None = None
    accepted: Accepted | None = None
    paid: tuple[Paid, ...] = ()
    measured: Measured | None = None
    changes: tuple[Change, ...] = Field(default=(), max_length=MOST_CHANGES)
    completed: Completed | None = None
    forecast: Forecast | None = None
    wish: Wish | None = None
    note: Text | None = None


class SitePhoto(Model):
    """A picture of the site beside the job file; only one that is `shown` reaches the customer."""

    file: Word
    caption: Word
    shown: YesNoField = False


class JobFile(Job):
    """A whole job file: a job, and what its owner alone may see.

    Attributes:
        photos: of the site, for the crew; of these the customer is handed those that are shown.
        special_order: what materials cost that are ordered for this job alone.
        private_costs: bills that this job alone has.
        under_floor: why it is quoted although it is under a floor of the owner's.
        actual: how it came out.
    """

    photos: tuple[SitePhoto, ...] = Field(default=(), max_length=MOST_PHOTOS)
    special_order: AmountField | None = None
    private_notes: Text | None = None
    other_bids: tuple[OtherBid, ...] = Field(default=(), max_length=6)
    private_costs: tuple[JobBill, ...] = ()
    under_floor: Word | None = None
    actual: Actual | None = None

    def public(self) -> Job:
        """Return the job without its private keys."""
        return cut_to(Job, self)


def holds_until(job: Job, usual_days: int) -> date:
    """Return the last day of an offer: so many days after its date as it says, or the usual."""
    return job.date + timedelta(days=job.holds_days or usual_days)
