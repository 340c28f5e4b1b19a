"""Payments: a sum or shares of the total, each to the cent; the last one is the remainder."""

from fractions import Fraction

from quotegen.money import ZERO, Money, down_to_cents, to_cents, total
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.quantity import decimal_of
from quotegen.reading.files.company import Payment
from quotegen.reading.records import JobSpec


def payments_of(job: JobSpec, price: Money) -> tuple[PricedPayment, ...]:
    """Split a price over the company's payments, which add up to it exactly.

    Shares are rounded down, so that a deposit never exceeds its share by part of a cent. A sum at
    signing is never more than the price, and shares are then of what it leaves, so that on a small
    job something is still due when the work is done.
    """
    *earlier, last = job.company.payments
    deposit = _sum_at_signing(job, price)
    shared = Money(price - deposit)
    paid = tuple(
        _payment(one, deposit if one.amount is not None else _share(one, shared)) for one in earlier
    )
    remainder = Money(price - total(tuple(p.amount for p in paid)))
    return (*paid, _payment(last.model_copy(update={"share": None}), remainder))


def _sum_at_signing(job: JobSpec, price: Money) -> Money:
    typed = job.company.payments[0].amount
    return ZERO if typed is None else min(to_cents(typed), price)


def _share(payment: Payment, shared: Money) -> Money:
    return down_to_cents(shared * decimal_of(payment.share or Fraction(0)))


def _payment(payment: Payment, amount: Money) -> PricedPayment:
    return PricedPayment(
        id=payment.id,
        when=payment.when,
        share=payment.share,
        typed=None if payment.amount is None else to_cents(payment.amount),
        at_visit=payment.at_visit,
        days_after=payment.days_after,
        amount=amount,
    )
