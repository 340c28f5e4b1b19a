"""The calendar of sheet 5: each day that matters, what we do, what you do, what is paid."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from quotegen.explain.results import Results
from quotegen.explain.sheets.views import DayRow
from quotegen.explain.words.prose import sentence
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.pricing.quoted.visits_needed import FORM, POUR
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
        yield _Entry(first=visit.first_day, last=visit.last_day, we=visit.name)


def _your_jobs(results: Results) -> Iterator[_Entry]:
    """The homeowner's own jobs on the days of ours."""
    words, visits = results.words, results.chosen_visits
    first = visits[0]
    yield _Entry(first=first.first_day, last=first.last_day, you=words("your_job_clear"))
    for visit in visits:
        if visit.id == FORM:
            measured = words("your_job_measure")
            yield _Entry(first=visit.first_day, last=visit.last_day, you=measured)
        elif visit.id == POUR:
            keep_off = words("your_job_keep_off")
            yield _Entry(first=visit.first_day, last=visit.last_day, you=keep_off)


def _at_signing(results: Results) -> PricedPayment | None:
    """The payment that is due with the signature: the first of several, if no visit dates it."""
    first, *others = results.quote.payments
    return first if first.at_visit is None and others else None


def _payments(results: Results) -> Iterator[_Entry]:
    """The payments that a visit dates, and the one at signing once that day is known."""
    days = {visit.id: visit.last_day for visit in results.chosen_visits}
    at_signing, accepted = _at_signing(results), results.contract.accepted_on
    for payment in results.quote.payments:
        since = accepted if payment is at_signing else days.get(payment.at_visit or "")
        if since is not None:
            day = since + timedelta(days=payment.days_after)
            amount = results.words.money(payment.amount)
            yield _Entry(first=day, last=day, pay=payment.when, amount=amount)


def _sign_row(results: Results) -> DayRow:
    """The first row: by when to say yes, what to show us before, and what is paid then."""
    words, job = results.words, results.job
    last = sign_by(results.chosen_visits[0].first_day, results.rules)
    by = last if job.quote_date <= last < job.holds_until else job.holds_until
    at_signing = _at_signing(results)
    return DayRow(
        day=words("calendar_by", day=words.weekday(by)),
        we="",
        you=f"{words('calendar_say_yes')} {words('your_job_lines')}",
        pay=sentence(at_signing.when) if at_signing else "",
        amount=words.money(at_signing.amount) if at_signing else "",
    )


def _without_a_day(results: Results) -> Iterator[DayRow]:
    """Payments that no visit dates, but for the one at signing."""
    days, at_signing = {visit.id for visit in results.chosen_visits}, _at_signing(results)
    for payment in results.quote.payments:
        if payment.at_visit not in days and payment is not at_signing:
            yield DayRow(
                day=results.words("calendar_then"), we="", you="",
                pay=sentence(payment.when), amount=results.words.money(payment.amount),
            )  # fmt: skip
