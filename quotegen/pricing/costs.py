"""Costs: the same lines at the company's cost. Its records never meet a customer view."""

from fractions import Fraction

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.rates import cost_at, shown_rate
from quotegen.pricing.records import CostLine, FinishCosts, Line, PricedFinish, PricedQuote
from quotegen.pricing.tax import TAX
from quotegen.quantity import Length
from quotegen.spec.rate_book import BookRate
from quotegen.spec.records import JobSpec
from quotegen.spec.text_fields import Rate


def costs_of(job: JobSpec, quote: PricedQuote) -> tuple[FinishCosts, ...]:
    """Return price against cost for the whole job at each finish."""
    return tuple(_finish_costs(job, finish) for finish in quote.finishes)


def _finish_costs(job: JobSpec, finish: PricedFinish) -> FinishCosts:
    lines = tuple(_cost_line(job, line) for line in finish.lines)
    cost = total(tuple(line.cost for line in lines if line.cost is not None))
    return FinishCosts(
        finish=finish.id,
        name=finish.name,
        lines=lines,
        price=finish.total,
        cost=cost,
        margin=Money(finish.total - cost),
        margin_share=Fraction(finish.total - cost) / Fraction(finish.total or 1),
        without_cost=tuple(line.name for line in lines if line.cost is None),
    )


def _cost_line(job: JobSpec, line: Line) -> CostLine:
    cost = _cost(job, line)
    return CostLine(
        line=line.id,
        name=line.working.name,
        price=line.amount,
        cost=cost,
        margin=None if cost is None else Money(line.amount - cost),
    )


def _cost(job: JobSpec, line: Line) -> Money | None:
    book = job.rate_book
    if TAX in line.scope:
        return line.amount  # it is collected and handed on
    if line.rate_id in book.finishes and line.scope == ("finish",):
        rate = book.finishes[line.rate_id].cost
    elif line.rate_id in book.rates:
        thickness = next((p.thickness for p in job.placements if p.id == line.placement), None)
        rate = _book_cost(book.rates[line.rate_id], line, thickness)
    else:
        return ZERO  # the minimum is a price, and no work stands behind it
    return None if rate is None else to_cents(line.quantity * shown_rate(rate, job.units).amount)


def _book_cost(rate: BookRate, line: Line, thickness: Length | None) -> Rate | None:
    if line.band is not None:
        return rate.bands[line.band].cost
    return cost_at(rate, thickness)
