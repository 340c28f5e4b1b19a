"""Measure and adjust: the quoted rates on the measured quantities, line by line, both ways."""

from collections.abc import Iterator, Mapping
from decimal import Decimal
from fractions import Fraction

from quotegen.money import ZERO, Money, total
from quotegen.pricing.contract.records import AdjustedLine, MeasuredArea, Remeasure
from quotegen.pricing.contract.revised_payments import revised_payments
from quotegen.pricing.quoted.finish import price_again, price_at
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.quantity import Unit, Units, rounded
from quotegen.reading.files.after_signing import Measured
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import PlacementTakeoff, Takeoff


def remeasured(
    job: JobSpec,
    measured: Measured,
    takeoffs: tuple[Takeoff, Takeoff],
    finish: str,
    extras: tuple[str, ...],
) -> Remeasure:
    """Work out the adjustment: the same job, the same rates, the measured quantities.

    Fixed lines and allowances do not move. A price that the small-job minimum carried before or
    carries now is adjusted through its own line.

    Args:
        job: the job.
        measured: what was typed.
        takeoffs: as estimated, and as measured.
        finish: that was accepted.
        extras: that were accepted.
    """
    estimated, in_forms = takeoffs
    before = price_at(job, estimated, finish, extras)
    after = price_again(job, in_forms, before, extras)
    lines = tuple(_lines(before, after))
    change = Money(after.total - before.total)
    limit = job.company.adjustment.no_pour_above
    return Remeasure(
        on=measured.date,
        areas=tuple(_areas(job, estimated, in_forms)),
        lines=lines,
        unmoved=total(
            tuple(line.amount for line in before.lines if line.basis is not Basis.MEASURED)
        ),
        previous_total=before.total,
        change=change,
        revised_total=after.total,
        needs_signatures=Fraction(change) > limit * Fraction(before.total),
        payments=revised_payments(job, before.total, after.total),
    )


def _lines(before: PricedFinish, after: PricedFinish) -> Iterator[AdjustedLine]:
    then: Mapping[str, Line] = {line.id: line for line in before.lines}
    now: Mapping[str, Line] = {line.id: line for line in after.lines}
    for line_id in dict.fromkeys((*then, *now)):
        line = then.get(line_id) or now[line_id]
        if line.basis is Basis.MEASURED:
            yield _line(line, then.get(line_id), now.get(line_id))


def _line(line: Line, then: Line | None, now: Line | None) -> AdjustedLine:
    zero = rounded(Fraction(0), 0)
    before, after = then.amount if then else ZERO, now.amount if now else ZERO
    # The minimum is a sum and not a quantity: its rate is whatever it tops up by.
    is_sum = line.unit is Unit.LUMP
    estimated = zero if is_sum or then is None else then.quantity
    measured = zero if is_sum or now is None else now.quantity
    return AdjustedLine(
        id=line.id,
        name=line.name,
        placement=line.placement,
        unit=line.unit,
        rate=line.rate,
        estimated=estimated,
        measured=measured,
        difference=measured - estimated,
        before=before,
        change=Money(after - before),
        after=after,
    )


def _areas(job: JobSpec, estimated: Takeoff, in_forms: Takeoff) -> Iterator[MeasuredArea]:
    for before, after in zip(estimated.placements, in_forms.placements, strict=True):
        then, now = _area(before, job.units), _area(after, job.units)
        share = Fraction(now - then) / Fraction(then)
        yield MeasuredArea(
            placement=before.id,
            unit=Unit.SQ_FT if job.units is Units.US else Unit.M2,
            estimated=then,
            measured=now,
            difference=now - then,
            share=share,
            outside=_outside(then, now, job.company.adjustment.reopen_outside),
        )


def _outside(then: Decimal, now: Decimal, band: Fraction) -> Decimal:
    """Return the slice beyond the band; only its rate may be talked about again.

    After FAR 52.211-18 (Apr 1984): the part above 115 % or below 85 % of the estimate of a
    unit-priced item, with the band as the company's promise sets it. Exactly on it is inside.
    """
    high, low = Fraction(then) * (1 + band), Fraction(then) * (1 - band)
    beyond = max(Fraction(now) - high, low - Fraction(now), Fraction(0))
    return rounded(beyond, 2)


def _area(placement: PlacementTakeoff, units: Units) -> Decimal:
    return placement.area_sqft if units is Units.US else placement.area_m2
