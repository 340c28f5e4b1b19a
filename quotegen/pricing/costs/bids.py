"""Other bids on the same scope: what they leave out, what they do not state, what remains."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.costs.records import CostKind, FinishCosts
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.no_work import NO_WORK, TAX
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.shares import shares_again
from quotegen.pricing.quoted.tax import tax_lines
from quotegen.quantity import Length
from quotegen.reading.files.other_bids import OtherBid, Says
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


@dataclass(frozen=True, slots=True, kw_only=True)
class BidItem:
    """What another bid says of one group of our lines, and what they are worth in our price.

    Attributes:
        scope: the scope items that the lines pay for.
        amount: how much lower our price is without them, tax included.
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
        worth: by how much our price would change at their number, None where no price of our
            book depends on it.
    """

    key: str
    ours: Length | int | str
    theirs: Length | int | str | None
    worth: Money | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BidExtra:
    """Something that they include and we offer as an extra, and what it adds to our price."""

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
        left_out: what they say is not included, at our prices.
        not_stated: what they do not mention, at our prices.
        remains: the gap less both; not a guess at anybody's cost.
        items: every part of our price, the dearest first.
        only_theirs: scope items that they include and our price does not have.
        unpriced: those of them that no rate of our book covers.
        extras: those of them that the quote offers as an extra.
        theirs_more: how much our price would rise with those extras and their numbers together,
            as far as our book prices them; less than zero where their numbers ask for less.
        under_materials: their total is under what we pay for materials alone.
        under_floors: how far it is below the least price that our floors allow; zero where it is
            not, or where our price has tax in it.
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
        """How much higher ours is on the same work if theirs includes what it does not state."""
        return Money(self.gap - self.left_out)

    @property
    def unexplained(self) -> Money:
        """How much higher theirs is on the same work, beyond all that they are known to add."""
        return Money(-self.remains - self.theirs_more)

    def that(self, says: Says) -> tuple[BidItem, ...]:
        """Return the items that the bid says this of."""
        return tuple(item for item in self.items if item.says is says)


def with_their_numbers(job: JobSpec, bid: OtherBid) -> JobSpec:
    """Return the job at the thickness and reinforcement of a bid, where our book has them."""
    return _with(_with(job, thickness=bid.numbers.thickness), reinforcement=_known(job, bid))


def _with(
    job: JobSpec, *, thickness: Length | None = None, reinforcement: str | None = None
) -> JobSpec:
    placements = tuple(
        replace(
            p,
            thickness=thickness or p.thickness,
            reinforcement=reinforcement or p.reinforcement,
        )
        for p in job.placements
    )
    return replace(job, placements=placements)


def _known(job: JobSpec, bid: OtherBid) -> str | None:
    steel = bid.numbers.reinforcement
    return steel if steel in job.rate_book.reinforcement else None


def numbers_of(
    job: JobSpec, takeoff: Takeoff, bid: OtherBid, finish: str, whole: Money
) -> Iterator[BidNumber]:
    """Yield our numbers, those of the largest placement, beside theirs."""
    areas = {p.id: p.area_sqft for p in takeoff.placements}
    main = max(job.placements, key=lambda placement: areas[placement.id])
    theirs, book = bid.numbers, job.rate_book

    def worth(changed: JobSpec) -> Money:
        return Money(price_at(changed, takeoff, finish).total - whole)

    thick, steel = theirs.thickness, _known(job, bid)
    yield BidNumber(
        key="thickness",
        ours=main.thickness,
        theirs=thick,
        worth=worth(_with(job, thickness=thick)) if thick else None,
    )
    yield BidNumber(key="base", ours=main.base, theirs=theirs.base, worth=None)
    yield BidNumber(
        key="reinforcement",
        ours=book.reinforcement[main.reinforcement].name,
        theirs=book.reinforcement[steel].name if steel else theirs.reinforcement,
        worth=worth(_with(job, reinforcement=steel)) if steel else None,
    )
    yield BidNumber(
        key="strength_psi", ours=book.mix.strength_psi, theirs=theirs.strength_psi, worth=None
    )
    coats = book.finishes[finish].sealer_coats
    if coats is not None:
        yield BidNumber(key="sealer_coats", ours=coats, theirs=theirs.sealer_coats, worth=None)


def compare(
    job: JobSpec, takeoff: Takeoff, bid: OtherBid, costs: FinishCosts | None
) -> BidComparison:
    """Compare another bid with our price at its finish, or at ours where it names none.

    A line counts as left out, or as included, if the bid says so of everything that it pays for;
    if anything of it is not stated, all of it counts as not stated. What pays for no work, such as
    the small-job minimum or a discount, stays in what remains.
    """
    finish = bid.finish or job.finish
    priced = price_at(job, takeoff, finish)
    lines = tuple(line for line in priced.lines if TAX not in line.scope)
    out = tuple(line for line in lines if _says(bid, line.scope) is Says.NOT_INCLUDED)
    unstated = tuple(line for line in lines if _says(bid, line.scope) is Says.NOT_STATED)
    without = _sum(job, tuple(line for line in lines if line not in out))
    certain = _sum(job, tuple(line for line in lines if line not in (*out, *unstated)))
    theirs = to_cents(bid.total)
    gap = Money(priced.total - theirs)
    left_out, not_stated = Money(priced.total - without), Money(without - certain)
    ours = {item for line in lines for item in line.scope}
    only = tuple(i for i, says in bid.scope.items() if says is Says.INCLUDED and i not in ours)
    covered = {item for rate in job.rate_book.rates.values() for item in rate.covers}
    extras = tuple(_extras(job, takeoff, finish, priced.total, only))
    at_theirs = price_at(
        with_their_numbers(job, bid), takeoff, finish, tuple(_offered(job, only))
    )  # fmt: skip
    materials = costs.spent_on(CostKind.MATERIAL) if costs else ZERO
    return BidComparison(
        id=bid.id,
        finish=finish,
        finish_name=priced.name,
        ours=priced.total,
        theirs=theirs,
        gap=gap,
        left_out=left_out,
        not_stated=not_stated,
        remains=Money(gap - left_out - not_stated),
        items=_items(job, bid, lines, priced.total),
        only_theirs=only,
        unpriced=tuple(item for item in only if item not in covered),
        extras=extras,
        numbers=tuple(numbers_of(job, takeoff, bid, finish, priced.total)),
        theirs_more=Money(at_theirs.total - priced.total),
        under_materials=bool(materials) and theirs < materials,
        under_floors=_under_floors(theirs, costs),
        costs=costs,
        note=bid.note or "",
    )


def _says(bid: OtherBid, scope: tuple[str, ...]) -> Says:
    if not NO_WORK.isdisjoint(scope):
        return Says.INCLUDED
    answers = {bid.scope.get(item, Says.NOT_STATED) for item in scope}
    return answers.pop() if len(answers) == 1 else Says.NOT_STATED


def _sum(job: JobSpec, lines: tuple[Line, ...]) -> Money:
    """Add lines up, each share of the lines that are there, with the tax on all of them."""
    lines = shares_again(job.rate_book, lines)
    return total(tuple(line.amount for line in (*lines, *tax_lines(job, lines))))


def _items(
    job: JobSpec, bid: OtherBid, lines: tuple[Line, ...], whole: Money
) -> tuple[BidItem, ...]:
    groups = dict.fromkeys(line.scope for line in lines if line.pays_for_work)
    items = tuple(
        BidItem(
            scope=scope,
            says=_says(bid, scope),
            amount=Money(whole - _sum(job, tuple(o for o in lines if o.scope != scope))),
        )
        for scope in groups
    )
    return tuple(sorted(items, key=lambda item: -item.amount))


def _offered(job: JobSpec, items: tuple[str, ...]) -> Iterator[str]:
    """Yield the extras of the quote that pay for nothing but these scope items."""
    for extra in job.extras:
        if set(job.rate_book.rates[extra].covers) <= set(items):
            yield extra


def _extras(
    job: JobSpec, takeoff: Takeoff, finish: str, whole: Money, items: tuple[str, ...]
) -> Iterator[BidExtra]:
    for extra in _offered(job, items):
        rate = job.rate_book.rates[extra]
        after = price_at(job, takeoff, finish, (extra,))
        yield BidExtra(
            scope=tuple(rate.covers), name=rate.name, amount=Money(after.total - whole)
        )  # fmt: skip


def _under_floors(theirs: Money, costs: FinishCosts | None) -> Money:
    if costs is None or costs.net_price != costs.price:
        return ZERO
    return max(Money(costs.walk_away - theirs), ZERO)
