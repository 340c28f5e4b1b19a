"""The numbers of another bid beside ours, and what our price would be at theirs."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from quotegen.money import Money
from quotegen.pricing.costs.bid_items import NUMBER_OF
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import Length
from quotegen.reading.files.other_bids import BidNumbers, OtherBid, Says
from quotegen.reading.files.rate_book import Finish, RateBook
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.records import Takeoff


@dataclass(frozen=True, slots=True, kw_only=True)
class BidNumber:
    """One number of ours against theirs.

    Attributes:
        key: thickness, base, reinforcement, strength_psi or sealer_coats.
        theirs: None where the bid does not say, or leaves out what it is about.
        worth: by how much our price would change at their number, None where no price of our
            book depends on it.
    """

    key: str
    ours: Length | int | str
    theirs: Length | int | str | None
    worth: Money | None

    @property
    def item(self) -> str:
        """The scope item that it is about."""
        return NUMBER_OF[self.key]

    @property
    def differs(self) -> bool:
        return self.theirs is not None and self.theirs != self.ours

    @property
    def is_more(self) -> bool:
        """Whether theirs is the greater number, or at our prices the dearer thing."""
        ours, theirs = self.ours, self.theirs
        if isinstance(ours, Length) and isinstance(theirs, Length):
            return theirs > ours
        if isinstance(ours, int) and isinstance(theirs, int):
            return theirs > ours
        return self.worth is not None and self.worth > 0

    @property
    def saves(self) -> Money | None:
        """How much lower our price is at their number, None where that is not known."""
        return None if self.worth is None else Money(-self.worth)


def told_numbers(bid: OtherBid, says: Mapping[str, Says]) -> BidNumbers:
    """Return the numbers of a bid, without those of what it says is not included."""
    gone = (key for key, item in NUMBER_OF.items() if says.get(item) is Says.NOT_INCLUDED)
    return bid.numbers.model_copy(update=dict.fromkeys(gone))


def at_thickness(job: JobSpec, told: BidNumbers) -> JobSpec:
    """Return the job at the thickness of a bid, where it tells one."""
    return _each(job, lambda one: replace(one, thickness=told.thickness or one.thickness))


def at_numbers(job: JobSpec, told: BidNumbers) -> JobSpec:
    """Return the job at the thickness and reinforcement of a bid, where our book has them."""
    steel = _known(job, told)
    at = at_thickness(job, told)
    return _each(at, lambda one: replace(one, reinforcement=steel or one.reinforcement))


def _each(job: JobSpec, change: Callable[[PlacementSpec], PlacementSpec]) -> JobSpec:
    return replace(job, placements=tuple(map(change, job.placements)))


def _known(job: JobSpec, told: BidNumbers) -> str | None:
    steel = told.reinforcement
    return steel if steel in job.rate_book.reinforcement else None


def numbers_of(
    job: JobSpec,
    takeoff: Takeoff,
    told: BidNumbers,
    lines: tuple[Line, ...],
    price: Callable[[JobSpec], Money],
) -> Iterator[BidNumber]:
    """Yield our numbers, those of the largest placement, beside theirs.

    Thickness is priced first and reinforcement after it, so that what each is worth adds up.

    Args:
        job: as quoted.
        takeoff: its quantities.
        told: the numbers of the bid.
        lines: of our price at the finish of the bid.
        price: of the work that both cover, for the job at some numbers.
    """
    areas = {p.id: p.area_sqft for p in takeoff.placements}
    main = max(job.placements, key=lambda placement: areas[placement.id])
    book, steel = job.rate_book, _known(job, told)
    prices = (price(job), price(at_thickness(job, told)), price(at_numbers(job, told)))
    thicker, reinforced = (Money(after - before) for before, after in pairwise(prices))
    yield BidNumber(
        key="thickness",
        ours=main.thickness,
        theirs=told.thickness,
        worth=thicker if told.thickness and _by_thickness(book, lines) else None,
    )
    yield BidNumber(key="base", ours=main.base, theirs=told.base, worth=None)
    yield BidNumber(
        key="reinforcement",
        ours=book.reinforcement[main.reinforcement].name,
        theirs=book.reinforcement[steel].name if steel else told.reinforcement,
        worth=reinforced if steel and _by_steel(book, {steel, main.reinforcement}) else None,
    )
    yield BidNumber(
        key="strength_psi", ours=book.mix.strength_psi, theirs=told.strength_psi, worth=None
    )


def coats_of(finish: Finish, told: BidNumbers) -> Iterator[BidNumber]:
    """Yield our coats of sealer beside theirs, where our book says how many we put on."""
    if finish.sealer_coats is not None:
        yield BidNumber(
            key="sealer_coats", ours=finish.sealer_coats, theirs=told.sealer_coats, worth=None
        )


def _by_thickness(book: RateBook, lines: tuple[Line, ...]) -> bool:
    prices = (book.price_of(line.rate_id) for line in lines)
    return any(price.by_thickness for price in prices if price)


def _by_steel(book: RateBook, kinds: set[str]) -> bool:
    return any(rate.reinforcement in kinds for rate in book.rates.values())
