"""The running contract: the accepted price, the adjustment, the changes, what is paid and owed."""

from collections.abc import Iterator
from decimal import Decimal
from itertools import takewhile

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.contract.records import ChangeOrder, Contract
from quotegen.pricing.contract.remeasure import remeasured
from quotegen.pricing.contract.revised_payments import revised_payments
from quotegen.pricing.quoted.finish import accepted_of, price_at
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.rates import rate_at, shown_rate
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.after_signing import Change
from quotegen.reading.files.job import Job
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


def contract_of(job: JobSpec, estimated: Takeoff, in_forms: Takeoff | None) -> Contract:
    """Follow the price from what was accepted to the balance.

    Args:
        job: with what has happened since the quote was sent.
        estimated: the takeoff of the quote.
        in_forms: the takeoff of the set forms, None until they are measured.
    """
    finish, extras = accepted_of(job)
    quoted = price_at(job, estimated, finish, extras).total
    first = signed_before_measuring(job.typed)
    earlier = tuple(_changes(job, first, quoted, quoted))
    now = earlier[-1].revised_total if earlier else quoted
    adjusted = None
    if job.typed.measured is not None and in_forms is not None:
        both, chosen = (estimated, in_forms), (finish, extras)
        adjusted = remeasured(job, job.typed.measured, both, chosen, earlier)
        now = adjusted.revised_total
    later = tuple(_changes(job, job.typed.changes[len(first) :], now, quoted))
    now = later[-1].revised_total if later else now
    paid = total(tuple(Money(one.amount) for one in job.typed.paid))
    return Contract(
        accepted_on=job.typed.accepted.date if job.typed.accepted else None,
        finish=finish,
        quoted_total=quoted,
        remeasure=adjusted,
        changes=(*earlier, *later),
        total=now,
        paid=paid,
        balance=Money(now - paid),
        extra_days=sum(change.days for change in job.typed.changes),
    )


def signed_before_measuring(job: Job) -> tuple[Change, ...]:
    """Return the changes that were signed before the forms were measured, if they were."""
    if job.measured is None:
        return ()
    day = job.measured.date
    return tuple(takewhile(lambda change: change.date < day, job.changes))


def _changes(
    job: JobSpec, changes: tuple[Change, ...], before: Money, quoted: Money
) -> Iterator[ChangeOrder]:
    """Yield each change with the total after it.

    Its sum is what both sign: no share, discount or tax is added, and no total is rounded anew.
    """
    running = before
    for change in changes:
        priced = _priced(job, change)
        amount = to_cents(change.amount) if change.amount is not None else priced[2]
        yield ChangeOrder(
            number=change.number,
            on=change.date,
            what=change.what,
            asked_by=change.asked_by,
            quantity=priced[0],
            rate=priced[1],
            previous_total=running,
            amount=amount,
            revised_total=Money(running + amount),
            days=change.days,
            payments=revised_payments(job, quoted, Money(running + amount)),
        )
        running = Money(running + amount)


def _priced(job: JobSpec, change: Change) -> tuple[Decimal, Rate | None, Money]:
    """Return the quantity, the rate and the amount of a change at a rate of the book."""
    if change.rate is None or change.quantity is None:
        return ZERO, None, ZERO
    rate = shown_rate(rate_at(job.rate_book.rates[change.rate], None), job.units)
    quantity = typed_quantity(change.quantity, rate.unit)
    return quantity, rate, to_cents(quantity * rate.amount)
