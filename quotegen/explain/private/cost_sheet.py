"""The cost sheet: what the job costs, what remains of its price. It must never leave the truck."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby

from quotegen.explain.private.floor_words import floor_lines, floor_verdict, what_if_table
from quotegen.explain.private.outcome_section import drift_section, outcome_section
from quotegen.explain.private.owners_sheet import (
    OwnersSheet,
    Section,
    Table,
    TableRow,
    table,
    with_content,
)
from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.wording import Words
from quotegen.money import ZERO, total
from quotegen.pricing.costs.outcome import Drift
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.pricing.costs.records import CostItem, CostKind, FinishCosts, MissingKind
from quotegen.quantity import Unit, decimal_places
from quotegen.trade.wording import unit_key

_HOUR_PLACES = 1


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
        sections=with_content((
            Section(id="missing", title=words("cost_missing"),
                    points=_missing_lines(results, owner.chosen)),
            *(_against_price(results, owner) if owner.chosen.is_known else ()),
            outcome_section(results, owner),
            drift_section(results, drift),
        )),
    )  # fmt: skip


def _against_price(results: Results, owner: OwnersFigures) -> tuple[Section, ...]:
    """Everything that holds costs against the price; of no use where no cost is typed."""
    words = results.words
    return (
        Section(id="floors", title=words("cost_floors"),
                points=floor_lines(words, owner.chosen)),
        Section(id="finishes", title=words("cost_finishes"),
                table=_each_finish(words, owner.finishes)),
        _kinds(results, owner.chosen),
        Section(id="hours", title=words("cost_hours"), lines=(words("cost_hours_about"),),
                table=_crew_hours(results, owner.finishes)),
        _items(results, owner.chosen),
        _under_cost(results, owner.chosen),
        Section(id="lines", title=words("cost_lines"), lines=(words("cost_lines_about"),),
                table=_line_rows(words, owner.chosen)),
        Section(id="extras", title=words("cost_extras"),
                table=what_if_table(words, owner.extras, with_cost=True)),
        Section(id="sensitivity", title=words("cost_sensitivity"),
                lines=(words("cost_sensitivity_about"),),
                table=what_if_table(words, owner.sensitivity, with_cost=True)),
    )  # fmt: skip


def _lead(results: Results, costs: FinishCosts) -> Iterator[str]:
    words = results.words
    if not costs.is_known:
        yield words("cost_not_typed", price=words.money(costs.price))
        return
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
    """The costs, summed by what the money is spent on."""
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
        table=table(words, ("cost_what", "line_amount_only"), rows),
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
                name=_item_name(results, item),
                note=places.get(item.placement or "", ""),
                cells=(
                    _quantity_of(words, item), _item_rate(words, item), words.money(item.amount)
                ),
            )
            for item in items
        ]  # fmt: skip
    head = ("cost_what", "line_quantity", "line_rate", "line_amount")
    return Section(
        id="items",
        title=words("cost_items", finish=costs.name),
        table=table(words, head, rows),
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


def _each_finish(words: Words, finishes: tuple[FinishCosts, ...]) -> Table:
    """Price, cost and margin of every finish, side by side."""
    head = ("finish", "cost_price", "cost_cost", "cost_margin", "cost_share", "cost_crew_day",
            "cost_sq_ft", "cost_walk_away")  # fmt: skip
    rows = (
        TableRow(
            name=one.name,
            cells=(
                words.money(one.price),
                words.money(one.cost),
                words.signed_money(one.margin),
                words.signed_percent(one.margin_share),
                _each(words, one, Fraction(one.crew_days)),
                _each(words, one, Fraction(one.area_sqft)),
                words.money(one.walk_away),
            ),
        )
        for one in finishes
    )
    return table(words, head, rows)


def _each(words: Words, costs: FinishCosts, count: Fraction) -> str:
    return words.signed_money(costs.margin_per(count)) if count else ""


def _crew_hours(results: Results, finishes: tuple[FinishCosts, ...]) -> Table:
    """The crew hours of each step, a column for each finish."""
    words = results.words
    steps: dict[str, str] = {}
    for one in finishes:
        for item in one.of_kind(CostKind.LABOR):
            steps.setdefault(item.id, _item_name(results, item))
    rows = [
        TableRow(name=name, cells=tuple(_hours(words, one, step) for one in finishes))
        for step, name in steps.items()
    ]
    if rows:
        sums = tuple(words.number(one.hours, _HOUR_PLACES) for one in finishes)
        rows.append(TableRow(name=words("total"), cells=sums, strong=True))
    return Table(head=(words("cost_step"), *(one.name for one in finishes)), rows=tuple(rows))


def _hours(words: Words, costs: FinishCosts, step: str) -> str:
    mine = [item.quantity for item in costs.of_kind(CostKind.LABOR) if item.id == step]
    return words.number(sum(mine), _HOUR_PLACES) if mine else ""


def _item_name(results: Results, item: CostItem) -> str:
    """What an item is called: as the book has it, else in our words."""
    if item.name:
        return item.name
    kind = "material" if item.kind is CostKind.MATERIAL else "cost_item"
    return results.words(f"{kind}_{item.id}")


def _quantity_of(words: Words, item: CostItem) -> str:
    """The quantity of an item; empty for a lump sum."""
    if item.unit in {"", Unit.LUMP.value}:
        return ""
    number = words.number(item.quantity, decimal_places(item.quantity))
    return words.count(f"cost_unit_{unit_key(item.unit)}", item.quantity, number=number)


def _item_rate(words: Words, item: CostItem) -> str:
    """What one of an item costs, or what it is a share of; empty for a lump sum."""
    if item.unit == "%":
        return words("cost_of", amount=words.money(item.rate))
    return "" if item.unit in {"", Unit.LUMP.value} else words.price(item.rate)


def _line_rows(words: Words, costs: FinishCosts) -> Table:
    """Each line of the price beside the cost of what is for it alone."""
    head = ("line", "cost_price", "cost_cost", "cost_margin")
    rows = (
        TableRow(
            name=line.name,
            cells=(
                words.money(line.price),
                "" if line.cost is None else words.money(line.cost),
                "" if line.margin is None else words.signed_money(line.margin),
            ),
        )
        for line in costs.lines
    )
    return table(words, head, rows)


def _missing_lines(results: Results, costs: FinishCosts) -> tuple[str, ...]:
    """What the book gives no cost for and so counts as free, and what to type."""
    words = results.words
    lines = []
    for kind in MissingKind:
        mine = dict.fromkeys(one.name for one in costs.missing if one.kind is kind)
        names = (
            tuple(words(f"material_{name}") for name in mine)
            if kind is MissingKind.MATERIAL
            else tuple(mine)
        )
        if mine:
            lines.append(
                words(
                    f"cost_missing_{kind.value}",
                    names=words.listing(tuple(f"“{name}”" for name in names)),
                )
            )
    return tuple(lines)
