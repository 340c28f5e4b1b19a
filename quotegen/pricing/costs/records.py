"""What a job costs and what that leaves: records for the owner alone."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from quotegen.money import Money, to_cents, total
from quotegen.quantity import decimal_of, rounded


class CostKind(StrEnum):
    """What money is spent on, in the order of the cost sheet."""

    LABOR = "labor"
    MATERIAL = "material"
    DELIVERY = "delivery"
    EQUIPMENT = "equipment"
    ACCESS = "access"
    TRAVEL = "travel"
    SUPPLIES = "supplies"
    DISPOSAL = "disposal"
    SUBCONTRACTOR = "subcontractor"
    PERMIT = "permit"
    WARRANTY = "warranty"
    OVERHEAD = "overhead"
    TAX = "tax"


@dataclass(frozen=True, slots=True, kw_only=True)
class CostItem:
    """One thing that costs money: quantity times rate is the amount, to the cent.

    Attributes:
        id: a rate or finish, a material, a piece of equipment, or a fixed word such as `set_up`.
        name: as the book or the job has it; empty where content/ names the id.
        placement: where it goes, None for the whole job.
        quantity, unit, rate, amount: the arithmetic.
        lines: the lines of the price that pay for it; none where all of them do.
    """

    kind: CostKind
    id: str
    name: str
    placement: str | None
    quantity: Decimal
    unit: str
    rate: Decimal
    amount: Money
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CostLine:
    """What one line of the price costs by itself; None where that is not known."""

    line: str
    name: str
    price: Money
    cost: Money | None
    margin: Money | None


class MissingKind(StrEnum):
    """What a cost sheet cannot know."""

    COSTS = "costs"
    LINE = "line"
    MATERIAL = "material"
    ROAD = "road"


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """Something that is counted as costing nothing because the book has no cost for it."""

    kind: MissingKind
    name: str


class FloorKind(StrEnum):
    """What a floor is on."""

    MARGIN = "margin"
    CREW_DAY = "crew_day"
    SQ_FT = "sq_ft"


@dataclass(frozen=True, slots=True, kw_only=True)
class Floor:
    """One floor against what the job brings.

    Attributes:
        wanted, found: a share for the margin, dollars for the others.
        price: the least price before tax that reaches it.
    """

    kind: FloorKind
    wanted: Fraction
    found: Fraction
    price: Money

    @property
    def holds(self) -> bool:
        return self.found >= self.wanted


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishCosts:
    """Price against cost for the whole job at one finish.

    Attributes:
        lines: each line's price, and the cost of what is for it alone.
        items: all costs; they add up to `cost`.
        price, cost, margin: of the whole; tax is in the price and in the cost.
        net_price: the price before tax.
        margin_share: the margin as a share of the price before tax.
        crew_days: days on site.
        area_sqft: of all placements.
        floors: those that the owner set.
        missing: what is counted as costing nothing.
    """

    finish: str
    name: str
    lines: tuple[CostLine, ...]
    items: tuple[CostItem, ...]
    price: Money
    net_price: Money
    cost: Money
    margin: Money
    margin_share: Fraction
    crew_days: int
    area_sqft: Decimal
    floors: tuple[Floor, ...]
    missing: tuple[Missing, ...]

    @property
    def is_known(self) -> bool:
        """Whether the owner typed what anything costs; a tax is collected and handed on."""
        return any(item.kind is not CostKind.TAX for item in self.items)

    @property
    def without_cost(self) -> tuple[str, ...]:
        """The names of lines that the book has no cost for."""
        return tuple(m.name for m in self.missing if m.kind is MissingKind.LINE)

    @property
    def under_cost(self) -> tuple[CostLine, ...]:
        """The lines that are priced under what they cost by themselves."""
        return tuple(line for line in self.lines if line.margin is not None and line.margin < 0)

    @property
    def holds(self) -> bool:
        return all(floor.holds for floor in self.floors)

    @property
    def walk_away(self) -> Money:
        """The least price before tax that reaches every floor; without floors, the cost."""
        net_cost = Money(self.net_price - self.margin)
        return max((floor.price for floor in self.floors), default=net_cost)

    def margin_per(self, count: Fraction) -> Money:
        """Return the margin per day on site, square foot or other count, to the cent."""
        return to_cents(decimal_of(Fraction(self.margin) / count))

    def of_kind(self, kind: CostKind) -> tuple[CostItem, ...]:
        """Return the items of one kind."""
        return tuple(item for item in self.items if item.kind is kind)

    def spent_on(self, kind: CostKind) -> Money:
        """Return what one kind of cost comes to."""
        return total(tuple(item.amount for item in self.of_kind(kind)))

    @property
    def hours(self) -> Decimal:
        """All crew hours on site."""
        hours = (item.quantity for item in self.of_kind(CostKind.LABOR))
        return sum(hours, start=rounded(Fraction(0), 2))


class What(StrEnum):
    """What is changed."""

    EXTRA = "extra"
    FINISH = "finish"
    ALTERNATE = "alternate"
    LESS_AREA = "less_area"
    LEAVE_OUT = "leave_out"
    BASE_BY_OWNER = "base_by_owner"
    TWO_PHASES = "two_phases"
    MORE_TRUCK = "more_truck"
    RAIN_DAY = "rain_day"
    AREA = "area"
    DISCOUNT = "discount"


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIf:
    """The job with one thing changed, against the quote.

    Attributes:
        name: of an extra, finish or rate; empty where the kind says it all.
        change: of the area, or of the price in a discount, as a share; None for any other.
        price, margin, margin_share: after the change.
        price_change, cost_change: against the quote.
        floors: after the change.
    """

    what: What
    name: str
    change: Fraction | None
    price: Money
    price_change: Money
    cost_change: Money
    margin: Money
    margin_share: Fraction
    floors: tuple[Floor, ...]

    @property
    def holds(self) -> bool:
        return all(floor.holds for floor in self.floors)
