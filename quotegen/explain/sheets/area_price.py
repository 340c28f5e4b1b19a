"""What one unit of area more or less moves the price by, and what that pays for."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.line_notes import taxes_of
from quotegen.explain.words.prose import in_a_sentence
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.no_work import MINIMUM
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.rates import shown_rate
from quotegen.pricing.quoted.shares import is_share, lines_shared
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


def area_rows(results: Results) -> tuple[Row, ...]:
    """What one unit of area moves the price by, with what that pays for and what it does not."""
    placements = (price.placement for price in results.quote.chosen.area_price)
    return tuple(
        replace(row, text=_what_it_pays_for(results, placement, row.text))
        for placement, row in zip(placements, area_prices(results), strict=False)
    )


def _what_it_pays_for(results: Results, placement: str, each: str) -> str:
    words, scope = results.words, results.content.scope
    book, chosen = results.job.rate_book, results.quote.chosen.lines
    by_area = [one for one in chosen if one.placement == placement and one.follows_area]
    shown = results.scope_items()
    items = dict.fromkeys(item for line in by_area for item in line.scope if item in shown)
    shares = [one for one in chosen if is_share(book, one)]
    along = [
        share
        for share in shares
        if any(one in by_area for one in lines_shared(book, share.rate_id, chosen))
    ]
    names = (
        *(in_a_sentence(scope[item].front.title) for item in items),
        *(in_a_sentence(share.name) for share in along),
    )
    paid = words("area_pays_for", each=each, names=words.listing(names))
    others = dict.fromkeys(
        in_a_sentence(one.name)
        for one in chosen
        if one.pays_for_work
        and one.placement in {None, placement}
        and not one.follows_area
        and one not in along
    )
    return words("area_pays_not", paid=paid, names=words.listing(tuple(others))) if others else paid


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
