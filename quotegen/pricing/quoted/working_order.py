"""The working of every amount of a quote, in an order that a pocket calculator can follow."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from quotegen.money import Money
from quotegen.pricing.quoted.adjustment import WORKED_CHANGES, with_area_changed
from quotegen.pricing.quoted.finish import price_again, price_at
from quotegen.pricing.quoted.options import changed_lines, with_alternates
from quotegen.pricing.quoted.records import Line, PricedFinish, PricedPayment, PricedQuote
from quotegen.quantity import decimal_of
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff
from quotegen.working import Operation, Rounding, Step, added, given, taken_away


@dataclass(frozen=True, slots=True, kw_only=True)
class TitledSteps:
    """Steps of the working under a title; each comes after every step whose result it uses."""

    title: str
    steps: tuple[Step, ...]


def working_of(job: JobSpec, takeoff: Takeoff, quote: PricedQuote) -> Iterator[TitledSteps]:
    """Yield the working: each finish line by line, the options, the payments, the changes."""
    for finish in quote.finishes:
        yield TitledSteps(title=f"Finish: {finish.name}", steps=_finish(finish))
    chosen = quote.chosen
    for extra in quote.extras:
        after = price_at(job, takeoff, chosen.id, (extra.id,))
        yield _option(f"Extra: {extra.name}", chosen, after)
    for other in quote.alternates:
        changed = with_alternates(job, ((other.placement, other.finish),))
        after = price_at(changed, takeoff, chosen.id)
        yield _option(f"Alternate: {other.name} on {other.placement}", chosen, after)
    for choice in quote.color_choices:
        alternate = ((choice.placement, choice.finish),) if choice.placement else ()
        with_finish = with_alternates(job, alternate)
        finish_id = chosen.id if choice.placement else choice.finish
        before = price_at(with_finish, takeoff, finish_id)
        after = price_at(replace(with_finish, color=choice.colors), takeoff, finish_id)
        yield _option(f"Colors: {' with '.join(choice.names)}", before, after)
    yield TitledSteps(title="Payments", steps=tuple(_payments(job, quote)))
    for change in WORKED_CHANGES:
        if change:
            after = price_again(job, with_area_changed(takeoff, change), chosen)
            sign = "more" if change > 0 else "less"
            title = f"If the area is {abs(change) * 100}% {sign}"
            yield _option(title, chosen, after)


def _finish(finish: PricedFinish) -> tuple[Step, ...]:
    return (*(line.working for line in finish.lines), _total("Total", finish))


def _total(name: str, finish: PricedFinish) -> Step:
    return added(name, tuple(line.working for line in finish.lines), finish.total)


def _option(title: str, before: PricedFinish, after: PricedFinish) -> TitledSteps:
    """Work out the lines that changed, then the new total and the difference.

    The difference is that of the two totals, so it includes what the minimum and taxes do.
    """
    changed: tuple[Line, ...] = changed_lines(before, after)
    total = _total("New total", after)
    was = _total("Total", before)
    difference = taken_away("Difference", total, was, Money(after.total - before.total))
    return TitledSteps(title=title, steps=(*(line.working for line in changed), total, difference))


def _payments(job: JobSpec, quote: PricedQuote) -> Iterator[Step]:
    price, steps = _total("Total", quote.chosen), list[Step]()
    shared = price
    for index, payment in enumerate(quote.payments[:-1]):
        if payment.typed is None:
            steps.append(_share(job, index, payment, shared))
        else:
            steps.append(_sum(job, index, payment, price))
            left = Money(price.value - payment.amount)
            shared = taken_away("What the sum leaves", price, steps[-1], left)
        yield steps[-1]
    last = quote.payments[-1]
    yield Step(
        name=f"Payment: {last.when}",
        formula="what remains",
        operation=Operation.MINUS,
        inputs=(price, *steps),
        value=last.amount,
        unit="$",
        rules=("payment_rounding",),
    )


def _sum(job: JobSpec, index: int, payment: PricedPayment, price: Step) -> Step:
    """Return a sum as it was typed, or the whole price where that is less."""
    source = job.company_source("payments", index, "amount")
    typed = given("sum", payment.amount, "$", source)
    is_less = payment.typed is not None and payment.amount < payment.typed
    return added(f"Payment: {payment.when}", (price if is_less else typed,), payment.amount)


def _share(job: JobSpec, index: int, payment: PricedPayment, shared: Step) -> Step:
    source = job.company_source("payments", index, "share")
    share = decimal_of(payment.share or Fraction(0))
    return Step(
        name=f"Payment: {payment.when}",
        formula="total x share, down to the cent",
        operation=Operation.TIMES,
        rounding=Rounding.CENT_DOWN,
        inputs=(shared, given("share", share, "", source)),
        value=payment.amount,
        unit="$",
        rules=("payment_rounding",),
    )
