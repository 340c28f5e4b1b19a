"""The private part of a rate book: what work costs the company. It never meets a customer."""

import re
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import Annotated, NamedTuple

from pydantic import AfterValidator, Field
from pydantic_core import PydanticCustomError

from quotegen.money import parse_money
from quotegen.quantity import Unit
from quotegen.reading.fields.text_fields import Rate, cut_short
from quotegen.reading.fields.typed_fields import (
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
from quotegen.reading.files.order_parts import MaterialId

_NUMBER = r"\d{1,4}(?:\.\d{1,4})?"
_HOURS = re.compile(rf"(?P<number>{_NUMBER})\s*(?:hours?|h)")
_WORK = re.compile(
    rf"(?P<number>{_NUMBER})\s*(?:hours?|h)\s*(?:(?:/|per)\s*(?P<of>{_NUMBER})?\s*)?"
    r"(?P<unit>sq ft|ft|cu yd|each|visit|mile|lump)"
)
_BOUGHT = re.compile(r"(?P<money>\$[\d,.]+)\s*(?:(?:/|per)\s*)?(?P<unit>[a-z ]+)")


class HoursFor(NamedTuple):
    """Crew hours, all people together, for so many of a unit: 1.2 for 100 sq ft."""

    hours: Fraction
    of: Fraction
    unit: Unit


class Bought(NamedTuple):
    """The price of one of what the order list buys: $31 for a ton."""

    amount: Decimal
    unit: str


def parse_hours(text: str) -> Fraction:
    """Read `2.5 hours`: of one person, or of several together."""
    match = _HOURS.fullmatch(text.strip().lower())
    if match is None:
        raise _error("not-hours", text, "is not a number of hours; type it like 2.5 hours")
    return Fraction(match["number"])


def parse_hours_for(text: str) -> HoursFor:
    """Read `1.2 hours / 100 sq ft`, `0.07 hours / ft` or `1.5 hours each`."""
    match = _WORK.fullmatch(" ".join(text.lower().split()))
    of = Fraction(match["of"] or 1) if match else Fraction(0)
    if match is None or not of:
        said = "is no rate of work; type it like 1.2 hours / 100 sq ft, 0.07 hours / ft or 2 h each"
        raise _error("not-hours-for", text, said)
    return HoursFor(Fraction(match["number"]), of, Unit(match["unit"]))


def parse_bought(text: str) -> Bought:
    """Read `$172 / cu yd`, `$31 / ton` or `$1.10 each`."""
    match = _BOUGHT.fullmatch(" ".join(text.lower().split()))
    amount = parse_money(match["money"]) if match else None
    if match is None or amount is None:
        said = "is not the price of a material; type it like $172 / cu yd, $31 / ton or $1.10 each"
        raise _error("not-bought", text, said)
    return Bought(amount, match["unit"])


def parse_charge(text: str) -> Bought:
    """Read `$110` for the whole load, or `$40 / cu yd` for each cubic yard that it lacks."""
    amount = parse_money(text.strip())
    charge = Bought(amount, "") if amount is not None else None
    if charge is None and _BOUGHT.fullmatch(" ".join(text.lower().split())):
        charge = parse_bought(text)
    if charge is None or charge.unit not in ("", Unit.CU_YD.value):
        raise _error("not-charge", text, "is no charge; type it like $110 or $40 / cu yd")
    return charge


def per_hour(rate: Rate) -> Rate:
    """Refuse a wage that is not for one hour."""
    return _per(rate, Unit.HOUR)


def per_mile(rate: Rate) -> Rate:
    """Refuse a cost of the road that is not for one mile."""
    return _per(rate, Unit.MILE)


def _per(rate: Rate, unit: Unit) -> Rate:
    if rate.unit is not unit:
        message = f"this is per {rate.unit.value}; it belongs per {unit.value}"
        raise PydanticCustomError("cost-per", message)
    return rate


def _error(code: str, text: str, said: str) -> PydanticCustomError:
    return PydanticCustomError(code, f"`{cut_short(text)}` {said}")


HoursField = Annotated[Fraction, *typed_as(parse_hours, "Crew hours", "2.5 hours")]
HoursForField = Annotated[
    HoursFor, *typed_as(parse_hours_for, "Crew hours for so much", "1.2 hours / 100 sq ft")
]
BoughtField = Annotated[Bought, *typed_as(parse_bought, "What one costs", "$31 / ton")]
ChargeField = Annotated[
    Bought, *typed_as(parse_charge, "A charge, or one for each cubic yard that lacks", "$110")
]
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


class StepHours(Model):
    """Crew hours of one rate or finish: what grows with the work, and what is fixed."""

    work: HoursForField | None = None
    fixed: HoursField = Field(default_factory=Fraction)


class MaterialPrice(Model):
    """What one costs, delivered.

    Attributes:
        waste: how much is ordered beyond the measure, as a share; the trade's usual if left out.
    """

    price: BoughtField
    waste: ShareField | None = None


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
    """What the plant and the quarry charge for each load, and what one load of stone brings.

    Attributes:
        color_load: what the plant adds for a load with color in it, to wash its drum.
    """

    concrete_load: AmountField | None = None
    color_load: AmountField | None = None
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
        set_up, clean_up: hours of each person on each day on site, whatever the size.
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
