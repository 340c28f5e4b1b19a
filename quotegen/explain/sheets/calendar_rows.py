"""The calendar of sheet 5: each day that matters, what we do, what you do, what is paid."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from quotegen.explain.results import Results
from quotegen.explain.sheets.views import DayRow
from quotegen.explain.words.days import visit_said
from quotegen.explain.words.prose import sentence
from quotegen.reading.files.rate_book import FORM, POUR
from quotegen.trade.cancellation import sign_by


@dataclass(frozen=True, slots=True, kw_only=True)
class _Entry:
    """Something on the calendar: its days, and the text of one column."""

    first: date
    last: date
    we: str = ""
    you: str = ""
    pay: str = ""
    amount: str = ""


def calendar_rows(results: Results) -> Iterator[DayRow]:
    """Yield the rows in the order of the days; what has no day yet comes last."""
    words = results.words
    entries = sorted(_entries(results), key=lambda one: (one.first, one.last))
    days = dict.fromkeys((one.first, one.last) for one in entries)
    if results.contract.accepted_on is None:
        yield _sign_row(results)
    for first, last in days:
        of_it = [one for one in entries if (one.first, one.last) == (first, last)]
        yield DayRow(
            day=words.days(first, last),
            we=_together(of_it, "we"),
            you=_together(of_it, "you"),
            pay=_together(of_it, "pay"),
            amount=" + ".join(one.amount for one in of_it if one.amount),
        )
    yield from _without_a_day(results)


def _together(entries: list[_Entry], column: str) -> str:
    return " ".join(sentence(text) for one in entries if (text := getattr(one, column)))


def _entries(results: Results) -> Iterator[_Entry]:
    yield from _visits(results)
    yield from _your_jobs(results)
    yield from _inspection(results)
    words = results.words
    for opened in results.openings:
        said = words(f"opening_{opened.use.value}")
        yield _Entry(first=opened.day, last=opened.day, you=said)
    yield from _payments(results)
    wish = results.job.typed.wish
    if wish is not None:
        yield _Entry(first=wish.by, last=wish.by, you=words("calendar_wish", what=wish.what))


def _visits(results: Results) -> Iterator[_Entry]:
    for visit in results.chosen_visits:
        said = visit_said(results.words, visit)
        yield _Entry(first=visit.first_day, last=visit.last_day, we=said)


def _your_jobs(results: Results) -> Iterator[_Entry]:
    """The homeowner's own jobs on the days of ours."""
    words, visits = results.words, results.chosen_visits
    first = visits[0]
    yield _Entry(first=first.first_day, last=first.last_day, you=words("your_job_clear"))
    for visit in visits:
        if visit.visit == FORM:
            measured = words("your_job_measure")
            yield _Entry(first=visit.first_day, last=visit.last_day, you=measured)
        elif visit.visit == POUR:
            keep_off = words("your_job_keep_off")
            yield _Entry(first=visit.first_day, last=visit.last_day, you=keep_off)


def _inspection(results: Results) -> Iterator[_Entry]:
    """The day by which others have passed what the pour waits for."""
    day = results.day_plans[0].inspection
    if day is not None:
        yield _Entry(first=day, last=day, you=results.words("timeline_bonding"))


def _payments(results: Results) -> Iterator[_Entry]:
    days = {visit.id: visit.last_day for visit in results.chosen_visits}
    for payment in results.quote.payments:
        visit_day = days.get(payment.at_visit or "")
        if visit_day is not None:
            day = visit_day + timedelta(days=payment.days_after)
            amount = results.words.money(payment.amount)
            yield _Entry(first=day, last=day, pay=payment.when, amount=amount)


def _sign_row(results: Results) -> DayRow:
    """The first row: by when to say yes, what to show us before, and what is paid then."""
    words, job = results.words, results.job
    last = sign_by(results.chosen_visits[0].first_day, results.rules)
    by = last if job.quote_date <= last < job.holds_until else job.holds_until
    first = results.quote.payments[0]
    at_once = first.at_visit is None and len(results.quote.payments) > 1
    return DayRow(
        day=words("calendar_by", day=words.weekday(by)),
        we="",
        you=f"{words('calendar_say_yes')} {words('your_job_lines')}",
        pay=sentence(first.when) if at_once else "",
        amount=words.money(first.amount) if at_once else "",
    )


def _without_a_day(results: Results) -> Iterator[DayRow]:
    """Payments that no visit dates, but for the one at signing."""
    days = {visit.id for visit in results.chosen_visits}
    signed = results.contract.accepted_on is not None or len(results.quote.payments) == 1
    for number, payment in enumerate(results.quote.payments):
        if payment.at_visit not in days and (number or signed):
            yield DayRow(
                day=results.words("calendar_then"), we="", you="",
                pay=sentence(payment.when), amount=results.words.money(payment.amount),
            )  # fmt: skip
