"""Sheet 4, finishes side by side, and the extras with their prices."""

from collections.abc import Iterator

from quotegen.explain.pictures.swatches import finish_swatch
from quotegen.explain.results import Results
from quotegen.explain.sheets.option_rows import with_tax
from quotegen.explain.sheets.views import FinishColumn
from quotegen.explain.words.line_notes import share_note
from quotegen.explain.words.numbers import reseal
from quotegen.explain.words.prose import html, sentence
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.quantity import Unit


def finish_columns(results: Results) -> tuple[FinishColumn, ...]:
    """A column for each finish, the chosen one first."""
    return tuple(_column(results, finish) for finish in results.quote.finishes)


def extras(results: Results) -> tuple[Row, ...]:
    """What the homeowner may add, each with what it adds to the price."""
    return tuple(_extras(results))


def _column(results: Results, finish: PricedFinish) -> FinishColumn:
    words, quote = results.words, results.quote
    book = results.job.rate_book.finishes[finish.id]
    page = results.content.finishes[book.kind.value]
    chosen = finish.id == quote.chosen.id
    lasts = reseal(results, book.sealer, *(p.use for p in results.job.placements))
    return FinishColumn(
        id=finish.id,
        name=finish.name,
        kind=page.front.title,
        swatch=finish_swatch(results, finish.id),
        chosen=chosen,
        total=words.money(finish.total),
        difference="" if chosen else words.signed_money(quote.difference(finish)),
        color=sentence(book.color) if book.color else words("color_plain"),
        visits=words.count(
            "visits_last",
            finish.visits,
            day=words.weekday(results.visits[finish.id][-1].last_day),
        ),
        grip=page.front.grip,
        heat=page.front.heat,
        repair=page.front.repair,
        upkeep=f"{page.front.upkeep} {words('reseal_every', years=lasts)}",
        upkeep_sum=_upkeep_sum(results, finish.id),
        suits=page.front.suits,
        judge=page.front.judge,
        wet_note=page.front.wet_note,
        html=html(page.markdown, results),
    )


def _upkeep_sum(results: Results, finish: str) -> str:
    """What renewing the sealer comes to over the years, at today's price."""
    words, upkeep = results.words, results.upkeep.get(finish)
    if upkeep is None:
        return words("upkeep_none")
    coats = words(
        "upkeep_coats",
        years=str(upkeep.years),
        least=str(upkeep.least_coats),
        most=str(upkeep.most_coats),
    )
    if upkeep.prices is None:
        return f"{coats}."
    return words(
        "upkeep_range",
        coats=coats,
        coat=words.money(upkeep.prices.coat),
        least=words.money(upkeep.prices.least),
        most=words.money(upkeep.prices.most),
    )


def _extras(results: Results) -> Iterator[Row]:
    words = results.words
    for extra in results.quote.extras:
        page = results.content.scope[extra.scope[0]].front
        parts = tuple(_how_much(results, one) for one in extra.lines if one.pays_for_work)
        yield Row(
            name=extra.name,
            text=f"{page.short}. {words.listing(parts)}{with_tax(results)}",
            amount=words.signed_money(extra.amount),
        )


def _how_much(results: Results, line: Line) -> str:
    """How a line of an extra comes about: quantity and rate, its share of others, or one sum."""
    words = results.words
    if line.unit is Unit.LUMP:
        return share_note(results, line).removesuffix(".") or words.money(line.amount)
    return f"{words.quantity(line.quantity, line.unit)} × {words.rate(line.rate, line.unit)}"
