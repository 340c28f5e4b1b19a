"""Sheet 1, the price: what, how much, when, by when to say yes, what could move it."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from quotegen.explain.pictures.plan import FRAMED, draw_plan
from quotegen.explain.results import Results
from quotegen.explain.sheets.area_price import area_prices, holds_at_minimum, total_area
from quotegen.explain.sheets.combination import agreed_finish
from quotegen.explain.sheets.covers import cover_rows
from quotegen.explain.sheets.responsibilities import excluded_rows
from quotegen.explain.sheets.since_lines import since_lines
from quotegen.explain.sheets.sizes import NARROW, PLAN
from quotegen.explain.sheets.views import DrawingPair, PriceSheet
from quotegen.explain.words.line_notes import taxes_of
from quotegen.explain.words.prose import in_a_sentence
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.no_work import DISCOUNT, TAX
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.reading.files.rate_book import POUR, Basis
from quotegen.schedule.openings import ready_on
from quotegen.trade.cancellation import sign_by

RINGED = replace(FRAMED, ring="2")
"""The plan of sheet 1 shows where sheet 2 cuts the slab open."""


def price_sheet(results: Results) -> PriceSheet:
    """Build sheet 1."""
    job, words, quote = results.job, results.words, results.quote
    return PriceSheet(
        headline=words("headline", title=job.title, area=total_area(results)),
        plan=DrawingPair(
            wide=draw_plan(results, PLAN, "plan", look=RINGED),
            narrow=draw_plan(results, NARROW, "plan-narrow", look=FRAMED),
        ),
        total=words.money(quote.chosen.total),
        tax=tax_sentence(results),
        finish=agreed_finish(results),
        say_by=say_by(results),
        covers=tuple(cover_rows(results)),
        not_in=_not_in(results),
        access=job.access.note if job.access else "",
        dates=tuple(date_rows(results)),
        wish=wish_answer(results),
        note=job.typed.note or "",
        since=since_lines(results),
        can_change=tuple(_can_change(results)),
        payments=payments_line(results),
    )


def tax_sentence(results: Results) -> str:
    """Whether a discount and a tax are in the total; nothing comes on top of it."""
    return " ".join((*_discount(results), *_taxes(results)))


def _discount(results: Results) -> Iterator[str]:
    words = results.words
    for line in results.quote.chosen.lines:
        if DISCOUNT in line.scope:
            yield words("discount_in_price", name=line.name)


def _taxes(results: Results) -> Iterator[str]:
    words, job = results.words, results.job
    if job.typed.tax_exempt and job.company.tax:
        yield words("tax_exempt", reason=job.typed.tax_exempt)
    elif not taxes_of(results):
        yield words("no_tax")
    for line in results.quote.chosen.lines:
        if TAX in line.scope:
            yield words("tax_in_price", name=line.name)


def say_by(results: Results) -> str:
    """By when to say yes so that work starts on its day, and until when the price holds."""
    job, words, accepted = results.job, results.words, results.contract.accepted_on
    if accepted is not None:
        return words("accepted_on", date=words.day(accepted))
    last = sign_by(results.chosen_visits[0].first_day, results.rules, results.job.site.state)
    price = words.weekday(job.holds_until)
    if job.quote_date <= last < job.holds_until:
        return words("say_yes_by_both", days=words.weekday(last), price=price)
    return words("say_yes_by", price=price)


def _not_in(results: Results) -> str:
    """What the job leaves out, or else the company, by name; the rest is on sheet 4."""
    left_out = results.job.typed.not_included or results.job.not_included
    typed = dict.fromkeys(in_a_sentence(one.what) for one in left_out)
    if not excluded_rows(results):
        return ""
    rest = results.words("not_in_rest")
    return results.words("not_in_line", names=results.words.listing((*typed, rest)))


def date_rows(results: Results) -> Iterator[Row]:
    """What a homeowner waits for, day by day: the name says what, the text the day."""
    words = results.words
    for day, text in sorted(_days(results), key=lambda one: one[0]):
        yield Row(name=text, text=words.weekday(day))


def _days(results: Results) -> Iterator[tuple[date, str]]:
    words = results.words
    first, last = results.chosen_visits[0], results.chosen_visits[-1]
    for visit in results.chosen_visits:
        if visit.visit == POUR:
            yield visit.first_day, words("date_pour")
    if first.visit != POUR:
        yield first.first_day, words("date_first")
    if last.visit != POUR:
        yield last.last_day, words("date_last", visit=in_a_sentence(last.name))
    for opened in results.openings:
        yield opened.day, words(f"opening_{opened.use.value}")


def wish_answer(results: Results) -> str:
    """Whether what the homeowner asked for will be ready by its day."""
    wish, words = results.job.typed.wish, results.words
    if wish is None:
        return ""
    ready = ready_on(results.chosen_visits, results.openings)
    spare = (wish.by - ready).days
    key = "wish_late" if spare < 0 else "wish_that_day" if spare == 0 else "wish_kept"
    return words.count(
        key, abs(spare), what=wish.what, by=words.weekday(wish.by), ready=words.weekday(ready)
    )


def _can_change(results: Results) -> Iterator[str]:
    words = results.words
    yield area_sentence(results)
    if results.quote.unit_prices:
        yield words("if_found")
    if any(line.basis is Basis.ALLOWANCE for line in results.quote.chosen.lines):
        yield words("if_allowance")
    yield words("if_you_ask")
    yield words("if_lines_or_load")


def area_sentence(results: Results) -> str:
    """How the price follows the measured area."""
    words, prices = results.words, area_prices(results)
    if holds_at_minimum(results) or not prices:
        minimum = results.job.rate_book.minimum
        return words("price_is_minimum", minimum=words.money(minimum) if minimum else "")
    if len(prices) == 1:
        return words("price_follows", rate=prices[0].amount, unit=prices[0].text)
    listed = words.listing(tuple(f"{p.amount} ({p.name})" for p in prices))
    return words("price_follows", rate=listed, unit=prices[0].text)


def payments_line(results: Results) -> str:
    """Each payment by its share, and when the first is due; the rest of it is on sheet 5."""
    words = results.words
    first, *others = results.quote.payments
    due = words("payment_part", share=payment_share(results, first), when=first.when)
    parts = (due, *(payment_share(results, payment) for payment in others))
    return words.count("payments_line", len(parts), parts=words.listing(parts))


def payment_share(results: Results, payment: PricedPayment) -> str:
    """A payment as agreed: a sum, a share of the total or of what the sum leaves, the rest."""
    words = results.words
    if payment.typed is not None:
        return words.money(payment.typed)
    if payment.share is None:
        return words("the_rest")
    share, first = words.percent(payment.share), results.quote.payments[0]
    return share if first.typed is None else words("share_of_the_rest", share=share)
