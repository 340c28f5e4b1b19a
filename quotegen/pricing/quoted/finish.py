"""The whole job at one finish: its lines, its total, and what one unit of area more moves."""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.lines import NO_BANDS, lines_of
from quotegen.pricing.quoted.records import AreaPrice, Line, PricedFinish
from quotegen.pricing.quoted.shares import is_share, lines_shared
from quotegen.pricing.quoted.visits_needed import visits_needed
from quotegen.quantity import NO_QUANTITY, decimal_of, decimal_places, rounded
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff

_CENT_PLACES = 2


def price_again(
    job: JobSpec, takeoff: Takeoff, quoted: PricedFinish, extras: tuple[str, ...] = ()
) -> PricedFinish:
    """Price what was quoted at other sizes. Rates hold, so a price by size keeps its band."""
    bands = {line.id: line.band for line in quoted.lines if line.band is not None}
    return price_at(job, takeoff, quoted.id, extras, bands)


def accepted_of(job: JobSpec) -> tuple[str, tuple[str, ...]]:
    """Return the finish and the extras that were accepted; as quoted while nobody has signed."""
    accepted = job.typed.accepted
    if accepted is None:
        return job.finish, ()
    return accepted.finish or job.finish, accepted.extras


def price_at(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...] = (),
    quoted_bands: Mapping[str, int] = NO_BANDS,
) -> PricedFinish:
    """Price the whole job at one finish: visits, travel and sealer follow the finish."""
    lines = lines_of(job, takeoff, finish, extras, quoted_bands)
    price = total(tuple(line.amount for line in lines))
    return PricedFinish(
        id=finish,
        name=job.rate_book.finishes[finish].name,
        visits=len(visits_needed(job, finish)),
        lines=lines,
        total=price,
        by_area=price_by_area(job, takeoff, price),
        area_price=area_prices(job, lines),
    )


def price_by_area(job: JobSpec, takeoff: Takeoff, price: Money) -> Money:
    """Return a price divided by the area of all placements, to the cent."""
    return to_cents(price / takeoff.area(job.units))


def area_prices(job: JobSpec, lines: tuple[Line, ...]) -> tuple[AreaPrice, ...]:
    """Return what one unit of area more or less moves the price by, for each placement."""
    return tuple(
        AreaPrice(
            placement=placement.id,
            rate=_area_rate(job, placement.id, lines),
            unit=job.units.area_unit,
        )
        for placement in job.placements
    )


def _area_rate(job: JobSpec, placement: str, lines: tuple[Line, ...]) -> Decimal:
    """Return what one unit of area more costs before tax, at the rates of the last slices.

    A share of a line that follows the area follows it too, and so does a discount by share.
    """
    rates = (
        line.rate * _with_cutting(job, line) * _with_shares(job, line, lines)
        for line in lines
        if line.placement == placement and line.follows_area
    )
    whole = sum(rates, start=NO_QUANTITY) * _after_discount(job)
    return rounded(whole, max(_CENT_PLACES, decimal_places(whole)))


def _with_cutting(job: JobSpec, line: Line) -> Decimal:
    rate = job.rate_book.rates.get(line.rate_id)
    return decimal_of(1 + ((rate.cutting if rate else None) or Fraction(0)))


def _with_shares(job: JobSpec, line: Line, lines: tuple[Line, ...]) -> Decimal:
    book = job.rate_book
    shares = (
        book.rates[one.rate_id]
        for one in lines
        if is_share(book, one) and line in lines_shared(book, one.rate_id, lines)
    )
    return decimal_of(1 + sum((rate.share or Fraction(0) for rate in shares), start=Fraction(0)))


def _after_discount(job: JobSpec) -> Decimal:
    discount = job.typed.discount
    return decimal_of(1 - ((discount.share if discount else None) or Fraction(0)))
