"""Sheet 6, what can change the price: its lines by what moves them, and worked examples."""

from quotegen.explain.pictures.charts import adjustment_chart
from quotegen.explain.results import Results
from quotegen.explain.sheets.price_sheet import area_rows
from quotegen.explain.sheets.subtotal_rows import placement_rows, rounding_sentence, scope_rows
from quotegen.explain.sheets.views import ChangeSheet, PricedRow, WorkedRow
from quotegen.explain.words.line_notes import note_of
from quotegen.explain.words.prose import prose
from quotegen.explain.words.rows import Prose, Row
from quotegen.pricing.quoted.no_work import ROUNDING, TAX
from quotegen.pricing.quoted.records import AdjustmentRow, Line
from quotegen.quantity import Unit
from quotegen.reading.files.company import Show
from quotegen.reading.files.rate_book import Basis


def change_sheet(results: Results) -> ChangeSheet:
    """Build sheet 6."""
    words, quote = results.words, results.quote
    return ChangeSheet(
        measured=_lines(results, Basis.MEASURED),
        fixed=_lines(results, Basis.FIXED),
        allowances=_lines(results, Basis.ALLOWANCE),
        taxes=_of_scope(results, TAX),
        round_total=_of_scope(results, ROUNDING),
        total=words.money(quote.chosen.total),
        rounding=rounding_sentence(results),
        by_placement=placement_rows(results),
        by_scope=scope_rows(results),
        clause=clause("measure_and_adjust", results),
        area_prices=area_rows(results),
        worked=tuple(_worked(results, row) for row in quote.adjustment),
        chart=adjustment_chart(results),
        quoted=words("as_quoted_with", finish=quote.chosen.name),
        unit_prices=tuple(
            Row(name=price.name, text="", amount=words.rate(price.rate, price.unit))
            for price in quote.unit_prices
        ),
        cannot=clause("cannot_change", results),
        changes=clause("changes", results),
        hidden=clause("hidden_conditions", results),
    )


def clause(clause_id: str, results: Results) -> Prose:
    """Render one clause."""
    page = results.content.clauses[clause_id]
    return prose(clause_id, page.front.title, page.markdown, results)


def _lines(results: Results, basis: Basis) -> tuple[PricedRow, ...]:
    return tuple(
        _line(results, line)
        for line in results.quote.chosen.lines
        if line.basis is basis
        and {TAX, ROUNDING}.isdisjoint(line.scope)
        and results.job.company.show is Show.LINES
    )


def _of_scope(results: Results, scope: str) -> tuple[PricedRow, ...]:
    return tuple(_line(results, one) for one in results.quote.chosen.lines if scope in one.scope)


def _line(results: Results, line: Line) -> PricedRow:
    words = results.words
    lump = line.unit is Unit.LUMP
    return PricedRow(
        name=line.name,
        where=results.placement_name(line),
        quantity=words.quantity(line.quantity, line.unit),
        rate="" if lump else words.rate(line.rate, line.unit),
        amount=words.money(line.amount),
        note=note_of(results, line),
    )


def _worked(results: Results, row: AdjustmentRow) -> WorkedRow:
    words = results.words
    return WorkedRow(
        change=words.signed_percent(row.change),
        area=words.quantity(row.area, results.quote.area_unit),
        difference=words.signed_money(row.difference),
        total=words.money(row.total),
        note=words("needs_signatures") if row.needs_signatures else "",
        is_quote=row.change == 0,
    )
