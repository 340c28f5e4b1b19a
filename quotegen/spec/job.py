"""The job file: one customer's work at one site, as typed."""

from enum import StrEnum

from pydantic import Field

from quotegen.quantity import Units
from quotegen.spec.fields import (
    AmountField,
    AngleField,
    CountField,
    DateField,
    DaysField,
    DistanceField,
    DriveTimeField,
    EmailField,
    LengthField,
    Model,
    PointField,
    QuoteNumber,
    SlopeField,
    Slug,
    Text,
    WholeField,
    Word,
)
from quotegen.spec.shapes import Shape, Side


class Use(StrEnum):
    """What a placement is for."""

    POOL_DECK = "pool deck"
    PATIO = "patio"
    WALK = "walk"
    DRIVE = "drive"
    APRON = "apron"
    PAD = "pad"


class Customer(Model):
    """Who asked for the quote."""

    name: Word
    email: EmailField | None = None
    phone: Word | None = None


class Site(Model):
    """Where the work is."""

    address: Word
    town: Word
    state: Word | None = None
    distance: DistanceField | None = None
    drive_time: DriveTimeField | None = None


class Access(Model):
    """How concrete gets from the truck to the slab."""

    note: Word
    truck_stand: PointField | None = None


class Placement(Model):
    """One slab area with its own shape, thickness, use and finish."""

    id: Slug
    name: Word | None = None
    use: Use
    add: tuple[Shape, ...] = Field(min_length=1)
    take_away: tuple[Shape, ...] = ()
    thickness: LengthField | None = None
    base: LengthField | None = None
    reinforcement: Slug | None = None
    finish: Slug | None = None
    alternates: tuple[Slug, ...] = ()
    fall: SlopeField | None = None
    falls_toward: Side | None = None
    water_goes_to: Word | None = None
    include: dict[Slug, CountField] = Field(default_factory=dict)


class Excluded(Model):
    """Something that this price does not cover, and who does it."""

    what: Word
    who: Word


class Look(Model):
    """A colour for the slab, a second tone for it, or both together."""

    base: Slug | None = None
    second: Slug | None = None

    @property
    def colours(self) -> tuple[str, ...]:
        """The colours of the look, the base first."""
        return tuple(colour for colour in (self.base, self.second) if colour)


class JobFile(Model):
    """A whole job file."""

    quote: QuoteNumber
    revision: WholeField = 1
    date: DateField
    holds_days: DaysField | None = None
    start: DateField
    units: Units = Units.US
    customer: Customer
    site: Site
    title: Word
    finish: Slug
    compare: tuple[Slug, ...] = ()
    placements: tuple[Placement, ...] = Field(min_length=1)
    include: dict[Slug, CountField] = Field(default_factory=dict)
    extras: dict[Slug, CountField] = Field(default_factory=dict)
    colour: Look | None = None
    colours: tuple[Look, ...] = ()
    tax_exempt: Word | None = None
    special_order: AmountField | None = None
    access: Access | None = None
    north: AngleField | None = None
    not_included: tuple[Excluded, ...] = ()
    references: tuple[Slug, ...] | None = None
    note: Text | None = None
    private_notes: Text | None = None
