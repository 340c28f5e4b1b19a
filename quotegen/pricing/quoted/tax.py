"""Taxes: each a line of its own at the end, rounded as the company's file says."""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.no_work import AFTER_THE_PRICE, DISCOUNT, TAX
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import ONE, Unit, decimal_of
from quotegen.reading.files.company import Tax, TaxRounding
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.working import Operation, Rounding, Step, added, given


def tax_lines(job: JobSpec, lines: tuple[Line, ...]) -> Iterator[Line]:
    """Yield one line for each tax that is due.

    Taxes are on the price after its discount, never on each other or on the rounding. Of a discount
    on all lines, a tax on some of them has the part of these lines. A tax is rounded half-up to the
    cent, for each line or once for all of them as the seller chose (RI Gen. Laws 44-18.1-25, as in
    the other Streamlined states: to the third decimal, and up when that is over four).
    """
    for index, tax in enumerate(job.company.tax):
        taxed = _taxed(tax, lines)
        if taxed and is_due(job, tax):
            working = _working(job, index, tax, taxed)
            yield Line(
                id=f"{TAX}.{tax.id}",
                rate_id=tax.id,
                name=tax.name,
                scope=(TAX,),
                placement=None,
                basis=Basis.MEASURED,
                quantity=ONE,
                unit=Unit.LUMP,
                rate=working.value,
                amount=Money(working.value),
                follows_area=False,
                working=working,
            )


def is_due(job: JobSpec, tax: Tax) -> bool:
    """Tell whether a job owes a tax: it is in one of its states, and not exempt."""
    return job.typed.tax_exempt is None and (not tax.states or job.site.state in tax.states)


def taxed_amount(tax: Tax, lines: tuple[Line, ...]) -> Money:
    """Add up what a tax is on."""
    return total(tuple(Money(step.value) for step in _taxed(tax, lines)))


def _taxed(tax: Tax, lines: tuple[Line, ...]) -> tuple[Step, ...]:
    """Return the lines that a tax is on, and last what it has of the discount, less than zero."""
    priced = tuple(line for line in lines if line.scope[0] not in AFTER_THE_PRICE)
    taxed = tuple(line for line in priced if line.pays_for_any(tax.covers))
    off = (line for line in lines if DISCOUNT in line.scope and taxed)
    return (
        *(line.working for line in taxed),
        *(one.working if taxed == priced else _part(tax, one, taxed, priced) for one in off),
    )


def _part(tax: Tax, discount: Line, taxed: tuple[Line, ...], priced: tuple[Line, ...]) -> Step:
    """Return the part of a discount that falls on the taxed lines, by their prices."""
    some, every = (
        added(name, tuple(line.working for line in lines), total(tuple(o.amount for o in lines)))
        for name, lines in ((f"lines taxed by `{tax.id}`", taxed), ("all lines", priced))
    )
    product = discount.amount * some.value
    spread = Step(
        name=f"{discount.name} x taxed lines", formula="discount x taxed lines, not rounded",
        operation=Operation.TIMES, inputs=(discount.working, some), value=product, unit="",
    )  # fmt: skip
    return Step(
        name=f"{discount.name}, the part taxed by `{tax.id}`",
        formula="discount x taxed lines / all lines, to the cent", operation=Operation.OVER,
        rounding=Rounding.CENT, inputs=(spread, every),
        value=to_cents(product / (every.value or ONE)), unit="$",
    )  # fmt: skip


def _working(job: JobSpec, index: int, tax: Tax, taxed: tuple[Step, ...]) -> Step:
    share = decimal_of(tax.rate)
    rate = given(f"rate of the tax `{tax.id}`", share, "", job.company_source(TAX, index, "rate"))
    if tax.round is TaxRounding.WHOLE_INVOICE:
        whole = total(tuple(Money(step.value) for step in taxed))
        return _of(tax.name, added("taxed", taxed, whole), rate, share)
    each = tuple(_of(f"{tax.name} on {step.name}", step, rate, share) for step in taxed)
    return added(tax.name, each, total(tuple(Money(step.value) for step in each)))


def _of(name: str, amount: Step, rate: Step, share: Decimal) -> Step:
    return Step(
        name=name,
        formula="amount x rate, to the cent",
        operation=Operation.TIMES,
        rounding=Rounding.CENT,
        inputs=(amount, rate),
        value=to_cents(amount.value * share),
        unit="$",
        rules=("tax_rounding",),
    )
