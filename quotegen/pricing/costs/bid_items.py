"""What scope items are worth in our price: whole lines, and the parts that the book knows."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.no_work import NO_WORK
from quotegen.pricing.quoted.rates import shown_rate
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.shares import shares_again
from quotegen.pricing.quoted.tax import tax_lines
from quotegen.reading.files.other_bids import OtherBid, Says
from quotegen.reading.files.rate_book import FINISH
from quotegen.reading.records import JobSpec
from quotegen.working import given

Items = frozenset[str]

NUMBER_OF: Mapping[str, str] = {
    "thickness": "slab", "base": "base", "reinforcement": "reinforcement",
    "strength_psi": "slab", "sealer_coats": "sealing",
}  # fmt: skip
"""The scope item that a number of a bid is about: who tells the number has the item in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BidItem:
    """What another bid says of one scope item of ours, and what it is worth in our price.

    Attributes:
        at_least: what is for it alone, tax included.
        at_most: the same, and with it what is in one price with other items.
    """

    item: str
    says: Says
    at_least: Money
    at_most: Money

    @property
    def amount(self) -> Money | None:
        """Its worth, None where it is in one price with others and the book knows no part."""
        return self.at_least if self.at_least == self.at_most else None


def answers(bid: OtherBid, lines: tuple[Line, ...]) -> Mapping[str, Says]:
    """Return what a bid says of each scope item of ours; what it tells of one says `included`.

    So do a number and the name of a finish. No coat of sealer is no sealing. Of what is no work,
    such as the small-job minimum, no bid says anything.
    """
    told: dict[str, object] = {FINISH: bid.finish}
    told |= {NUMBER_OF[key]: number for key, number in bid.numbers if number is not None}
    ours = dict.fromkeys(one for line in lines for one in line.scope if one not in NO_WORK)
    return {one: _answer(bid.scope.get(one), told.get(one)) for one in ours}


def _answer(said: Says | None, told: object) -> Says:
    if said in (Says.INCLUDED, Says.NOT_INCLUDED):
        return said
    if told is None:
        return Says.NOT_STATED
    return Says.NOT_INCLUDED if told == 0 else Says.INCLUDED


def bid_items(job: JobSpec, lines: tuple[Line, ...], says: Mapping[str, Says]) -> Iterator[BidItem]:
    """Yield each scope item with what it is worth, tax included."""
    whole = with_tax(job, lines)
    for item, answer in says.items():
        alone = less(job, lines, frozenset((item,)))
        others = tuple(_rest_without(job, line, item) for line in lines)
        yield BidItem(
            item=item,
            says=answer,
            at_least=Money(whole - with_tax(job, alone)),
            at_most=Money(whole - with_tax(job, others)),
        )


def less(job: JobSpec, lines: tuple[Line, ...], *groups: Items) -> tuple[Line, ...]:
    """Return lines without what is known to pay for each group of scope items."""

    def gone(line: Line) -> Money:
        return total(tuple(_part(job, line, group).amount for group in groups))

    return tuple(_cut(line, gone(line)) for line in lines)


def is_known(job: JobSpec, lines: tuple[Line, ...], items: Items) -> bool:
    """Tell whether all that a group of scope items is worth is known."""
    return all(_part(job, line, items).whole for line in lines)


def with_tax(job: JobSpec, lines: tuple[Line, ...]) -> Money:
    """Add lines up, each share of the lines that are there, with the tax on all of them."""
    lines = shares_again(job.rate_book, lines)
    return total(tuple(line.amount for line in (*lines, *tax_lines(job, lines))))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Part:
    """What of a line is for some scope items, and whether that is all that it has for them."""

    amount: Money
    whole: bool


def _part(job: JobSpec, line: Line, items: Items) -> _Part:
    """Return what of a line is for some scope items: all of it, a part, or what the parts leave."""
    asked = items.intersection(line.scope)
    known = _parts(job, line)
    others = set(line.scope) - items
    if not asked:
        return _Part(amount=_of(known, ()), whole=True)
    if not others or (others <= known.keys() and not asked <= known.keys()):
        return _Part(amount=Money(line.amount - _of(known, others)), whole=True)
    return _Part(amount=_of(known, asked & known.keys()), whole=asked <= known.keys())


def _of(known: Mapping[str, Money], items: set[str] | Items | tuple[str, ...]) -> Money:
    return total(tuple(known[item] for item in items))


def _parts(job: JobSpec, line: Line) -> Mapping[str, Money]:
    """Return what the book says that parts of a line are worth, rounded as a line is."""
    price = job.rate_book.price_of(line.rate_id)
    return {
        item: to_cents(line.quantity * shown_rate(rate, job.units).amount)
        for item, rate in (price.of_which if price else {}).items()
    }


def _rest_without(job: JobSpec, line: Line, item: str) -> Line:
    """Return of a line what is surely not for a scope item: the known parts of the others."""
    if item not in line.scope:
        return line
    known = _parts(job, line)
    if item in known:
        return _cut(line, known[item])
    return _cut(line, Money(line.amount - _of(known, known.keys() - {item})))


def _cut(line: Line, gone: Money) -> Line:
    """Return a line with so much less in it; what it is taxed by stays."""
    if not gone:
        return line
    left = Money(line.amount - gone)
    return replace(line, amount=left, working=given(line.working.name, left, "$"))
