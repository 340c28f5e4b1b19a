"""Payments: a sum or shares of the total, each to the cent; the last one is the remainder."""

from fractions import Fraction

from quotegen.money import Money, down_to_cents, to_cents, total
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.quantity import decimal_of
from quotegen.reading.files.company import Payment
from quotegen.reading.records import JobSpec


def payments_of(job: JobSpec, price: Money) -> tuple[PricedPayment, ...]:
    """Split a price over the company's payments, which add up to it exactly.

    Shares are rounded down, so that a deposit never exceeds its share by part of a cent. None is
    more than what those before it leave, which a sum at signing may make little on a small job.
    """
    *earlier, last = job.company.payments
    paid: list[PricedPayment] = []
    for payment in earlier:
        left = Money(price - total(tuple(p.amount for p in paid)))
        paid.append(_payment(payment, min(_wanted(payment, price), left)))
    remainder = Money(price - total(tuple(p.amount for p in paid)))
    return (*paid, _payment(last.model_copy(update={"share": None}), remainder))


def _wanted(payment: Payment, price: Money) -> Money:
    if payment.amount is not None:
        return to_cents(payment.amount)
    return down_to_cents(price * decimal_of(payment.share or Fraction(0)))


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
