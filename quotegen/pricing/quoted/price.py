"""Stage 3, price: THE core. One job and its takeoff become every price that anyone reads."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from quotegen.money import Money, total
from quotegen.pricing.quoted.combinations import combinations_of
from quotegen.pricing.quoted.finish import price_again, price_at
from quotegen.pricing.quoted.options import alternates_of, looks_of
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.rates import rate_at, shown_rate
from quotegen.pricing.quoted.records import (
    AdjustmentRow,
    Line,
    PricedExtra,
    PricedFinish,
    PricedQuote,
    Subtotal,
    TapeEnd,
    UnitPrice,
)
from quotegen.quantity import Unit, Units, decimal_of, rounded
from quotegen.reading.files.rate_book import Applies
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import PlacementTakeoff, Takeoff

WORKED_CHANGES = tuple(Fraction(percent, 100) for percent in (-10, -5, 0, 5, 10))
"""The changes of area that the quote shows worked figures for."""


def price(job: JobSpec, takeoff: Takeoff) -> PricedQuote:
    """Price the job at its finish and at each finish to compare, all recomputed."""
    finishes = tuple(price_at(job, takeoff, finish) for finish in (job.finish, *job.typed.compare))
    chosen = finishes[0]
    return PricedQuote(
        finishes=finishes,
        tape_range=(
            _tape_end(job, at_low_end(takeoff), chosen),
            _tape_end(job, at_high_end(takeoff), chosen),
        ),
        extras=tuple(_extra(job, takeoff, chosen, extra) for extra in job.extras),
        alternates=tuple(alternates_of(job, takeoff, chosen)),
        looks=tuple(looks_of(job, takeoff, finishes)),
        combinations=tuple(combinations_of(job, takeoff)),
        by_placement=by_placement(chosen.lines),
        by_scope=by_scope(chosen.lines),
        payments=payments_of(job, chosen.total),
        adjustment=tuple(_row(job, takeoff, chosen, change) for change in WORKED_CHANGES),
        unit_prices=_unit_prices(job),
        area_unit=Unit.SQ_FT if job.units is Units.US else Unit.M2,
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


def _row(job: JobSpec, takeoff: Takeoff, chosen: PricedFinish, change: Fraction) -> AdjustmentRow:
    """Price the job again at a changed area.

    What needs signatures is a rise of the price, as the clause `measure_and_adjust` says:
    the difference as a share of the quoted total, not the change of the area.
    """
    changed = with_area_changed(takeoff, change)
    then = price_again(job, changed, chosen).total
    difference = Money(then - chosen.total)
    rise = Fraction(difference) / Fraction(chosen.total or 1)
    return AdjustmentRow(
        change=change,
        area=area_of(changed, job.units),
        difference=difference,
        total=then,
        needs_signatures=rise > job.company.adjustment.no_pour_above,
    )


def area_of(takeoff: Takeoff, units: Units) -> Decimal:
    """Return the area of all placements, each rounded as it is priced."""
    return sum(
        (p.area_sqft if units is Units.US else p.area_m2 for p in takeoff.placements),
        start=rounded(Fraction(0), 1),
    )


def with_area_changed(takeoff: Takeoff, change: Fraction) -> Takeoff:
    """Return the takeoff with each area, and the volume with it, more or less by a share.

    Edges are left as they are: a worked figure shows the area alone.
    """
    return replace(takeoff, placements=tuple(_changed(p, change) for p in takeoff.placements))


def _changed(placement: PlacementTakeoff, change: Fraction) -> PlacementTakeoff:
    factor = 1 + change
    return replace(
        placement,
        area_sqft=rounded(Fraction(placement.area_sqft) * factor, 1),
        area_m2=rounded(Fraction(placement.area_m2) * factor, 2),
        volume_cuyd=placement.volume_cuyd * decimal_of(factor),
    )


def _tape_end(job: JobSpec, measured: Takeoff, chosen: PricedFinish) -> TapeEnd:
    """Price the job again with its areas at one end of what the tape may have missed."""
    then = price_again(job, measured, chosen).total
    return TapeEnd(
        area=area_of(measured, job.units), difference=Money(then - chosen.total), total=then
    )


def at_low_end(takeoff: Takeoff) -> Takeoff:
    """Return the takeoff with each area, and the volume with it, at the low end of its range.

    Edges are left as they are. All areas low together is the most that they can miss by.
    """
    return replace(
        takeoff,
        placements=tuple(
            _with_area(p, p.area_range.low_sqft, p.area_range.low_m2) for p in takeoff.placements
        ),
    )


def at_high_end(takeoff: Takeoff) -> Takeoff:
    """Return the takeoff with each area, and the volume with it, at the high end of its range."""
    return replace(
        takeoff,
        placements=tuple(
            _with_area(p, p.area_range.high_sqft, p.area_range.high_m2) for p in takeoff.placements
        ),
    )


def _with_area(placement: PlacementTakeoff, sqft: Decimal, m2: Decimal) -> PlacementTakeoff:
    volume_cuyd = placement.volume_cuyd * sqft / placement.area_sqft
    return replace(placement, area_sqft=sqft, area_m2=m2, volume_cuyd=volume_cuyd)


def _unit_prices(job: JobSpec) -> tuple[UnitPrice, ...]:
    prices = []
    for rate_id, rate in job.rate_book.rates.items():
        if rate.applies is Applies.IF_FOUND and not rate.by_thickness:
            shown = shown_rate(rate_at(rate, None), job.units)
            prices.append(
                UnitPrice(
                    id=rate_id,
                    name=rate.name,
                    scope=rate.covers,
                    rate=shown.amount,
                    unit=shown.unit,
                )
            )
    return tuple(prices)


def by_placement(lines: tuple[Line, ...]) -> tuple[Subtotal, ...]:
    """Add up the lines of each placement, and last those of the whole job.

    They add up to the total exactly, since every line is in just one of them.
    """
    places = dict.fromkeys(line.placement for line in lines if line.placement is not None)
    parts = [
        _part(place, (), tuple(line for line in lines if line.placement == place))
        for place in places
    ]
    whole_job = tuple(line for line in lines if line.placement is None)
    return (*parts, _part(None, (), whole_job)) if whole_job else tuple(parts)


def by_scope(lines: tuple[Line, ...]) -> tuple[Subtotal, ...]:
    """Add up the lines of each scope item, in the order of the lines.

    A line that pays for several scope items counts once, under the first of them as the rate
    book lists them; the others are named beside it. To split it would make up prices that
    nobody set. So the subtotals add up to the total exactly.
    """
    firsts = dict.fromkeys(line.scope[0] for line in lines)
    parts = []
    for item in firsts:
        its = tuple(line for line in lines if line.scope[0] == item)
        also = tuple(dict.fromkeys(other for line in its for other in line.scope[1:]))
        parts.append(_part(item, tuple(other for other in also if other != item), its))
    return tuple(parts)


def _part(of: str | None, also: tuple[str, ...], lines: tuple[Line, ...]) -> Subtotal:
    return Subtotal(of=of, also=also, amount=total(tuple(line.amount for line in lines)))
