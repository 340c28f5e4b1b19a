"""What pricing hands on: lines, totals, payments and the adjustment, without any cost."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.money import Money
from quotegen.pricing.quoted.no_work import NO_WORK
from quotegen.quantity import Unit
from quotegen.reading.files.company import EVERYTHING
from quotegen.reading.files.rate_book import Basis
from quotegen.working import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One priced row: its amount is quantity times rate, to the cent.

    Attributes:
        id: unique in the quote, such as `base.deck`.
        rate_id: the rate or finish that it comes from.
        name: what it is called on paper.
        scope: the scope items that it pays for.
        placement: the placement it belongs to, None for the whole job.
        basis: what moves it.
        quantity, unit, rate, amount: the arithmetic.
        follows_area: whether its quantity is the area of its placement.
        band: for a price by size, the index of its band in the book; None without bands.
        working: the arithmetic step by step, with its places in the files.
    """

    id: str
    rate_id: str
    name: str
    scope: tuple[str, ...]
    placement: str | None
    basis: Basis
    quantity: Decimal
    unit: Unit
    rate: Decimal
    amount: Money
    follows_area: bool
    working: Step
    band: int | None = None

    @property
    def pays_for_work(self) -> bool:
        return NO_WORK.isdisjoint(self.scope)

    def pays_for_any(self, items: tuple[str, ...]) -> bool:
        """Tell whether it pays for any of these scope items, or they are `everything`."""
        return EVERYTHING in items or not set(items).isdisjoint(self.scope)


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedFinish:
    """The whole job at one finish.

    Attributes:
        id: the finish.
        name: what it is called on paper.
        visits: how many trips it takes.
        lines: every line; the total is their sum.
        total: the price of the job.
        by_area: the total divided by the area of all placements, to the cent.
        area_price: for each placement, what one square foot or meter more or less costs.
    """

    id: str
    name: str
    visits: int
    lines: tuple[Line, ...]
    total: Money
    by_area: Money
    area_price: tuple["AreaPrice", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaPrice:
    """What one unit of area of a placement costs before tax and rounding.

    It is the sum of its rates by area, with the shares that follow them, less the discount.
    """

    placement: str
    rate: Decimal
    unit: Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedExtra:
    """Something that the homeowner may add, and what it adds to the total at the chosen finish."""

    id: str
    name: str
    scope: tuple[str, ...]
    lines: tuple[Line, ...]
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedAlternate:
    """Another finish for one placement alone, and what it changes the total by.

    Attributes:
        visits: how many trips the job takes with it.
        lines: those that the chosen price lacks, or has at another amount.
    """

    placement: str
    finish: str
    name: str
    visits: int
    lines: tuple[Line, ...]
    amount: Money
    total: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedColors:
    """Colors that the homeowner may choose, and what they change the total by.

    Attributes:
        finish: the first that takes them, the chosen one before all.
        placement: the placement that has the finish as an alternate; None where the job has it.
        colors: the rates, the base first.
        names: what these are called on paper.
        amount: against the price of the same finish without them.
    """

    finish: str
    placement: str | None
    colors: tuple[str, ...]
    names: tuple[str, ...]
    lines: tuple[Line, ...]
    amount: Money
    total: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class Combination:
    """One choice among everything that is offered, with its own price.

    Attributes:
        finish: of the job.
        extras: that are chosen, in the order of the job file.
        alternates: placement and finish, where a placement differs from the quote.
        colors: the rates of the colors; those of the quote where none are chosen.
        payments: they add up to the total.
        visits: how many trips it takes.
        lines: every line; the total is their sum.
        by_area: the total divided by the area of all placements, to the cent.
        area_price: for each placement, what one square foot or meter more or less costs.
        adds: for each extra of the job, what it adds to the total, all else as it is here.
    """

    finish: str
    extras: tuple[str, ...]
    alternates: tuple[tuple[str, str], ...]
    colors: tuple[str, ...]
    total: Money
    payments: tuple[Money, ...]
    visits: int
    lines: tuple[Line, ...]
    by_area: Money
    area_price: tuple["AreaPrice", ...]
    adds: tuple[Money, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Subtotal:
    """A part of the total.

    Attributes:
        of: a placement or a scope item; None for what belongs to the whole job.
        also: other scope items that the same lines pay for; they are in no other subtotal.
    """

    of: str | None
    also: tuple[str, ...]
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedPayment:
    """One payment: when it is due and its amount.

    Attributes:
        share: of the total, or of what a sum at signing leaves; None for the remainder and the sum.
        typed: the sum, where it is one; the amount is less where the total is.
    """

    id: str
    when: str
    share: Fraction | None
    typed: Money | None = None
    at_visit: str | None
    days_after: int = 0
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class AdjustmentRow:
    """The price if the forms measure so much more or less.

    Attributes:
        change: of the area, such as -1/20.
        area: of all placements after it, in the unit of the quote's areas.
        difference: how much more or less than the quote.
        total: the price after it.
        needs_signatures: whether both must sign before the pour.
    """

    change: Fraction
    area: Decimal
    difference: Money
    total: Money
    needs_signatures: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TapeEnd:
    """The price if every area lies at the same end of its 95 % range.

    Attributes:
        area: of all placements there.
        difference: how much more or less than the quote.
        total: the price there.
    """

    area: Decimal
    difference: Money
    total: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitPrice:
    """The price of what may be found in the ground; no part of the total."""

    id: str
    name: str
    scope: tuple[str, ...]
    rate: Decimal
    unit: Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedQuote:
    """Every price of a job.

    Attributes:
        finishes: the chosen one first.
        extras: each by itself, at the chosen finish.
        alternates: each by itself, the rest of the job at the chosen finish.
        color_choices: each by itself.
        combinations: every way to choose among finishes, extras, alternates and colors.
        by_placement, by_scope: the chosen total in parts, which add up to it exactly.
        payments: of the chosen total, which they add up to exactly.
        adjustment: worked figures at the chosen finish.
        tape_range: the price with every area at the low and at the high end of its 95 % range.
        unit_prices: for what may be found in the ground.
        area_unit: the unit that areas are priced in.
    """

    finishes: tuple[PricedFinish, ...]
    extras: tuple[PricedExtra, ...]
    alternates: tuple[PricedAlternate, ...]
    color_choices: tuple[PricedColors, ...]
    combinations: tuple[Combination, ...]
    by_placement: tuple[Subtotal, ...]
    by_scope: tuple[Subtotal, ...]
    payments: tuple[PricedPayment, ...]
    adjustment: tuple[AdjustmentRow, ...]
    tape_range: tuple[TapeEnd, TapeEnd]
    unit_prices: tuple[UnitPrice, ...]
    area_unit: Unit

    @property
    def chosen(self) -> PricedFinish:
        return self.finishes[0]

    def difference(self, finish: PricedFinish) -> Money:
        """Return how much more or less than the chosen finish another one costs."""
        return Money(finish.total - self.chosen.total)
