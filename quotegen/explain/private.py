"""Stage 5, explain, the owner's side: what must never leave the truck."""

from dataclasses import dataclass

from quotegen.explain.results import Results
from quotegen.pricing.records import FinishCosts


@dataclass(frozen=True, slots=True, kw_only=True)
class CostRow:
    """One line: what it brings and what it costs."""

    name: str
    price: str
    cost: str
    margin: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishCostSheet:
    """Price against cost at one finish."""

    name: str
    lines: tuple[CostRow, ...]
    price: str
    cost: str
    margin: str
    margin_share: str
    without_cost: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrivateSheet:
    """Everything on the owner's cost sheet."""

    language: str
    title: str
    accent: str
    paper_size: str
    quote: str
    revision: str
    date: str
    customer: str
    order: str
    net: str
    notes: str
    finishes: tuple[FinishCostSheet, ...]


def private_sheet(results: Results, costs: tuple[FinishCosts, ...]) -> PrivateSheet:
    """Build the cost sheet."""
    job, words, takeoff = results.job, results.words, results.takeoff
    return PrivateSheet(
        language=words.locale.partition("_")[0],
        title=words("cost_title", title=job.title, quote=job.quote),
        accent=job.company.accent,
        paper_size=job.paper.value,
        quote=job.quote,
        revision=str(job.revision),
        date=words.day(job.quote_date),
        customer=job.customer.name,
        order=words.volume(takeoff.order_cuyd),
        net=words.volume(takeoff.volume_cuyd),
        notes=job.private_notes or "",
        finishes=tuple(_finish(results, finish) for finish in costs),
    )


def _finish(results: Results, costs: FinishCosts) -> FinishCostSheet:
    words = results.words
    return FinishCostSheet(
        name=costs.name,
        lines=tuple(
            CostRow(
                name=line.name,
                price=words.money(line.price),
                cost="" if line.cost is None else words.money(line.cost),
                margin="" if line.margin is None else words.signed_money(line.margin),
            )
            for line in costs.lines
        ),
        price=words.money(costs.price),
        cost=words.money(costs.cost),
        margin=words.signed_money(costs.margin),
        margin_share=words.percent(costs.margin_share),
        without_cost=costs.without_cost,
    )
