"""Notes beside the lines of a price: seasons, slices, travel, allowances, shares, taxes."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date
from fractions import Fraction

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.prose import in_a_sentence
from quotegen.pricing.quoted.no_work import DISCOUNT, ROUNDING, TAX
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.shares import is_share
from quotegen.pricing.quoted.tax import is_due, taxed_amount
from quotegen.quantity import decimal_places, rounded
from quotegen.reading.fields.road_fields import MINUTES_PER_HOUR
from quotegen.reading.fields.text_fields import DayOfYear
from quotegen.reading.files.company import EVERYTHING, Tax, TaxRounding
from quotegen.reading.files.price import Price
from quotegen.reading.files.rate_book import Basis, BookRate, ExceededRule, Season

_LEAP_YEAR = 2000
_EXCEEDED = {
    ExceededRule.AT_COST: "allowance_at_cost",
    ExceededRule.COST_PLUS: "allowance_cost_plus",
    ExceededRule.CAPPED: "allowance_capped",
}


def note_of(results: Results, line: Line) -> str:
    """The note of a line; empty where its figures say it all."""
    if not line.pays_for_work:
        return _NO_WORK[line.scope[0]](results, line) if line.scope[0] in _NO_WORK else ""
    price = results.job.rate_book.price_of(line.rate_id)
    return " ".join(filter(None, _notes(results, line, price))) if price else ""


def share_note(results: Results, line: Line) -> str:
    """What a line is a share of; nothing for any other line."""
    book, words = results.job.rate_book, results.words
    if not is_share(book, line):
        return ""
    rate = book.rates[line.rate_id]
    share = words.exact_percent(rate.share or Fraction(0))
    if EVERYTHING in rate.share_of:
        return words("note_share_of_all", share=share)
    scope = results.content.scope
    names = tuple(in_a_sentence(scope[item].front.title) for item in rate.share_of)
    return words("note_share", names=words.listing(names), share=share)


def taxes_of(results: Results) -> tuple[Tax, ...]:
    """The taxes that the job owes."""
    return tuple(tax for tax in results.job.company.tax if is_due(results.job, tax))


def _notes(results: Results, line: Line, price: Price) -> Iterator[str]:
    words = results.words
    rate = price if isinstance(price, BookRate) else None
    if rate and rate.season is not None:
        yield _season(words, rate.season)
    if line.band is not None:
        yield _band(words, line, price)
    if rate:
        yield share_note(results, line)
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


def _discount_note(results: Results, _: Line) -> str:
    words, discount = results.words, results.job.typed.discount
    if discount is None or not discount.share:
        return words("note_discount_sum")
    return words("note_discount_share", share=words.exact_percent(discount.share))


def _rounding_note(results: Results, _: Line) -> str:
    step = results.job.company.round_total_to
    return results.words("note_rounding", step=results.words.money(step)) if step else ""


_NO_WORK: Mapping[str, Callable[[Results, Line], str]] = {
    TAX: _tax_note,
    DISCOUNT: _discount_note,
    ROUNDING: _rounding_note,
}
