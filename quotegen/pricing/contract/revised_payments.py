"""Payments after the total has changed: what is paid stays paid, and no deposit is raised."""

from fractions import Fraction

from quotegen.money import Money, down_to_cents, total
from quotegen.pricing.contract.records import RevisedPayment
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.quantity import decimal_of
from quotegen.reading.records import JobSpec


def revised_payments(job: JobSpec, before: Money, after: Money) -> tuple[RevisedPayment, ...]:
    """Split a revised total over the payments, which add up to it exactly.

    A payment that has come in stays as it is. The first payment, due at signing, is never raised
    by a later change. The remainder is split over the others in their shares, each rounded down;
    the last one takes the rest.
    """
    quoted = payments_of(job, before)
    came_in = {paid.payment: Money(paid.amount) for paid in job.typed.paid}
    fixed = {p.id: came_in.get(p.id, p.amount) for p in quoted if p.id in came_in}
    first = quoted[0]
    if first.id not in fixed and len(quoted) > 1:
        fixed[first.id] = min(first.amount, payments_of(job, after)[0].amount)
    open_ones = tuple(p for p in quoted if p.id not in fixed)
    rest = Money(after - total(tuple(fixed.values())))
    amounts = {**fixed, **_split(rest, open_ones)}
    return tuple(
        RevisedPayment(
            id=p.id, when=p.when, before=p.amount, after=amounts[p.id], paid=came_in.get(p.id)
        )
        for p in quoted
    )


def _split(rest: Money, open_ones: tuple[PricedPayment, ...]) -> dict[str, Money]:
    """Split a remainder in proportion to what was quoted; the last payment takes the rest."""
    if not open_ones:
        return {}
    *earlier, last = open_ones
    quoted = Fraction(total(tuple(p.amount for p in open_ones)))
    share = Fraction(rest) / quoted if quoted else Fraction(0)
    parts = {p.id: down_to_cents(decimal_of(share * Fraction(p.amount))) for p in earlier}
    parts[last.id] = Money(rest - total(tuple(parts.values())))
    return parts
