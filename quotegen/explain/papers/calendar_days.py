"""The days for both calendars: visits, uses, care, payments, and the last day to say yes."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from quotegen.explain.papers.care_card import as_accepted, as_built
from quotegen.explain.results import Results
from quotegen.explain.sheets.calendar_rows import last_day_to_say_yes, payment_days
from quotegen.explain.words.days import visit_name
from quotegen.money import Money
from quotegen.schedule.care_dates import Care, care_dates_of
from quotegen.schedule.openings import openings_of
from quotegen.schedule.visits import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarDay:
    """A day, or the days of a visit.

    Attributes:
        id: the same in every revision of the quote.
        is_visit: whether we come to the site.
        is_off: it stood in the calendar of the quote, and is none any more.
    """

    id: str
    summary: str
    first_day: date
    last_day: date
    is_visit: bool = False
    is_off: bool = False


def calendar_days(results: Results) -> tuple[CalendarDay, ...]:
    """Return the days of the contract as it stands, or of the quote while nobody said yes.

    After acceptance, what the quote had and the contract has not comes last, as being off.
    """
    if results.contract.accepted_on is None:
        return (*_days(results, results.days.visits), _say_yes(results))
    accepted = as_accepted(results)
    now = (*_days(accepted, results.days.visits),)
    quoted = (*_days(results, results.chosen_visits), _say_yes(results))
    known = {day.id for day in now}
    return (*now, *(replace(day, is_off=True) for day in quoted if day.id not in known))


def changes_so_far(results: Results) -> int:
    """How often the days may have moved since revision 1: revisions, and what followed the yes."""
    typed = results.job.typed
    steps = (typed.accepted, typed.measured, typed.completed)
    return results.job.revision + len(typed.changes) + sum(step is not None for step in steps)


def last_changed(results: Results) -> date:
    """The day of the quote, or of what followed it last."""
    typed = results.job.typed
    steps = (typed.accepted, typed.measured, typed.completed, *typed.changes)
    return max((results.job.quote_date, *(step.date for step in steps if step is not None)))


def _days(results: Results, visits: tuple[Visit, ...]) -> Iterator[CalendarDay]:
    words, company = results.words, results.job.company.name
    for visit in visits:
        said = words("visit_summary", company=company, visit=visit_name(words, visit))
        yield CalendarDay(
            id=visit.id, summary=said, first_day=visit.first_day, last_day=visit.last_day,
            is_visit=True,
        )  # fmt: skip
    completed = results.job.typed.completed
    done = tuple(as_built(visits, completed)) if completed else visits
    for opened in openings_of(results.job, done, results.rules):
        yield _on(f"use-{opened.use.value}", opened.day, words(f"opening_{opened.use.value}"))
    for care in care_dates_of(results.job, done, results.rules):
        if care.day is not None and care.care is not Care.POUR:
            yield _on(f"care-{care.care.value}", care.day, words(f"care_{care.care.value}"))
    sums = _sums(results)
    for payment, day in payment_days(results, visits):
        amount = words.money(sums.get(payment.id, payment.amount))
        said = words("calendar_payment", when=payment.when, amount=amount)
        yield _on(f"pay-{payment.id}", day, said)


def _sums(results: Results) -> dict[str, Money]:
    """Each payment as measuring and changes left it, by id; empty before either."""
    contract = results.contract
    measured = contract.remeasure.payments if contract.remeasure else ()
    revised = contract.changes[-1].payments if contract.changes else measured
    return {payment.id: payment.after for payment in revised}


def _say_yes(results: Results) -> CalendarDay:
    day, key = last_day_to_say_yes(results)
    return _on("yes", day, results.words(key))


def _on(identifier: str, day: date, summary: str) -> CalendarDay:
    return CalendarDay(id=identifier, summary=summary, first_day=day, last_day=day)
