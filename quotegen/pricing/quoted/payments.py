"""Payments: shares of the total, each to the cent; the last one is the remainder."""

from fractions import Fraction

from quotegen.money import Money, down_to_cents, total
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.quantity import decimal_of
from quotegen.reading.records import JobSpec


def payments_of(job: JobSpec, price: Money) -> tuple[PricedPayment, ...]:
    """Split a price over the company's payments, which add up to it exactly.

    Shares are rounded down, so that a deposit never exceeds its share by part of a cent.
    """
    *earlier, last = job.company.payments
    paid = tuple(
        PricedPayment(
            id=payment.id,
            when=payment.when,
            share=payment.share,
            at_visit=payment.at_visit,
            days_after=payment.days_after,
            amount=down_to_cents(price * decimal_of(payment.share or Fraction(0))),
        )
        for payment in earlier
    )
    remainder = Money(price - total(tuple(p.amount for p in paid)))
    return (
        *paid,
        PricedPayment(
            id=last.id,
            when=last.when,
            share=None,
            at_visit=last.at_visit,
            days_after=last.days_after,
            amount=remainder,
        ),
    )
