"""The private part of a rate book: what work costs the company. It never meets a customer."""

from enum import StrEnum
from fractions import Fraction
from typing import Annotated

from pydantic import AfterValidator, Field

from quotegen.spec.cost_fields import (
    Bought,
    HoursFor,
    parse_bought,
    parse_hours,
    parse_hours_for,
    per_hour,
    per_mile,
)
from quotegen.spec.fields import (
    AmountField,
    DistanceField,
    DriveTimeField,
    Model,
    RateField,
    ShareField,
    Slug,
    WholeField,
    Word,
    typed_as,
)

HoursField = Annotated[Fraction, *typed_as(parse_hours, "Crew hours", "2.5 hours")]
HoursForField = Annotated[
    HoursFor, *typed_as(parse_hours_for, "Crew hours for so much", "1.2 hours / 100 sq ft")
]
BoughtField = Annotated[Bought, *typed_as(parse_bought, "What one costs", "$31 / ton")]
WageField = Annotated[RateField, AfterValidator(per_hour)]
MileField = Annotated[RateField, AfterValidator(per_mile)]

SET_UP, CLEAN_UP, DRIVE = "set_up", "clean_up", "drive"
"""Hours that no rate of the book stands for: on each day on site, and on the road."""


class CostFor(StrEnum):
    """What the `cost` of a rate buys, beside crew hours and the order list."""

    SUPPLIES = "supplies"
    SUBCONTRACTOR = "subcontractor"
    DISPOSAL = "disposal"


class Bill(StrEnum):
    """What a bill is for that one job alone has."""

    PERMIT = "permit"
    SUBCONTRACTOR = "subcontractor"
    DISPOSAL = "disposal"
    SUPPLIES = "supplies"


class MaterialId(StrEnum):
    """What can be given a price: the materials of the order list that are bought."""

    CONCRETE = "concrete"
    STONE = "stone"
    WIRE = "wire"
    CHAIRS = "chairs"
    BAR = "bar"
    FIBRE = "fibre"
    PIGMENT = "pigment"
    HARDENER = "hardener"
    RELEASE = "release"
    CURING = "curing"
    SEALER_FILM = "sealer_film"
    SEALER_PENETRATING = "sealer_penetrating"
    JOINT_FILLER = "joint_filler"
    BOND_BREAKER = "bond_breaker"


BOUGHT_BY = {
    MaterialId.CONCRETE: ("cu yd",), MaterialId.STONE: ("ton",),
    MaterialId.WIRE: ("sheet", "roll"), MaterialId.CHAIRS: ("each",), MaterialId.BAR: ("bar",),
    MaterialId.FIBRE: ("lb",), MaterialId.PIGMENT: ("lb",), MaterialId.HARDENER: ("lb",),
    MaterialId.RELEASE: ("lb",), MaterialId.CURING: ("gal",), MaterialId.SEALER_FILM: ("gal",),
    MaterialId.SEALER_PENETRATING: ("gal",), MaterialId.JOINT_FILLER: ("ft",),
    MaterialId.BOND_BREAKER: ("ft",),
}  # fmt: skip
"""In which unit the order list buys each."""


class StepHours(Model):
    """Crew hours of one rate or finish: what grows with the work, and what is fixed."""

    work: HoursForField | None = None
    fixed: HoursField = Field(default_factory=Fraction)


class MaterialPrice(Model):
    """What one costs, delivered, and how much is bought beyond the order list."""

    price: BoughtField
    waste: ShareField = Field(default_factory=Fraction)


class Equipment(Model):
    """A machine that is on site on the days of one visit.

    Attributes:
        day: what a day of it costs, hired or owned.
        visit: on the days of which it is used.
        covers: the scope item that it works for, None for the whole job.
        finishes: on which it is used; empty for all.
    """

    name: Word
    day: AmountField
    visit: Slug
    covers: Slug | None = None
    finishes: tuple[Slug, ...] = ()


class Deliveries(Model):
    """What the plant and the quarry charge for each load, and what one load of stone brings."""

    concrete_load: AmountField | None = None
    stone_load: AmountField | None = None
    stone_load_tons: WholeField | None = None


class CrewTravel(Model):
    """The way to the site on each day: everybody's hours, each vehicle's miles.

    Attributes:
        people: who comes, by visit; the crew of the finish where a visit is not named.
        distance, drive_time: one way, where a job does not say its own.
    """

    vehicles: WholeField
    people: dict[Slug, WholeField] = Field(default_factory=dict)
    mile: MileField
    distance: DistanceField | None = None
    drive_time: DriveTimeField | None = None


class Floors(Model):
    """The least that a job must bring, before tax; each is the margin over all costs."""

    margin: ShareField | None = None
    crew_day: AmountField | None = None
    sq_ft: AmountField | None = None


class Overhead(Model):
    """What the company costs when nobody pours: a share of the direct cost, or for each day."""

    share: ShareField = Field(default_factory=Fraction)
    crew_day: AmountField | None = None


class Costs(Model):
    """What work costs.

    Attributes:
        wage: of one hour of one person, as paid.
        burden: payroll taxes, workers' compensation, paid leave, as a share of the wage.
        day: hours of a working day.
        crew: people on site where a finish does not say.
        set_up, clean_up: crew hours on each day on site, whatever the size.
        hours: by rate or finish.
        warranty: what is put by for calls, as a share of the direct cost.
    """

    wage: WageField
    burden: ShareField
    day: HoursField
    crew: WholeField
    set_up: HoursField = Field(default_factory=Fraction)
    clean_up: HoursField = Field(default_factory=Fraction)
    hours: dict[Slug, StepHours] = Field(default_factory=dict)
    materials: dict[MaterialId, MaterialPrice] = Field(default_factory=dict)
    deliveries: Deliveries = Field(default_factory=Deliveries)
    equipment: dict[Slug, Equipment] = Field(default_factory=dict)
    travel: CrewTravel | None = None
    warranty: ShareField = Field(default_factory=Fraction)
    overhead: Overhead = Field(default_factory=Overhead)
    floors: Floors = Field(default_factory=Floors)


class JobBill(Model):
    """A bill that this job alone has, and no customer sees."""

    what: Word
    kind: Bill
    amount: AmountField
