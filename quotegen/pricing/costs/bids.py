"""Other bids on the same scope: what they leave out, what they do not state, what remains."""

from collections.abc import Iterator
from dataclasses import replace

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.costs.bid_records import BidComparison, BidExtra, BidItem, BidNumber
from quotegen.pricing.costs.costs import MINIMUM
from quotegen.pricing.costs.records import CostKind, FinishCosts
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.tax import TAX, tax_lines
from quotegen.quantity import Length
from quotegen.reading.files.other_bids import OtherBid, Says
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


def with_their_numbers(job: JobSpec, bid: OtherBid) -> JobSpec:
    """Return the job at the thickness and reinforcement of a bid, where our book has them."""
    said = bid.numbers
    return _with(_with(job, thickness=said.thickness), reinforcement=_known(job, bid))


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
    """Yield our numbers against theirs, those of the largest placement."""
    areas = {p.id: p.area_sqft for p in takeoff.placements}
    main = max(job.placements, key=lambda placement: areas[placement.id])
    said, book = bid.numbers, job.rate_book

    def worth(then: JobSpec) -> Money:
        return Money(price_at(then, takeoff, finish).total - whole)

    thick, steel = said.thickness, _known(job, bid)
    yield BidNumber(
        key="thickness",
        ours=main.thickness,
        theirs=thick,
        worth=worth(_with(job, thickness=thick)) if thick else None,
    )
    yield BidNumber(key="base", ours=main.base, theirs=said.base, worth=None)
    yield BidNumber(
        key="reinforcement",
        ours=book.reinforcement[main.reinforcement].name,
        theirs=book.reinforcement[steel].name if steel else said.reinforcement,
        worth=worth(_with(job, reinforcement=steel)) if steel else None,
    )
    yield BidNumber(
        key="strength_psi", ours=book.mix.strength_psi, theirs=said.strength_psi, worth=None
    )
    coats = book.finishes[finish].sealer_coats
    if coats is not None:
        yield BidNumber(key="sealer_coats", ours=coats, theirs=said.sealer_coats, worth=None)


def compare(
    job: JobSpec, takeoff: Takeoff, bid: OtherBid, costs: FinishCosts | None
) -> BidComparison:
    """Set another bid against our price at its finish, or at ours where it names none.

    A line counts as left out, or as included, where that is said of all that it pays for;
    a line of which anything is not stated hangs on that. The small-job minimum is no work, and
    stays in what remains.
    """
    finish = bid.finish or job.finish
    priced = price_at(job, takeoff, finish)
    lines = tuple(line for line in priced.lines if TAX not in line.scope)
    out = tuple(line for line in lines if _says(bid, line.scope) is Says.NOT_INCLUDED)
    unsaid = tuple(line for line in lines if _says(bid, line.scope) is Says.NOT_STATED)
    without = _sum(job, tuple(line for line in lines if line not in out))
    certain = _sum(job, tuple(line for line in lines if line not in (*out, *unsaid)))
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
    if MINIMUM in scope:
        return Says.INCLUDED
    said = {bid.scope.get(item, Says.NOT_STATED) for item in scope}
    return said.pop() if len(said) == 1 else Says.NOT_STATED


def _sum(job: JobSpec, lines: tuple[Line, ...]) -> Money:
    """Return what lines add up to with the tax on them."""
    return total(tuple(line.amount for line in (*lines, *tax_lines(job, lines))))


def _items(
    job: JobSpec, bid: OtherBid, lines: tuple[Line, ...], whole: Money
) -> tuple[BidItem, ...]:
    groups = dict.fromkeys(line.scope for line in lines if MINIMUM not in line.scope)
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
    """Yield the extras of the quote that are for these scope items alone."""
    for extra in job.extras:
        if set(job.rate_book.rates[extra].covers) <= set(items):
            yield extra


def _extras(
    job: JobSpec, takeoff: Takeoff, finish: str, whole: Money, items: tuple[str, ...]
) -> Iterator[BidExtra]:
    for extra in _offered(job, items):
        rate = job.rate_book.rates[extra]
        then = price_at(job, takeoff, finish, (extra,))
        yield BidExtra(
            scope=tuple(rate.covers), name=rate.name, amount=Money(then.total - whole)
        )  # fmt: skip


def _under_floors(theirs: Money, costs: FinishCosts | None) -> Money:
    if costs is None or costs.net_price != costs.price:
        return ZERO
    return max(Money(costs.walk_away - theirs), ZERO)
