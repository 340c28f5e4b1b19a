"""Another bid against our price on the same scope. For the owner alone."""

from dataclasses import dataclass

from quotegen.money import Money
from quotegen.pricing.costs.records import FinishCosts
from quotegen.quantity import Length
from quotegen.reading.files.other_bids import Says


@dataclass(frozen=True, slots=True, kw_only=True)
class BidItem:
    """What another bid says of one group of our lines, and what these are in our price.

    Attributes:
        scope: the scope items that the lines pay for.
        amount: what our price is less without them, tax included.
    """

    scope: tuple[str, ...]
    says: Says
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class BidNumber:
    """One number of ours against theirs.

    Attributes:
        key: thickness, base, reinforcement, strength_psi or sealer_coats.
        theirs: None where the bid does not say.
        worth: what our price would change by at their number, None where our book has no price
            that goes by it.
    """

    key: str
    ours: Length | int | str
    theirs: Length | int | str | None
    worth: Money | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BidExtra:
    """Something that they include and we offer as an extra: what it adds to our price."""

    scope: tuple[str, ...]
    name: str
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class BidComparison:
    """The gap between our price and another bid, in three parts that add up to it.

    Attributes:
        finish: at which our price is taken.
        ours, theirs: the two totals.
        gap: ours less theirs; less than zero where theirs is dearer.
        left_out: at our prices, what they say is not included.
        not_stated: at our prices, what they do not say.
        remains: the gap less both. It is no guess at anybody's cost.
        items: every part of our price, the dearest first.
        only_theirs: scope items that they include and our price does not have.
        unpriced: those of them that no rate of our book covers.
        extras: those of them that the quote offers as an extra.
        theirs_more: what our price would rise by with those extras and their numbers together, as
            far as our book has a price; less than zero where their numbers ask for less.
        under_materials: their total is under what we pay for materials alone.
        under_floors: by how much it is under the least price that our floors allow, zero where
            it is not, or where tax is on our price.
        costs: ours at that finish, None where they are not worked out.
    """

    id: str
    finish: str
    finish_name: str
    ours: Money
    theirs: Money
    gap: Money
    left_out: Money
    not_stated: Money
    remains: Money
    items: tuple[BidItem, ...]
    only_theirs: tuple[str, ...]
    unpriced: tuple[str, ...]
    extras: tuple[BidExtra, ...]
    numbers: tuple[BidNumber, ...]
    theirs_more: Money
    under_materials: bool
    under_floors: Money
    costs: FinishCosts | None
    note: str

    @property
    def if_all_in(self) -> Money:
        """How much higher ours is on the same work if theirs has all in it that is not stated."""
        return Money(self.gap - self.left_out)

    @property
    def unexplained(self) -> Money:
        """How much higher theirs is on the same work, over all that they are known to have more."""
        return Money(-self.remains - self.theirs_more)

    def that(self, says: Says) -> tuple[BidItem, ...]:
        """Return the items of which the bid says so."""
        return tuple(item for item in self.items if item.says is says)
