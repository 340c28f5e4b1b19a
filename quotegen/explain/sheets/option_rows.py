"""What the homeowner may choose beside finishes and extras: other finishes by part, and colors."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.explain.sheets.combination import look_name, part_names
from quotegen.explain.words.line_notes import taxes_of
from quotegen.explain.words.prose import sentence
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.records import PricedColors


def alternate_rows(results: Results) -> tuple[Row, ...]:
    """Each other finish of a placement, and what it moves the price by."""
    words = results.words
    quoted = results.quote.alternates
    names = part_names(results, tuple((other.placement, other.finish) for other in quoted))
    return tuple(
        Row(
            name=name,
            text=words.count("option_total", other.visits, total=words.money(other.total)),
            amount=words.signed_money(other.amount),
        )
        for name, other in zip(names, quoted, strict=True)
    )


def color_rows(results: Results) -> tuple[Row, ...]:
    """Each look with the finish that takes it, and what it moves the price by."""
    return tuple(_look(results, look) for look in results.quote.color_choices)


def with_tax(results: Results) -> str:
    """A remark that a price has tax in it; empty where none is due."""
    return results.words("option_with_tax") if taxes_of(results) else ""


def _look(results: Results, look: PricedColors) -> Row:
    words, book = results.words, results.job.rate_book
    parts = tuple(_parts(results, look))
    return Row(
        name=look_name(results, look.colors),
        text=sentence(
            words("color_on", finish=book.finishes[look.finish].name, parts=words.listing(parts))
        ),
        amount=words.signed_money(look.amount),
    )


def _parts(results: Results, look: PricedColors) -> Iterator[str]:
    words, rates = results.words, results.job.rate_book.rates
    for color in look.colors:
        how = rates[color].color
        if how is not None:
            yield words(f"color_{how.value}")
