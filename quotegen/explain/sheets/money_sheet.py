"""Sheet 4, the money: each line once with what it pays for, and what can change the price."""

from collections.abc import Iterator
from itertools import groupby

from quotegen.explain.results import Results
from quotegen.explain.sheets.area_price import small_job_sentences
from quotegen.explain.sheets.covers import in_a_dozen_words
from quotegen.explain.sheets.responsibilities import excluded_rows
from quotegen.explain.sheets.views import LineGroup, MoneySheet, PricedRow, WorkedRow
from quotegen.explain.words.line_notes import note_of, taxes_of
from quotegen.explain.words.prose import in_a_sentence, sentence, short_clause
from quotegen.explain.words.rows import Row
from quotegen.money import Money, total
from quotegen.pricing.quoted.adjustment import SHOWN_CHANGES
from quotegen.pricing.quoted.no_work import AFTER_THE_PRICE
from quotegen.pricing.quoted.records import AdjustmentRow, Line
from quotegen.quantity import Unit
from quotegen.reading.content.content import ScopeGroup
from quotegen.reading.files.company import Show, TaxRounding

FEW_LINES = 6
"""Up to so many lines need no groups."""


def money_sheet(results: Results) -> MoneySheet:
    """Build sheet 4."""
    words, quote = results.words, results.quote
    return MoneySheet(
        groups=line_groups(results),
        total=words.money(quote.chosen.total),
        small_job=tuple(dict.fromkeys(small_job_sentences(results))),
        worked=tuple(worked_rows(results)),
        unit_prices=tuple(
            Row(name=price.name, text="", amount=words.rate(price.rate, price.unit))
            for price in quote.unit_prices
        ),
        measuring=short_clause("measure_and_adjust", results),
        excluded=excluded_rows(results),
    )


def line_groups(results: Results) -> tuple[LineGroup, ...]:
    """The lines of the price as the company shows them; amounts add up to the total."""
    show, lines = results.job.company.show, results.quote.chosen.lines
    if show is Show.ONE_PRICE:
        return (LineGroup(name="", lines=(_one_price(results),), together=""),)
    ordered = _in_order(results)
    grouped = tuple(
        (group, tuple(of_it))
        for group, of_it in groupby(ordered, lambda line: _group_of(results, line))
    )
    if show is Show.GROUPS:
        rows = tuple(_sum_of(results, group, of_it) for group, of_it in grouped)
        return (LineGroup(name="", lines=rows, together=""),)
    if len(lines) <= FEW_LINES or any(len(_groups(results, one)) > 1 for one in lines):
        rows = _rows(results, tuple(ordered))
        return (LineGroup(name="", lines=rows, together=""),)
    return tuple(
        LineGroup(
            name=_group_name(results, group),
            lines=_rows(results, of_it),
            together=results.words.money(_sum(of_it)),
        )
        for group, of_it in grouped
    )


def _in_order(results: Results) -> list[Line]:
    """The lines by group of work, then what follows the price."""
    order = (*ScopeGroup, None)
    lines = results.quote.chosen.lines
    return sorted(lines, key=lambda line: order.index(_group_of(results, line)))


def _group_of(results: Results, line: Line) -> ScopeGroup | None:
    """The group of the item that a line is named for; None for what follows the price."""
    first = line.scope[0]
    return None if first in AFTER_THE_PRICE else results.content.scope[first].front.group


def _groups(results: Results, line: Line) -> set[ScopeGroup]:
    scope = results.content.scope
    return {scope[item].front.group for item in line.scope if item in scope}


def _group_name(results: Results, group: ScopeGroup | None) -> str:
    return results.words(f"group_{group.value}" if group else "group_after")


def _sum(lines: tuple[Line, ...]) -> Money:
    return total(tuple(line.amount for line in lines))


def _sum_of(results: Results, group: ScopeGroup | None, lines: tuple[Line, ...]) -> PricedRow:
    items = tuple(dict.fromkeys(item for line in lines for item in line.scope))
    return PricedRow(
        name=_group_name(results, group),
        pays_for=_titles(results, items),
        quantity="",
        rate="",
        amount=results.words.money(_sum(lines)),
        items=_explained(results, items),
    )


def _one_price(results: Results) -> PricedRow:
    items = results.scope_items()
    return PricedRow(
        name=results.words("one_price"),
        pays_for=_titles(results, items),
        quantity="",
        rate="",
        amount=results.words.money(results.quote.chosen.total),
        items=items,
    )


def _rows(results: Results, lines: tuple[Line, ...]) -> tuple[PricedRow, ...]:
    """A row for each line; placements at one rate share a row, their quantities side by side."""
    alike: dict[tuple[object, ...], list[Line]] = {}
    for line in lines:
        alike.setdefault((line.rate_id, line.name, line.unit, line.rate), []).append(line)
    rows, told = [], set[str]()
    for same in alike.values():
        row = _row(results, tuple(same), told)
        told.add(same[0].scope[0])
        rows.append(row)
    return tuple(rows)


def _row(results: Results, lines: tuple[Line, ...], told: set[str]) -> PricedRow:
    words, line = results.words, lines[0]
    of_it = {one.placement for one in lines}
    part = len(of_it) < len(results.job.placements) and None not in of_it
    places = words.listing(tuple(in_a_sentence(results.placement_name(one)) for one in lines))
    *first, last = (one.quantity for one in lines)
    together = (
        *(words.amount_of(one, line.unit) for one in first),
        words.quantity(last, line.unit),
    )
    return PricedRow(
        name=f"{line.name}, {places}" if part and places else line.name,
        pays_for=_pays_for(results, line, told),
        quantity=" + ".join(together),
        rate="" if line.unit is Unit.LUMP else words.price(line.rate),
        amount=words.money(_sum(lines)),
        items=_explained(results, line.scope),
    )


def _pays_for(results: Results, line: Line, told: set[str]) -> str:
    """What a line pays for: each item with its figure where there are several, and its note.

    An item that a line before it was named for is not explained again.
    """
    new = line.pays_for_work and line.scope[0] not in told
    parts = tuple(_item_words(results, line)) if new else ()
    said = results.words.semicolons(parts)
    note = note_of(results, line)
    return f"{sentence(said)} {note}" if said and note else said or note


def _item_words(results: Results, line: Line) -> Iterator[str]:
    scope, shown = results.content.scope, results.scope_items()
    items = tuple(item for item in line.scope if item in shown)
    for item in items:
        front = scope[item].front
        if len(items) == 1:
            yield in_a_sentence(front.short)
            continue
        elsewhere = any(other is not line for other in results.lines_named_for(item))
        figure = "" if elsewhere else in_a_dozen_words(item, results)
        named = in_a_sentence(front.title)
        yield f"{named}, {figure}" if figure and item != "finish" else named


def _titles(results: Results, items: tuple[str, ...]) -> str:
    scope, shown = results.content.scope, results.scope_items()
    titles = (in_a_sentence(scope[item].front.title) for item in items if item in shown)
    return results.words.listing(tuple(titles))


def _explained(results: Results, items: tuple[str, ...]) -> tuple[str, ...]:
    shown = results.scope_items()
    return tuple(item for item in items if item in shown)


def worked_rows(results: Results) -> Iterator[WorkedRow]:
    """The price at the least, the quoted and the most of the worked areas, to the ten dollars."""
    for row in results.quote.adjustment:
        if row.change in SHOWN_CHANGES:
            yield _worked(results, row)


def _worked(results: Results, row: AdjustmentRow) -> WorkedRow:
    words, quoted = results.words, row.change == 0
    return WorkedRow(
        change=words("this_quote") if quoted else words.signed_percent(row.change),
        area=words.quantity(row.area, results.quote.area_unit),
        difference="" if quoted else words.signed_tens(row.difference),
        total=words.money(row.total) if quoted else words.tens(row.total),
        is_quote=quoted,
    )


def rounding_sentence(results: Results) -> str:
    """How the figures are rounded; taxes by the rule that the company chose."""
    words = results.words
    sentences = [words("rounding_lines", area=words.area_step())]
    rules = {tax.round for tax in taxes_of(results)}
    if TaxRounding.EACH_LINE in rules:
        sentences.append(words("rounding_tax_by_line"))
    if TaxRounding.WHOLE_INVOICE in rules:
        sentences.append(words("rounding_tax_once"))
    step = results.job.company.round_total_to
    if step is not None:
        sentences.append(words("rounding_total", step=words.money(step)))
    return " ".join((*sentences, words("rounding_payments")))
