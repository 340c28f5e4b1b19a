"""What pricing hands on: lines, totals, payments and the adjustment. No cost is among them."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.money import Money
from quotegen.quantity import Unit
from quotegen.reading.files.rate_book import Basis
from quotegen.working import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One priced row: quantity times rate is the amount, to the cent.

    Attributes:
        id: unique in the quote, such as `base.deck`.
        rate_id: the rate or finish that it comes from.
        name: what it is called on paper.
        scope: the scope items that it pays for.
        placement: the placement it belongs to, None for the whole job.
        basis: what moves it.
        quantity, unit, rate, amount: the arithmetic.
        follows_area: whether its quantity is the area of its placement.
        band: for a price by size, which band of the book it is at; None without bands.
        working: the same with its places in the files.
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


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedFinish:
    """The whole job at one finish.

    Attributes:
        id: the finish.
        name: what it is called on paper.
        visits: how many trips it takes.
        lines: every line; the total is their sum.
        total: the price of the job.
        area_price: for each placement, what one square foot (or meter) more or less moves.
    """

    id: str
    name: str
    visits: int
    lines: tuple[Line, ...]
    total: Money
    area_price: tuple["AreaPrice", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaPrice:
    """What one unit of area of a placement costs: the sum of its rates by area."""

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
    """Another finish for one placement alone, and what it moves the total by.

    Attributes:
        visits: how many trips the job takes with it.
        lines: those that the chosen price does not have, or has at another amount.
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
    """Colors that the homeowner may choose, and what they move the total by.

    Attributes:
        finish: that takes them: the chosen one if it does, else the first that is offered.
        placement: the placement whose alternate that finish is; None where it is the job's.
        colors: the rates, the base first.
        names: the same as they are called on paper.
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
    """One way to choose among all that is offered, with its own price.

    Attributes:
        finish: of the job.
        extras: ticked, in the order of the job file.
        alternates: placement and finish, where a placement does not follow the quote.
        colors: the rates of the colors; those of the quote where none are chosen.
        payments: they add up to the total.
        visits: how many trips it takes.
        lines: every line; the total is their sum.
        area_price: for each placement, what one square foot (or meter) more or less moves.
        adds: for each extra of the job, what the total has or would have more with it, all else
            as it is here.
    """

    finish: str
    extras: tuple[str, ...]
    alternates: tuple[tuple[str, str], ...]
    colors: tuple[str, ...]
    total: Money
    payments: tuple[Money, ...]
    visits: int
    lines: tuple[Line, ...]
    area_price: tuple["AreaPrice", ...]
    adds: tuple[Money, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Subtotal:
    """A part of the total: of one placement or one scope item, None for the whole job.

    Attributes:
        also: other scope items that the same lines pay for; they are in no other subtotal.
    """

    of: str | None
    also: tuple[str, ...]
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedPayment:
    """One payment: the event, its share in words of a fraction (None for what remains), the sum."""

    id: str
    when: str
    share: Fraction | None
    at_visit: str | None
    days_after: int = 0
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class AdjustmentRow:
    """The price if the forms measure so much more or less.

    Attributes:
        change: of the area, such as -1/20.
        area: of all placements then, in the unit of the quote's areas.
        difference: money more or less than the quote.
        total: the price then.
        needs_signatures: the price rises by more than the share above which the company
            promised not to pour before both have signed. The rise is of the price, and less
            than that of the area, since fixed lines stay.
    """

    change: Fraction
    area: Decimal
    difference: Money
    total: Money
    needs_signatures: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TapeEnd:
    """The price if the forms measure what the tape may have missed, all one way.

    Attributes:
        area: of all placements then, each at one end of its 95 % range.
        difference: money more or less than the quote.
        total: the price then.
    """

    area: Decimal
    difference: Money
    total: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitPrice:
    """The price of something that cannot be seen yet; no part of the total."""

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
        by_placement, by_scope: the chosen total in parts; each adds up to it exactly.
        payments: of the chosen total; they add up to it exactly.
        adjustment: worked figures at the chosen finish.
        tape_range: the price with every area at the low and at the high end of its 95 % range.
        unit_prices: for what is found in the ground.
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
