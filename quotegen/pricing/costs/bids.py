"""Other bids on the same scope: what of the gap is known, and what is left to explain."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.costs.bid_items import (
    BidItem,
    Items,
    answers,
    bid_items,
    is_known,
    less,
    with_tax,
)
from quotegen.pricing.costs.bid_numbers import (
    BidNumber,
    at_numbers,
    coats_of,
    numbers_of,
    told_numbers,
)
from quotegen.pricing.costs.records import CostKind, FinishCosts
from quotegen.pricing.quoted.discount import taken_off
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.lines import work_lines
from quotegen.pricing.quoted.no_work import TAX
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.pricing.quoted.shares import share_lines
from quotegen.reading.files.other_bids import BidNumbers, OtherBid, Says
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


@dataclass(frozen=True, slots=True, kw_only=True)
class BidExtra:
    """Something that they include and we offer as an extra, and what it adds to our price."""

    scope: tuple[str, ...]
    name: str
    amount: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class NearerFinish:
    """A finish that we offer, where its total lies nearer to another bid than the quoted one."""

    id: str
    name: str
    total: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class BidComparison:
    """The gap between our price and another bid, in parts that add up to it.

    Attributes:
        finish: at which our price is taken.
        ours, theirs: the two totals.
        gap: ours less theirs; less than zero where theirs is dearer.
        nearer: where the bid names no finish, one whose price is nearer to it than the quoted one.
        left_out: what they say is not included, at our prices, as far as it has one of its own.
        not_stated: what they do not mention, in the same way.
        at_their_numbers: how much lower our price is at the numbers that they told; less than zero
            where they ask for more.
        for_their_extras: the same with what they include and we offer as an extra, so at most zero.
        discount: what a discount of ours takes off our price, before tax; so at most zero.
        remains: the gap less all five; not a guess at anybody's cost.
        left_out_known, not_stated_known: whether all of it has a price of its own.
        items: every scope item of ours, the dearest that it can be first.
        only_theirs: scope items that they include and our price does not have.
        unpriced: those of them that no rate of our book covers.
        extras: those of them that the quote offers as an extra.
        under_materials: their total is under what we pay for materials alone.
        under_floors: how far it is below the least price that our floors allow; zero where it is
            not, or where our price has tax in it.
        costs: ours at that finish, None where they are not typed.
    """

    id: str
    finish: str
    finish_name: str
    ours: Money
    theirs: Money
    gap: Money
    nearer: NearerFinish | None
    left_out: Money
    not_stated: Money
    at_their_numbers: Money
    for_their_extras: Money
    discount: Money
    remains: Money
    left_out_known: bool
    not_stated_known: bool
    items: tuple[BidItem, ...]
    only_theirs: tuple[str, ...]
    unpriced: tuple[str, ...]
    extras: tuple[BidExtra, ...]
    numbers: tuple[BidNumber, ...]
    under_materials: bool
    under_floors: Money
    costs: FinishCosts | None
    note: str

    def that(self, says: Says) -> tuple[BidItem, ...]:
        """Return the items that the bid says this of."""
        return tuple(item for item in self.items if item.says is says)

    @property
    def less_numbers(self) -> tuple[BidNumber, ...]:
        """The numbers of theirs that are less than ours, or other."""
        return tuple(one for one in self.numbers if one.differs and not one.is_more)

    @property
    def more_numbers(self) -> tuple[BidNumber, ...]:
        """The numbers of theirs that are more than ours."""
        return tuple(one for one in self.numbers if one.differs and one.is_more)

    @property
    def saved_at_less(self) -> Money:
        """How much lower our price is at their lesser numbers, as far as our book knows."""
        return total(tuple(one.saves for one in self.less_numbers if one.saves))

    @property
    def beyond_ours(self) -> Money:
        """What theirs has on top of ours is worth at our prices, as far as our book knows."""
        numbers = tuple(one.worth for one in self.more_numbers if one.worth)
        return total((*numbers, *(extra.amount for extra in self.extras)))

    @property
    def states_nothing(self) -> bool:
        """Whether there is a total and no more."""
        return len(self.that(Says.NOT_STATED)) == len(self.items) and not self.only_theirs

    @property
    def same_work(self) -> bool:
        """Whether all is stated and the same, so that what remains is on the same work."""
        same = all(number.theirs == number.ours for number in self.numbers)
        everything = len(self.that(Says.INCLUDED)) == len(self.items)
        return same and everything and not self.only_theirs and self.nearer is None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Compared:
    """Our job against one bid.

    Attributes:
        told: the numbers of the bid.
        lines: of our price at its finish, without taxes.
        out, unsaid: the scope items that it leaves out, and does not state.
    """

    job: JobSpec
    takeoff: Takeoff
    finish: str
    told: BidNumbers
    lines: tuple[Line, ...]
    out: Items
    unsaid: Items

    def both(self, job: JobSpec, extras: tuple[str, ...] = ()) -> Money:
        """Return what of a job at some numbers, with some extras, is surely in both prices.

        What pays for no work, such as the small-job minimum of the quote, stays in it.
        """
        work = work_lines(job, self.takeoff, self.finish, extras)
        shares = share_lines(job, self.finish, extras, work)
        no_work = (line for line in self.lines if not line.pays_for_work)
        lines = (*work, *shares, *no_work)
        return with_tax(self.job, less(self.job, lines, self.out, self.unsaid))


def compare(
    job: JobSpec,
    takeoff: Takeoff,
    bid: OtherBid,
    offered: tuple[PricedFinish, ...],
    costs: FinishCosts | None,
) -> BidComparison:
    """Compare another bid with our price at its finish, or at ours where it names none.

    Of a line that pays for several scope items only that is left out, or not stated, which the
    book knows the worth of, or all of it where the bid says the same of each. A discount is a part
    of its own; what else pays for no work, such as the small-job minimum or what rounds our total,
    stays in what remains.
    """
    priced = price_at(job, takeoff, bid.finish or job.finish)
    lines = tuple(line for line in priced.lines if TAX not in line.scope)
    says = answers(bid, lines)
    out, unsaid = _that(says, Says.NOT_INCLUDED), _that(says, Says.NOT_STATED)
    told = told_numbers(bid, says)
    compared = _Compared(
        job=job, takeoff=takeoff, finish=priced.id, told=told, lines=lines, out=out, unsaid=unsaid
    )  # fmt: skip
    without, both = with_tax(job, less(job, lines, out)), compared.both(job)
    at_theirs = compared.both(at_numbers(job, told))
    only = tuple(i for i, said in bid.scope.items() if said is Says.INCLUDED and i not in says)
    extras = tuple(_extras(compared, only))
    with_extras = Money(at_theirs + total(tuple(extra.amount for extra in extras)))
    theirs, discount = to_cents(bid.total), Money(-taken_off(lines))
    book = job.rate_book
    covered = {item for rate in book.rates.values() for item in rate.covers}
    covered.update(item for one in book.finishes.values() for item in book.covered_by(one))
    materials = costs.spent_on(CostKind.MATERIAL) if costs else ZERO
    return BidComparison(
        id=bid.id,
        finish=priced.id,
        finish_name=priced.name,
        ours=priced.total,
        theirs=theirs,
        gap=Money(priced.total - theirs),
        nearer=None if bid.finish else _nearer(theirs, priced, offered),
        left_out=Money(priced.total - without),
        not_stated=Money(without - both),
        at_their_numbers=Money(both - at_theirs),
        for_their_extras=Money(at_theirs - with_extras),
        discount=discount,
        remains=Money(with_extras - theirs - discount),
        left_out_known=is_known(job, lines, out),
        not_stated_known=is_known(job, lines, unsaid),
        items=tuple(sorted(bid_items(job, lines, says), key=lambda item: -item.at_most)),
        only_theirs=only,
        unpriced=tuple(item for item in only if item not in covered),
        extras=extras,
        numbers=(
            *numbers_of(job, takeoff, told, lines, compared.both),
            *coats_of(book.finishes[priced.id], told),
        ),
        under_materials=bool(materials) and theirs < materials,
        under_floors=_under_floors(theirs, costs),
        costs=costs,
        note=bid.note or "",
    )


def _that(says: Mapping[str, Says], answer: Says) -> Items:
    return frozenset(item for item, said in says.items() if said is answer)


def _nearer(
    theirs: Money, quoted: PricedFinish, offered: tuple[PricedFinish, ...]
) -> NearerFinish | None:
    """Return the finish whose price is nearest to a bid, unless it is the quoted one."""
    near = min((quoted, *offered), key=lambda one: abs(one.total - theirs))
    if near.id == quoted.id:
        return None
    return NearerFinish(id=near.id, name=near.name, total=near.total)


def _extras(compared: _Compared, items: tuple[str, ...]) -> Iterator[BidExtra]:
    """Yield the extras of the quote that pay for nothing but these items, one on top of another."""
    job = at_numbers(compared.job, compared.told)
    chosen: tuple[str, ...] = ()
    before = compared.both(job)
    for extra in compared.job.extras:
        rate = job.rate_book.rates[extra]
        if set(rate.covers) <= set(items):
            chosen = (*chosen, extra)
            after = compared.both(job, chosen)
            yield BidExtra(
                scope=tuple(rate.covers), name=rate.name, amount=Money(after - before)
            )  # fmt: skip
            before = after


def _under_floors(theirs: Money, costs: FinishCosts | None) -> Money:
    if costs is None or costs.net_price != costs.price:
        return ZERO
    return max(Money(costs.walk_away - theirs), ZERO)
