"""The numbers of another bid against ours, and our price at theirs."""

from collections.abc import Iterator
from dataclasses import replace

from quotegen.money import Money
from quotegen.pricing.bid_records import BidNumber
from quotegen.pricing.finish import price_at
from quotegen.quantity import Length
from quotegen.spec.other_bids import OtherBid
from quotegen.spec.records import JobSpec
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
