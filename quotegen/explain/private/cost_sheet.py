"""Stage 5, explain, the owner's side: the cost sheet. It must never leave the truck."""

from collections.abc import Iterator
from itertools import groupby

from quotegen.explain.private.cost_rows import (
    crew_hours,
    each_finish,
    floor_lines,
    floor_verdict,
    if_rows,
    item_name,
    item_rate,
    line_rows,
    missing_lines,
    quantity_of,
)
from quotegen.explain.private.outcome_rows import drift_section, outcome_section
from quotegen.explain.private.owners_sheet import OwnersSheet, Section, Table, TableRow, shown
from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.money import ZERO, total
from quotegen.pricing.costs.outcome import Drift
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.pricing.costs.records import CostItem, CostKind, FinishCosts


def cost_sheet(results: Results, owner: OwnersFigures, drift: tuple[Drift, ...]) -> OwnersSheet:
    """Build the cost sheet.

    Args:
        results: of the job, for its words and names.
        owner: what pricing worked out for the owner alone.
        drift: how crew hours came out over all completed jobs.
    """
    job, words, takeoff = results.job, results.words, results.takeoff
    facts = (
        (words("cost_net"), words.volume(takeoff.volume_cuyd)),
        (words("cost_order"), words.volume(takeoff.order_cuyd)),
        (words("cost_under_floor"), owner.job.file.under_floor or ""),
        (words("cost_notes"), owner.job.file.private_notes or ""),
    )
    title = words("cost_title", title=job.title, quote=job.quote)
    return OwnersSheet(
        head=paper_head(results, title, job.quote_date),
        lead=tuple(_lead(results, owner.chosen)),
        facts=tuple(fact for fact in facts if fact[1]),
        sections=shown((
            Section(id="missing", title=words("cost_missing"),
                    points=missing_lines(results, owner.chosen)),
            Section(id="floors", title=words("cost_floors"),
                    points=floor_lines(words, owner.chosen)),
            Section(id="finishes", title=words("cost_finishes"),
                    table=each_finish(words, owner.finishes)),
            _kinds(results, owner.chosen),
            Section(id="hours", title=words("cost_hours"), lines=(words("cost_hours_about"),),
                    table=crew_hours(results, owner.finishes)),
            _items(results, owner.chosen),
            _under_cost(results, owner.chosen),
            Section(id="lines", title=words("cost_lines"), lines=(words("cost_lines_about"),),
                    table=line_rows(words, owner.chosen)),
            Section(id="extras", title=words("cost_extras"),
                    table=if_rows(results, owner.extras)),
            Section(id="sensitivity", title=words("cost_sensitivity"),
                    lines=(words("cost_sensitivity_about"),),
                    table=if_rows(results, owner.sensitivity)),
            outcome_section(results, owner),
            drift_section(results, drift),
        )),
    )  # fmt: skip


def _lead(results: Results, costs: FinishCosts) -> Iterator[str]:
    words = results.words
    yield words(
        "cost_lead",
        finish=costs.name,
        price=words.money(costs.price),
        cost=words.money(costs.cost),
        margin=words.signed_money(costs.margin),
        share=words.signed_percent(costs.margin_share),
    )
    yield floor_verdict(words, costs)


def _kinds(results: Results, costs: FinishCosts) -> Section:
    """Sum the costs by what the money goes for."""
    words = results.words
    rows = [
        TableRow(
            name=words(f"cost_kind_{kind.value}"),
            cells=(words.money(total(tuple(item.amount for item in items))),),
        )
        for kind, items in _by_kind(costs.items)
    ]
    sums = (
        ("cost_cost", words.money(costs.cost)),
        ("cost_price", words.money(costs.price)),
        ("cost_margin", words.signed_money(costs.margin)),
    )
    rows += [TableRow(name=words(key), cells=(text,), strong=True) for key, text in sums]
    return Section(
        id="kinds",
        title=words("cost_kinds", finish=costs.name),
        table=Table(head=(words("cost_what"), words("line_amount_only")), rows=tuple(rows)),
    )


def _by_kind(items: tuple[CostItem, ...]) -> Iterator[tuple[CostKind, tuple[CostItem, ...]]]:
    for kind, group in groupby(items, key=lambda item: item.kind):
        yield kind, tuple(group)


def _items(results: Results, costs: FinishCosts) -> Section:
    words, rows = results.words, list[TableRow]()
    places = {p.id: p.name for p in results.job.placements}
    for kind, items in _by_kind(costs.items):
        rows.append(TableRow(name=words(f"cost_kind_{kind.value}"), group=True))
        rows += [
            TableRow(
                name=item_name(results, item),
                note=places.get(item.placement or "", ""),
                cells=(
                    quantity_of(words, item), item_rate(words, item), words.money(item.amount)
                ),
            )
            for item in items
        ]  # fmt: skip
    head = (words("cost_what"), words("line_quantity"), words("line_rate"), words("line_amount"))
    return Section(
        id="items",
        title=words("cost_items", finish=costs.name),
        table=Table(head=head, rows=tuple(rows)),
    )


def _under_cost(results: Results, costs: FinishCosts) -> Section:
    words = results.words
    points = tuple(
        words(
            "cost_under_cost_line",
            line=line.name,
            price=words.money(line.price),
            cost=words.money(line.cost or ZERO),
        )
        for line in costs.under_cost
    )
    return Section(id="under-cost", title=words("cost_under_cost"), points=points)
