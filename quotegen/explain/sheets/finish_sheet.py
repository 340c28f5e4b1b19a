"""Sheet 3, finishes side by side, and what else may be chosen."""

from collections.abc import Iterator

from quotegen.explain.pictures.swatches import finish_swatch
from quotegen.explain.results import Results
from quotegen.explain.sheets.option_rows import alternate_rows, color_rows, with_tax
from quotegen.explain.sheets.views import FinishColumn, FinishSheet
from quotegen.explain.words.line_notes import share_note
from quotegen.explain.words.numbers import reseal
from quotegen.explain.words.prose import in_a_sentence, sentence
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.quantity import Unit
from quotegen.reading.files.rate_book import Sealer


def finish_sheet(results: Results) -> FinishSheet:
    """Build sheet 3: the chosen finish first."""
    return FinishSheet(
        columns=tuple(_column(results, finish) for finish in results.quote.finishes),
        upkeep_name=_upkeep_name(results),
        extras=tuple(extra_rows(results)),
        alternates=alternate_rows(results),
        colors=color_rows(results),
    )


def _column(results: Results, finish: PricedFinish) -> FinishColumn:
    words, quote = results.words, results.quote
    book = results.job.rate_book.finishes[finish.id]
    page = results.content.finishes[book.kind.value].front
    chosen = finish.id == quote.chosen.id
    last = results.visits[finish.id][-1].last_day
    return FinishColumn(
        id=finish.id,
        name=finish.name,
        swatch=finish_swatch(results, finish.id),
        chosen=chosen,
        total=words.money(finish.total),
        difference="" if chosen else words.signed_money(quote.difference(finish)),
        color=sentence(book.color) if book.color else words("color_plain"),
        work=page.work,
        visits=words.count("visits_last", finish.visits, day=words.weekday(last)),
        reseal=_reseal(results, book.sealer),
        upkeep=_upkeep(results, finish.id),
        grip=page.grip,
        heat=page.heat,
        repair=page.repair,
        judge=page.judge,
    )


def _reseal(results: Results, sealer: Sealer) -> str:
    words, uses = results.words, (p.use for p in results.job.placements)
    if sealer is Sealer.NONE:
        return words("upkeep_none")
    return words(f"reseal_{sealer.value}", years=reseal(results, sealer, *uses))


def _upkeep(results: Results, finish: str) -> str:
    """What renewing the sealer comes to over the years, at today's price."""
    words, upkeep = results.words, results.upkeep.get(finish)
    if upkeep is None or upkeep.prices is None:
        return ""
    return words(
        "upkeep_range",
        least=words.tens(upkeep.prices.least),
        most=words.tens(upkeep.prices.most),
    )


def _upkeep_name(results: Results) -> str:
    """Over how many years the sealer is renewed; empty where no finish has one."""
    years = next((str(one.years) for one in results.upkeep.values()), "")
    return results.words("upkeep_name", years=years) if years else ""


def extra_rows(results: Results) -> Iterator[Row]:
    """What the homeowner may add, each with what it adds to the price."""
    words = results.words
    for extra in results.quote.extras:
        page = results.content.scope[extra.scope[0]].front
        parts = tuple(_how_much(results, one) for one in extra.lines if one.pays_for_work)
        yield Row(
            name=extra.name,
            text=f"{in_a_sentence(page.short)}, {words.listing(parts)}{with_tax(results)}",
            amount=words.signed_money(extra.amount),
        )


def _how_much(results: Results, line: Line) -> str:
    """How a line of an extra comes about: quantity and rate, its share of others, or one sum."""
    words = results.words
    if line.unit is Unit.LUMP:
        return share_note(results, line).removesuffix(".") or words("unit_lump")
    return f"{words.quantity(line.quantity, line.unit)} × {words.rate(line.rate, line.unit)}"
