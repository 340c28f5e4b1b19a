"""The calendar of sheet 5: each day that matters, what we do, what you do, what is paid.

Beside each day stand lanes: whether we work, and what the slab may be used for.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from itertools import pairwise

from quotegen.explain.results import Results
from quotegen.explain.sheets.views import DayRow
from quotegen.explain.words.days import visit_said
from quotegen.explain.words.prose import sentence
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.reading.files.rate_book import FORM, POUR, SEAL
from quotegen.schedule.care_dates import Care, care_dates_of
from quotegen.schedule.openings import Opening
from quotegen.schedule.visits import Visit
from quotegen.trade.cancellation import sign_by

A_DAY = timedelta(days=1)


class Lane(StrEnum):
    """What a bar beside the days stands for."""

    WORK = "work"
    WALK = "walk"
    FURNISH = "furnish"
    DRIVE = "drive"


_YOUR_JOBS = {POUR: "your_job_keep_off", SEAL: "your_job_clear_again"}
_OPENS = {
    Lane.WALK: (Opening.WALK, Opening.WALK_AFTER_SEALER),
    Lane.FURNISH: (Opening.FURNISH, Opening.LOAD_AFTER_SEALER),
    Lane.DRIVE: (Opening.DRIVE, Opening.DRIVE_AFTER_SEALER),
}
"""What opens a lane after the pour, and again after the sealer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Event:
    """Something on the calendar: its days, and the text of one column."""

    first: date
    last: date
    we: str = ""
    you: str = ""
    pay: str = ""
    amount: str = ""


def lanes_of(results: Results) -> tuple[Lane, ...]:
    """The lanes that this job has a bar in."""
    uses = {opened.use for opened in results.openings}
    opened = (lane for lane, ways in _OPENS.items() if not uses.isdisjoint(ways))
    return (Lane.WORK, *opened)


def calendar_rows(results: Results) -> Iterator[DayRow]:
    """Yield the rows in the order of the days; what has no day yet comes last."""
    if results.contract.accepted_on is None:
        yield _say_yes(results)
    events = sorted(_events(results), key=lambda one: (one.first, -one.last.toordinal()))
    groups = [*_grouped(events)]
    for group, following in pairwise([*groups, ()]):
        yield _row(results, group)
        if following:
            quiet = (following[0].first - _last(group)).days - 1
            if quiet > 0:
                yield _quiet(results, _last(group) + A_DAY, quiet)
    yield from _without_a_day(results)


def _events(results: Results) -> Iterator[_Event]:
    words = results.words
    yield from _visits(results)
    inspection = results.day_plans[0].inspection
    if inspection is not None:
        yield _Event(first=inspection, last=inspection, you=words("your_job_bonding"))
    for opened in results.openings:
        said = words(f"opening_{opened.use.value}")
        yield _Event(first=opened.day, last=opened.day, you=said)
    for care in care_dates_of(results.job, results.chosen_visits, results.rules):
        if care.care is Care.COLOR and care.day is not None:
            yield _Event(first=care.day, last=care.day, you=words("calendar_color"))
    wish = results.job.typed.wish
    if wish is not None:
        yield _Event(first=wish.by, last=wish.by, you=words("calendar_wish", what=wish.what))
    yield from _payments(results)


def _visits(results: Results) -> Iterator[_Event]:
    """Each visit, and what the homeowner does for it."""
    words, visits = results.words, results.chosen_visits
    for visit in visits:
        first, last = visit.first_day, visit.last_day
        yield _Event(first=first, last=last, we=visit_said(words, visit))
        if visit.visit == FORM:
            yield _Event(first=last, last=last, you=words("your_job_measure"))
        elif visit.visit in _YOUR_JOBS:
            yield _Event(first=first, last=first, you=words(_YOUR_JOBS[visit.visit]))
    start = visits[0].first_day
    yield _Event(first=start, last=start, you=words("your_job_clear"))
    if results.contract.accepted_on is not None:  # before the yes it stands in the first row
        yield _Event(first=start, last=start, you=words("your_job_lines"))


def _at_signing(results: Results) -> PricedPayment | None:
    """The payment that is due with the signature: the first of several, if no visit dates it."""
    first, *others = results.quote.payments
    return first if first.at_visit is None and others else None


def _payments(results: Results) -> Iterator[_Event]:
    for payment, day in payment_days(results, results.chosen_visits):
        amount = results.words.money(payment.amount)
        yield _Event(first=day, last=day, pay=payment.when, amount=amount)


def payment_days(
    results: Results, visits: tuple[Visit, ...]
) -> Iterator[tuple[PricedPayment, date]]:
    """Yield the payments that a visit dates, and the one at signing once that day is known."""
    days = {visit.id: visit.last_day for visit in visits}
    at_signing, accepted = _at_signing(results), results.contract.accepted_on
    for payment in results.quote.payments:
        since = accepted if payment is at_signing else days.get(payment.at_visit or "")
        if since is not None:
            yield payment, since + payment.days_after * A_DAY


def _grouped(events: Sequence[_Event]) -> Iterator[tuple[_Event, ...]]:
    """Yield together what happens on the same days; a visit takes in what falls on its days."""
    group: list[_Event] = []
    for event in events:
        if group and event.first > max(one.last for one in group):
            yield tuple(group)
            group = []
        group.append(event)
    yield tuple(group)


def _last(group: tuple[_Event, ...]) -> date:
    return max(one.last for one in group)


def _row(results: Results, group: tuple[_Event, ...]) -> DayRow:
    first, last = group[0].first, _last(group)
    return DayRow(
        day=results.words.days(first, last),
        lanes=_bars(results, first, last),
        we=_together(one.we for one in group),
        you=_together(one.you for one in group),
        pay=_together(one.pay for one in group),
        amount=" + ".join(one.amount for one in group if one.amount),
    )


def _together(texts: Iterator[str]) -> str:
    return " ".join(sentence(text) for text in texts if text)


def _bars(results: Results, first: date, last: date) -> tuple[str, ...]:
    """The name of each lane that has a bar on these days; empty for one that has none."""
    words, shown = results.words, {*_open(results, first, last)}
    return tuple(
        words(f"calendar_{lane.value}") if lane in shown else "" for lane in lanes_of(results)
    )


def _open(results: Results, first: date, last: date) -> Iterator[Lane]:
    """The lanes that have a bar: a use, until the sealer closes the slab again."""
    visits, opened = results.chosen_visits, {one.use: one.day for one in results.openings}
    if any(visit.first_day <= last and first <= visit.last_day for visit in visits):
        yield Lane.WORK
    closes = [visit.first_day for visit in visits if visit.visit == SEAL]
    for lane, (at_first, again) in _OPENS.items():
        until = closes[0] if closes and again in opened else date.max
        if opened.get(at_first, date.max) <= first < until or first >= opened.get(again, date.max):
            yield lane


def _quiet(results: Results, first: date, days: int) -> DayRow:
    """The days between, on which nothing happens."""
    day = results.words.count("calendar_gap", days)
    lanes = _bars(results, first, first + (days - 1) * A_DAY)
    return DayRow(day=day, lanes=lanes, we="", you="", pay="", amount="")


def last_day_to_say_yes(results: Results) -> tuple[date, str]:
    """Return the last day to keep these days, or this price if that is sooner, and its words."""
    job = results.job
    keeps = sign_by(results.chosen_visits[0].first_day, results.rules, job.site.state)
    day, key = min((keeps, "calendar_keep_days"), (job.holds_until, "calendar_keep_price"))
    return (job.holds_until, "calendar_keep_price") if day < job.quote_date else (day, key)


def _say_yes(results: Results) -> DayRow:
    """The first row: by when to say yes, what to show us before, and what is paid then."""
    words, at_signing = results.words, _at_signing(results)
    day, key = last_day_to_say_yes(results)
    return DayRow(
        day=words("calendar_by", day=words.weekday(day)),
        lanes=tuple("" for _ in lanes_of(results)),
        we="",
        you=_together(iter((words(key), words("your_job_lines")))),
        pay=sentence(at_signing.when) if at_signing else "",
        amount=words.money(at_signing.amount) if at_signing else "",
    )


def _without_a_day(results: Results) -> Iterator[DayRow]:
    """Payments that no visit dates, but for the one at signing."""
    days, at_signing = {visit.id for visit in results.chosen_visits}, _at_signing(results)
    for payment in results.quote.payments:
        if payment.at_visit not in days and payment is not at_signing:
            yield DayRow(
                day=results.words("calendar_at_last"),
                lanes=tuple("" for _ in lanes_of(results)),
                we="",
                you="",
                pay=sentence(payment.when),
                amount=results.words.money(payment.amount),
            )
