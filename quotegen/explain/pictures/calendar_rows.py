"""The rows of the calendar strip: each day that matters, and the quiet days between."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from enum import StrEnum
from itertools import pairwise

from quotegen.explain.results import Results
from quotegen.explain.words.prose import sentence
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.pricing.quoted.visits_needed import POUR
from quotegen.reading.files.rate_book import SEAL
from quotegen.schedule.day_plans import DayPlan
from quotegen.schedule.openings import Opening
from quotegen.trade.cancellation import sign_by

FORM = "form"
A_DAY = timedelta(days=1)

NumberedPayment = tuple[int, PricedPayment]


class Lane(StrEnum):
    """What a bar beside the days stands for."""

    WORK = "work"
    WALK = "walk"
    FURNISH = "furnish"
    DRIVE = "drive"


_OPENS = {
    Lane.WALK: (Opening.WALK, Opening.WALK_AFTER_SEALER),
    Lane.FURNISH: (Opening.FURNISH, Opening.LOAD_AFTER_SEALER),
    Lane.DRIVE: (Opening.DRIVE, Opening.LOAD_AFTER_SEALER),
}
"""What opens a lane after the pour, and again after the sealer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarRow:
    """One row of the strip.

    Attributes:
        first, last: its days; None at the end, where no day is set.
        day: the same in words.
        we, you: what happens, a text each.
        payments: those that are due, each with its number.
        open: the lanes that have a bar here.
        quiet: whether nothing happens on these days, so that they are left out.
    """

    first: date | None
    last: date | None
    day: str
    we: tuple[str, ...] = ()
    you: tuple[str, ...] = ()
    payments: tuple[NumberedPayment, ...] = ()
    open: frozenset[Lane] = frozenset()
    quiet: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Event:
    first: date
    last: date
    we: str = ""
    you: str = ""
    payment: NumberedPayment | None = None


def calendar_rows(
    results: Results, plan: DayPlan, payments: tuple[PricedPayment, ...]
) -> Iterator[CalendarRow]:
    """Yield the rows of a plan in the order of the days, the day to say yes by first."""
    numbered = tuple(enumerate(payments, start=1))
    yield _say_yes(results, plan, numbered)
    events = sorted(
        _events(results, plan, numbered), key=lambda one: (one.first, -one.last.toordinal())
    )
    rows = [_row(results, plan, group) for group in _grouped(events)]
    for row, following in pairwise([*rows, None]):
        if row is None:
            continue
        yield row
        if following and row.last and following.first and following.first - row.last > A_DAY:
            yield _quiet(results, row, (following.first - row.last).days - 1)
    rest = [one for one in numbered[1:] if one[1].at_visit not in _ids(plan)]
    if rest:
        yield CalendarRow(
            first=None, last=None, day=results.words("calendar_at_last"),
            you=tuple(sentence(payment.when).removesuffix(".") for _, payment in rest),
            payments=tuple(rest), open=rows[-1].open - {Lane.WORK},
        )  # fmt: skip


def lanes_of(rows: Iterable[CalendarRow]) -> tuple[Lane, ...]:
    """The lanes that have a bar on any of the days."""
    shown = {lane for row in rows for lane in row.open}
    return tuple(lane for lane in Lane if lane in shown)


def _ids(plan: DayPlan) -> frozenset[str]:
    return frozenset(visit.id for visit in plan.visits)


def _say_yes(results: Results, plan: DayPlan, numbered: tuple[NumberedPayment, ...]) -> CalendarRow:
    """The last day to say yes, so that the days below hold; or the day on which it was said."""
    words, job = results.words, results.job
    accepted = results.contract.accepted_on
    first = tuple(one for one in numbered[:1] if one[1].at_visit not in _ids(plan))
    if accepted:
        day, text, shown = accepted, words("calendar_said_yes"), words.weekday(accepted)
    else:
        keeps = sign_by(plan.visits[0].first_day, results.rules)
        day, text = min((keeps, words("calendar_keep_days")),
                        (job.holds_until, words("calendar_keep_price")))  # fmt: skip
        shown = words("calendar_by", day=words.weekday(day))
    return CalendarRow(first=day, last=day, day=shown, you=(text,), payments=first)


def _events(
    results: Results, plan: DayPlan, numbered: tuple[NumberedPayment, ...]
) -> Iterator[_Event]:
    words, days = results.words, {visit.id: visit for visit in plan.visits}
    for visit in plan.visits:
        yield _Event(first=visit.first_day, last=visit.last_day, we=visit.name)
        if visit.id == FORM:
            yield _Event(first=visit.first_day, last=visit.first_day, you=words("timeline_lines"))
            yield _Event(first=visit.last_day, last=visit.last_day, you=words("timeline_measure"))
        elif visit.id == POUR:
            yield _Event(first=visit.first_day, last=visit.first_day, you=words("timeline_off"))
    for opened in plan.openings:
        yield _Event(first=opened.day, last=opened.day, you=words(f"opening_{opened.use.value}"))
    for number, payment in numbered:
        at = days.get(payment.at_visit or "")
        if at:
            due = at.last_day + payment.days_after * A_DAY
            yield _Event(first=due, last=due, payment=(number, payment))


def _grouped(events: Sequence[_Event]) -> Iterator[tuple[_Event, ...]]:
    """Yield together what happens on the same days; a visit takes in what falls on its days."""
    group: list[_Event] = []
    for event in events:
        if group and event.first > max(one.last for one in group):
            yield tuple(group)
            group = []
        group.append(event)
    yield tuple(group)


def _row(results: Results, plan: DayPlan, group: tuple[_Event, ...]) -> CalendarRow:
    first, last = group[0].first, max(one.last for one in group)
    return CalendarRow(
        first=first, last=last, day=results.words.days(first, last),
        we=tuple(one.we for one in group if one.we),
        you=tuple(one.you for one in group if one.you),
        payments=tuple(one.payment for one in group if one.payment),
        open=frozenset(_open(plan, first)),
    )  # fmt: skip


def _open(plan: DayPlan, day: date) -> Iterator[Lane]:
    """The lanes that have a bar on a day: a use, until the sealer closes the slab again."""
    if any(visit.first_day <= day <= visit.last_day for visit in plan.visits):
        yield Lane.WORK
    opened = {one.use: one.day for one in plan.openings}
    closes = [visit.first_day for visit in plan.visits if visit.id == SEAL]
    sealed = closes[0] if closes and Opening.WALK_AFTER_SEALER in opened else date.max
    for lane, (at_first, again) in _OPENS.items():
        if at_first in opened and (
            opened[at_first] <= day < sealed or day >= opened.get(again, date.max)
        ):
            yield lane


def _quiet(results: Results, row: CalendarRow, days: int) -> CalendarRow:
    return replace(
        row, day=results.words.count("calendar_gap", days), we=(), you=(), payments=(),
        open=row.open - {Lane.WORK}, quiet=True,
    )  # fmt: skip
