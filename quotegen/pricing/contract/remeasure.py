"""Measure and adjust: the quoted rates on the measured quantities, line by line."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from quotegen.money import ZERO, Money, total
from quotegen.pricing.contract.records import (
    AdjustedLine,
    ChangeOrder,
    MeasuredArea,
    Remeasure,
    RevisedPayment,
)
from quotegen.pricing.contract.revised_payments import revised_payments
from quotegen.pricing.quoted.adjustment import needs_signatures
from quotegen.pricing.quoted.finish import price_again, price_at
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.quantity import NO_QUANTITY, Unit, rounded
from quotegen.reading.files.after_signing import Measured
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


def remeasured(
    job: JobSpec,
    measured: Measured,
    takeoffs: tuple[Takeoff, Takeoff],
    chosen: tuple[str, tuple[str, ...]],
    earlier: tuple[ChangeOrder, ...],
) -> Remeasure:
    """Work out the adjustment: the same job and the same rates on the measured quantities.

    Fixed lines and allowances do not move, nor does a discount that is a sum. Shares follow their
    lines, and what tops a small job up, taxes and the rounding are worked out anew, each in its own
    line; so the new total is round where the company rounds.

    Args:
        job: the job.
        measured: what was typed.
        takeoffs: as estimated, and as measured.
        chosen: the finish and the extras that were accepted.
        earlier: changes that were signed before; their sums stay as they were signed.
    """
    (estimated, in_forms), (finish, extras) = takeoffs, chosen
    before = price_at(job, estimated, finish, extras)
    after = price_again(job, in_forms, before, extras)
    lines = tuple(_lines(before, after))
    change = Money(after.total - before.total)
    changed_before = total(tuple(one.amount for one in earlier))
    revised = Money(after.total + changed_before)
    return Remeasure(
        on=measured.date,
        areas=tuple(_areas(job, estimated, in_forms)),
        lines=lines,
        unmoved=Money(before.total - total(tuple(line.before for line in lines))),
        earlier=earlier,
        changed_before=changed_before,
        previous_total=Money(before.total + changed_before),
        change=change,
        revised_total=revised,
        needs_signatures=needs_signatures(job.company, before.total, change),
        payments=tuple(_from_earlier(revised_payments(job, before.total, revised), earlier)),
    )


def _from_earlier(
    payments: tuple[RevisedPayment, ...], earlier: tuple[ChangeOrder, ...]
) -> Iterator[RevisedPayment]:
    """Yield the payments, each from what the last change before the measuring made of it."""
    stood = {one.id: one.after for one in earlier[-1].payments} if earlier else {}
    for one in payments:
        yield replace(one, before=stood.get(one.id, one.before))


def _lines(before: PricedFinish, after: PricedFinish) -> Iterator[AdjustedLine]:
    quoted: Mapping[str, Line] = {line.id: line for line in before.lines}
    measured: Mapping[str, Line] = {line.id: line for line in after.lines}
    for line_id in dict.fromkeys((*quoted, *measured)):
        both = (quoted.get(line_id), measured.get(line_id))
        # a share of fixed lines is fixed, until the forms add one that is measured
        follows = next((one for one in both if one and one.basis is Basis.MEASURED), None)
        if follows is not None:
            yield _line(follows, *both)


def _line(line: Line, quoted: Line | None, remeasured: Line | None) -> AdjustedLine:
    before = quoted.amount if quoted else ZERO
    after = remeasured.amount if remeasured else ZERO
    # What follows from other lines is a sum, not a quantity: its rate is whatever the sum is.
    is_sum = line.unit is Unit.LUMP
    estimated = NO_QUANTITY if is_sum or quoted is None else quoted.quantity
    measured = NO_QUANTITY if is_sum or remeasured is None else remeasured.quantity
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
    for quoted, set_forms in zip(estimated.placements, in_forms.placements, strict=True):
        before, after = quoted.area(job.units), set_forms.area(job.units)
        yield MeasuredArea(
            placement=quoted.id,
            unit=job.units.area_unit,
            estimated=before,
            measured=after,
            difference=after - before,
            share=Fraction(after - before) / Fraction(before),
            outside=_outside(before, after, job.company.adjustment.reopen_outside),
        )


def _outside(before: Decimal, after: Decimal, band: Fraction) -> Decimal:
    """Return how much of an area lies beyond the band; only its rate may be renegotiated.

    After FAR 52.211-18 (Apr 1984): the part above 115 % or below 85 % of the estimate of a
    unit-priced item, with the band as the company's promise sets it. Exactly on it is inside.
    """
    high, low = Fraction(before) * (1 + band), Fraction(before) * (1 - band)
    beyond = max(Fraction(after) - high, low - Fraction(after), Fraction(0))
    return rounded(beyond, 2)


def together(lines: tuple[AdjustedLine, ...]) -> tuple[AdjustedLine, ...]:
    """Return the lines with those of one placement that count the same area made one.

    Its rate is the sum of theirs, its amounts are the sums of theirs; other lines stay.
    """
    merged: dict[tuple[object, ...], AdjustedLine] = {}
    for line in lines:
        by_area = line.unit in {Unit.SQ_FT, Unit.M2}
        key = (line.placement, line.estimated, line.measured) if by_area else (line.id,)
        first = merged.get(key)
        merged[key] = line if first is None else _joined(first, line)
    return tuple(merged.values())


def _joined(one: AdjustedLine, other: AdjustedLine) -> AdjustedLine:
    return replace(
        one,
        name=f"{one.name}, {other.name[:1].lower()}{other.name[1:]}",
        rate=one.rate + other.rate,
        before=Money(one.before + other.before),
        change=Money(one.change + other.change),
        after=Money(one.after + other.after),
    )
