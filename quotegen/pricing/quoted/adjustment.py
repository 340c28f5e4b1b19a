"""The adjustment: what the price becomes if the forms measure another area than the tape did."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from quotegen.money import Money
from quotegen.pricing.quoted.finish import price_again
from quotegen.pricing.quoted.records import AdjustmentRow, PricedFinish, TapeEnd
from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.company import Company
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import PlacementTakeoff, Takeoff

WORKED_CHANGES = tuple(Fraction(percent, 100) for percent in (-10, -5, 0, 5, 10))
"""The changes of area that the quote shows worked figures for."""


SHOWN_CHANGES = (WORKED_CHANGES[0], WORKED_CHANGES[2], WORKED_CHANGES[-1])
"""Those that the sheet shows, and that are worked out for every choice on the page."""


def adjustment_of(
    job: JobSpec,
    takeoff: Takeoff,
    chosen: PricedFinish,
    extras: tuple[str, ...] = (),
    changes: tuple[Fraction, ...] = WORKED_CHANGES,
) -> tuple[AdjustmentRow, ...]:
    """Price what is chosen again at each worked change of the area."""
    return tuple(
        _row(job, with_area_changed(takeoff, change), chosen, extras, change) for change in changes
    )


def tape_range_of(job: JobSpec, takeoff: Takeoff, chosen: PricedFinish) -> tuple[TapeEnd, TapeEnd]:
    """Price the chosen finish again with every area at the low end of its range, and at the high.

    All areas low together is the most that they can miss by.
    """
    low, high = ends_of_range(takeoff)
    return _tape_end(job, low, chosen), _tape_end(job, high, chosen)


def needs_signatures(company: Company, before: Money, change: Money) -> bool:
    """Tell whether a change of the price is one that both must sign before the pour.

    By the clause `measure_and_adjust` it is a rise of the price, and not of the area, by more
    than the share that the company promised; a rise by exactly that share needs none.
    """
    return Fraction(change) > company.adjustment.no_pour_above * Fraction(before)


def _row(
    job: JobSpec,
    changed: Takeoff,
    chosen: PricedFinish,
    extras: tuple[str, ...],
    change: Fraction,
) -> AdjustmentRow:
    after = price_again(job, changed, chosen, extras).total
    difference = Money(after - chosen.total)
    return AdjustmentRow(
        change=change,
        area=changed.area(job.units),
        difference=difference,
        total=after,
        needs_signatures=needs_signatures(job.company, chosen.total, difference),
    )


def _tape_end(job: JobSpec, measured: Takeoff, chosen: PricedFinish) -> TapeEnd:
    after = price_again(job, measured, chosen).total
    return TapeEnd(
        area=measured.area(job.units), difference=Money(after - chosen.total), total=after
    )


def with_area_changed(takeoff: Takeoff, change: Fraction) -> Takeoff:
    """Return the takeoff with each area, and its volume, larger or smaller by a share.

    Edges stay: a worked figure shows what the area alone does.
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


def ends_of_range(takeoff: Takeoff) -> tuple[Takeoff, Takeoff]:
    """Return the takeoff with each area and volume at its low end, and at its high; edges stay."""
    ranges = [(p, p.area_range) for p in takeoff.placements]
    low = tuple(_with_area(p, found.low_sqft, found.low_m2) for p, found in ranges)
    high = tuple(_with_area(p, found.high_sqft, found.high_m2) for p, found in ranges)
    return replace(takeoff, placements=low), replace(takeoff, placements=high)


def _with_area(placement: PlacementTakeoff, sqft: Decimal, m2: Decimal) -> PlacementTakeoff:
    volume_cuyd = placement.volume_cuyd * sqft / placement.area_sqft
    return replace(placement, area_sqft=sqft, area_m2=m2, volume_cuyd=volume_cuyd)
