"""Notes beside the lines of a price: seasons, slices, travel, allowances, taxes."""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.tax import TAX, is_due, taxed_amount
from quotegen.quantity import decimal_places, rounded
from quotegen.reading.fields.text_fields import MINUTES_PER_HOUR, DayOfYear
from quotegen.reading.files.company import Tax, TaxRounding
from quotegen.reading.files.rate_book import Basis, BookRate, ExceededRule, Price, Season

_LEAP_YEAR = 2000
_EXCEEDED = {
    ExceededRule.AT_COST: "allowance_at_cost",
    ExceededRule.COST_PLUS: "allowance_cost_plus",
    ExceededRule.CAPPED: "allowance_capped",
}


def note_of(results: Results, line: Line) -> str:
    """The note of a line; empty where its figures say it all."""
    if TAX in line.scope:
        return _tax_note(results, line)
    price = results.job.rate_book.price_of(line.rate_id)
    return " ".join(_notes(results.words, line, price)) if price else ""


def taxes_of(results: Results) -> tuple[Tax, ...]:
    """The taxes that the job owes."""
    return tuple(tax for tax in results.job.company.tax if is_due(results.job, tax))


def _notes(words: Words, line: Line, price: Price) -> Iterator[str]:
    rate = price if isinstance(price, BookRate) else None
    if rate and rate.season is not None:
        yield _season(words, rate.season)
    if line.band is not None:
        yield _band(words, line, price)
    if rate:
        yield from _rate_notes(words, line, rate)


def _rate_notes(words: Words, line: Line, rate: BookRate) -> Iterator[str]:
    if rate.cutting is not None:
        yield words("note_cutting", share=words.percent(rate.cutting))
    if rate.travel is not None:
        yield words("note_both_ways" if rate.travel.both_ways else "note_one_way")
        free = rate.travel.free
        if free is not None and free.miles is not None:
            yield words("note_free_miles", miles=_plain(words, free.miles))
        if free is not None and free.hours is not None:
            minutes = free.hours * MINUTES_PER_HOUR
            yield words("note_free_time", minutes=_plain(words, minutes))
    if line.basis is Basis.ALLOWANCE:
        rule = rate.exceeded.rule if rate.exceeded else ExceededRule.AT_COST
        plus = rate.exceeded.plus if rate.exceeded else None
        yield words(_EXCEEDED[rule], share=words.percent(plus) if plus is not None else "")


def _plain(words: Words, amount: Fraction) -> str:
    shown = rounded(amount, 1)
    return words.number(shown, decimal_places(shown))


def _season(words: Words, season: Season) -> str:
    return words("note_season", first=_day(words, season.first), last=_day(words, season.last))


def _day(words: Words, day: DayOfYear) -> str:
    return words.day_of_year(date(_LEAP_YEAR, day.month, day.day))


def _band(words: Words, line: Line, price: Price) -> str:
    band = price.bands[line.band or 0]
    start, end = (
        words.quantity(typed_quantity(count, line.unit), line.unit) if count else ""
        for count in (band.from_, band.to)
    )
    kind = "slice" if price.by_slice else "size"
    ends = "between" if start and end else "above" if start else "first" if end else "all"
    return words(f"note_{kind}_{ends}", start=start, end=end)


def _tax_note(results: Results, line: Line) -> str:
    words = results.words
    tax = next(tax for tax in results.job.company.tax if tax.id == line.rate_id)
    once = tax.round is TaxRounding.WHOLE_INVOICE
    return words(
        "note_tax_once" if once else "note_tax_by_line",
        rate=words.exact_percent(tax.rate),
        amount=words.money(taxed_amount(tax, results.quote.chosen.lines)),
    )
