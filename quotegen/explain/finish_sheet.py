"""Sheet 4, finishes side by side, and the extras with their prices."""

from collections.abc import Iterator

from quotegen.explain import hatches, svg
from quotegen.explain.numbers import reseal
from quotegen.explain.option_rows import with_tax
from quotegen.explain.prose import html, sentence
from quotegen.explain.results import Results
from quotegen.explain.svg import Drawing
from quotegen.explain.views import FinishColumn, Row
from quotegen.pricing.records import PricedFinish
from quotegen.spec.rate_book import FinishKind

SWATCH_PX = (150.0, 84.0)


def finish_columns(results: Results) -> tuple[FinishColumn, ...]:
    """Return one column for each finish, the chosen one first."""
    return tuple(_column(results, finish) for finish in results.quote.finishes)


def extras(results: Results) -> tuple[Row, ...]:
    """Return what the homeowner may add, each at the price that it adds."""
    return tuple(_extras(results))


def swatch(results: Results, kind: FinishKind, ident: str) -> Drawing:
    """Draw a surface as seen from above; a drawing, not a photograph."""
    width, height = SWATCH_PX
    pattern = svg.element("defs", hatches.surface(kind, f"{ident}-hatch"))
    field = svg.element(
        "rect",
        x=1,
        y=1,
        width=width - 2,
        height=height - 2,
        fill=f"url(#{ident}-hatch)",
        stroke=svg.INK,
        stroke_width=svg.THIN,
    )
    title = results.words("swatch_title", finish=results.content.finishes[kind.value].front.title)
    drawn = svg.document(
        width, height, pattern + field, title=title, ident=ident, css_class="drawing swatch"
    )
    return Drawing(svg=drawn, title=title)


def _column(results: Results, finish: PricedFinish) -> FinishColumn:
    words, quote = results.words, results.quote
    book = results.job.rate_book.finishes[finish.id]
    page = results.content.finishes[book.kind.value]
    chosen = finish.id == quote.chosen.id
    return FinishColumn(
        id=finish.id,
        name=finish.name,
        kind=page.front.title,
        swatch=swatch(results, book.kind, f"swatch-{finish.id}"),
        chosen=chosen,
        total=words.money(finish.total),
        difference="" if chosen else words.signed_money(quote.difference(finish)),
        colour=sentence(book.colour) if book.colour else words("colour_plain"),
        visits=words(
            "visits_last",
            visits=str(finish.visits),
            day=words.weekday(results.visits[finish.id][-1].last_day),
        ),
        grip=page.front.grip,
        heat=page.front.heat,
        repair=page.front.repair,
        upkeep=f"{page.front.upkeep} {words('reseal_every', years=reseal(results, book.sealer))}",
        suits=page.front.suits,
        judge=page.front.judge,
        wet_note=page.front.wet_note,
        html=html(page.markdown, results),
    )


def _extras(results: Results) -> Iterator[Row]:
    words = results.words
    for extra in results.quote.extras:
        page = results.content.scope[extra.scope[0]].front
        parts = tuple(
            f"{words.quantity(line.quantity, line.unit)} × {words.rate(line.rate, line.unit)}"
            for line in extra.lines
        )
        yield Row(
            name=extra.name,
            text=f"{page.short}. {words.listing(parts)}{with_tax(results)}",
            amount=words.signed_money(extra.amount),
        )
