"""What one unit of area more or less moves the price by."""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.line_notes import taxes_of
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.no_work import MINIMUM
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.rates import shown_rate
from quotegen.quantity import decimal_places

_SHOWN_PLACES = 3
"""Decimals of a dollar that a price by area is shown with."""


def total_area(results: Results) -> str:
    """The area of all placements as it is priced: the adjustment's row without a change."""
    row = next(row for row in results.quote.adjustment if row.change == 0)
    return results.words.quantity(row.area, results.quote.area_unit)


def area_prices(results: Results) -> tuple[Row, ...]:
    """What one unit of area moves the price by; nothing where the minimum is the price."""
    words, quote = results.words, results.quote
    if holds_at_minimum(results):
        return ()
    names = {p.id: p.name for p in results.job.placements}
    return tuple(
        Row(
            name=names[a.placement],
            text=words(_before_what(results), unit=words.unit_one(a.unit)),
            amount=_rate(words, a.rate),
        )
        for a in quote.chosen.area_price
    )


def _rate(words: Words, rate: Decimal) -> str:
    """A price by area as it is, or about it where shares of shares would not fit a line."""
    if decimal_places(rate) <= _SHOWN_PLACES:
        return words.price(rate)
    return words("about_money", amount=words.money(rate))


def _before_what(results: Results) -> str:
    """The text that says what still comes on top of a price by area."""
    if results.job.company.round_total_to is None:
        return "for_each_before_tax" if taxes_of(results) else "for_each"
    return "for_each_before_both" if taxes_of(results) else "for_each_before_rounding"


def small_job_sentences(results: Results) -> Iterator[str]:
    """For each line at a rate for small jobs: from which size a foot costs less, and why."""
    words, job = results.words, results.job
    for line in results.quote.chosen.lines:
        price = job.rate_book.price_of(line.rate_id)
        if price is None or line.band is None or price.by_slice:
            continue
        large = price.bands[-1]
        rate = shown_rate(large.rate, job.units)
        if line.rate > rate.amount and large.from_ is not None:
            size = words.quantity(typed_quantity(large.from_, line.unit), line.unit)
            yield words("small_job_why", size=size)


def holds_at_minimum(results: Results) -> bool:
    """Whether the company's minimum is part of the price."""
    return any(MINIMUM in line.scope for line in results.quote.chosen.lines)
