"""Taxes: each a line of its own at the end, rounded as the company's file says."""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import ONE, Unit, decimal_of
from quotegen.reading.files.company import EVERYTHING, Tax, TaxRounding
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.working import Operation, Rounding, Step, added, given

TAX = "tax"
"""The scope of a tax line; no page explains it and no rate covers it."""


def tax_lines(job: JobSpec, lines: tuple[Line, ...]) -> Iterator[Line]:
    """Yield one line for each tax that is due.

    Taxes are on the price and never on each other. A tax is rounded half-up to the cent, for each
    line or once for all of them as the seller chose (RI Gen. Laws 44-18.1-25, as in
    the other Streamlined states: to the third decimal, and up when that is over four).
    """
    for index, tax in enumerate(job.company.tax):
        taxed = tuple(line for line in lines if is_taxed(tax, line))
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


def is_taxed(tax: Tax, line: Line) -> bool:
    """Tell whether a tax is on a line: on everything, or on a scope item that the line pays for."""
    return EVERYTHING in tax.covers or not set(tax.covers).isdisjoint(line.scope)


def taxed_amount(tax: Tax, lines: tuple[Line, ...]) -> Money:
    """Add up the lines that a tax is on."""
    taxed = (line for line in lines if TAX not in line.scope and is_taxed(tax, line))
    return total(tuple(line.amount for line in taxed))


def _working(job: JobSpec, index: int, tax: Tax, taxed: tuple[Line, ...]) -> Step:
    share = decimal_of(tax.rate)
    rate = given(f"rate of the tax `{tax.id}`", share, "", job.company_source(TAX, index, "rate"))
    if tax.round is TaxRounding.WHOLE_INVOICE:
        parts = tuple(line.working for line in taxed)
        whole = total(tuple(line.amount for line in taxed))
        return _of(tax.name, added("taxed", parts, whole), rate, share)
    each = tuple(_of(f"{tax.name} on {line.working.name}", line.working, rate, share)
                 for line in taxed)  # fmt: skip
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
