"""Stage 3, price: one job and its takeoff become every price that anyone reads."""

from quotegen.money import Money, total
from quotegen.pricing.quoted.adjustment import adjustment_of, tape_range_of
from quotegen.pricing.quoted.combinations import combinations_of
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.options import alternates_of, color_choices_of
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.rates import rate_at, shown_rate
from quotegen.pricing.quoted.records import (
    Line,
    PricedExtra,
    PricedFinish,
    PricedQuote,
    Subtotal,
    UnitPrice,
)
from quotegen.reading.files.rate_book import Applies
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


def price(job: JobSpec, takeoff: Takeoff) -> PricedQuote:
    """Price the job at its finish and at each finish to compare, each worked out afresh."""
    finishes = tuple(price_at(job, takeoff, finish) for finish in (job.finish, *job.typed.compare))
    chosen = finishes[0]
    return PricedQuote(
        finishes=finishes,
        extras=tuple(_extra(job, takeoff, chosen, extra) for extra in job.extras),
        alternates=tuple(alternates_of(job, takeoff, chosen)),
        color_choices=tuple(color_choices_of(job, takeoff, finishes)),
        combinations=tuple(combinations_of(job, takeoff)),
        by_placement=by_placement(chosen.lines),
        by_scope=by_scope(chosen.lines),
        payments=payments_of(job, chosen.total),
        adjustment=adjustment_of(job, takeoff, chosen),
        tape_range=tape_range_of(job, takeoff, chosen),
        unit_prices=_unit_prices(job),
        area_unit=job.units.area_unit,
    )


def _extra(job: JobSpec, takeoff: Takeoff, without: PricedFinish, extra: str) -> PricedExtra:
    with_it = price_at(job, takeoff, without.id, (extra,))
    known = {line.id for line in without.lines}
    rate = job.rate_book.rates[extra]
    return PricedExtra(
        id=extra,
        name=rate.name,
        scope=rate.covers,
        lines=tuple(line for line in with_it.lines if line.id not in known),
        amount=Money(with_it.total - without.total),
    )


def _unit_prices(job: JobSpec) -> tuple[UnitPrice, ...]:
    prices = []
    for rate_id, rate in job.rate_book.rates.items():
        if rate.applies is Applies.IF_FOUND and not rate.by_thickness:
            shown = shown_rate(rate_at(rate, None), job.units)
            prices.append(UnitPrice(
                id=rate_id, name=rate.name, scope=rate.covers, rate=shown.amount, unit=shown.unit,
            ))  # fmt: skip
    return tuple(prices)


def by_placement(lines: tuple[Line, ...]) -> tuple[Subtotal, ...]:
    """Add up the lines of each placement, and last those of the whole job.

    Every line is in exactly one of them, so they add up to the total.
    """
    places = dict.fromkeys(line.placement for line in lines if line.placement is not None)
    parts = [
        _subtotal(place, (), tuple(line for line in lines if line.placement == place))
        for place in places
    ]
    whole_job = tuple(line for line in lines if line.placement is None)
    return (*parts, _subtotal(None, (), whole_job)) if whole_job else tuple(parts)


def by_scope(lines: tuple[Line, ...]) -> tuple[Subtotal, ...]:
    """Add up the lines of each scope item, in the order of the lines.

    A line that pays for several scope items counts once, under the first that the rate book
    lists; the others are named beside it. Splitting it would invent prices that nobody set.
    """
    firsts = dict.fromkeys(line.scope[0] for line in lines)
    parts = []
    for item in firsts:
        its = tuple(line for line in lines if line.scope[0] == item)
        also = tuple(dict.fromkeys(other for line in its for other in line.scope[1:]))
        parts.append(_subtotal(item, tuple(other for other in also if other != item), its))
    return tuple(parts)


def _subtotal(of: str | None, also: tuple[str, ...], lines: tuple[Line, ...]) -> Subtotal:
    return Subtotal(of=of, also=also, amount=total(tuple(line.amount for line in lines)))
