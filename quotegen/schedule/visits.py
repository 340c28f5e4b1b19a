"""Stage 4, visits: the trips of a finish get dates."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise
from types import MappingProxyType

from quotegen.pricing.quoted.visits_needed import NeededVisit, visits_needed
from quotegen.reading.files.company import Company, Weekday
from quotegen.reading.files.job import ROUND_A_POOL
from quotegen.reading.files.rate_book import POUR, SAW
from quotegen.reading.records import JobSpec
from quotegen.trade.opening import inspection_days
from quotegen.trade.rules import RuleBook

_A_DAY = timedelta(days=1)
_DAYS_TRIED = 7
"""Later days on which a pour is tried: after a week the same weekdays come again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """One trip of the crew, from its first to its last working day.

    Attributes:
        id, visit, part, parts: as of the visit that is needed.
        held_for_saw: it is later than it could be, so that no free day parts it from the saw.
    """

    id: str
    visit: str
    name: str
    part: int
    parts: int
    first_day: date
    last_day: date
    days: int
    wait_days: int
    crew: int | None
    held_for_saw: bool = False


def visits_of(
    job: JobSpec,
    finish: str,
    rules: RuleBook,
    added: Mapping[str, int] = MappingProxyType({}),
) -> tuple[Visit, ...]:
    """Return the dated visits of the job at a finish.

    A visit begins on the first working day after the visit before it and its own wait, which is
    counted in calendar days. Round a pool the day of the bonding inspection lies before the pour.
    A pour waits for a day from which the pours after it, and the saw, follow without a free day.

    Args:
        job: the job.
        finish: whose visits they are.
        rules: the trade's rules.
        added: working days that changes add, by visit id.
    """
    visits: tuple[Visit, ...] = ()
    next_day = job.typed.start
    for run in _runs(visits_needed(job, finish)):
        if run[0].visit == POUR:
            next_day = _inspected(job, next_day, first=not visits, rules=rules)
        visits = (*visits, *_dated_run(run, next_day, added, job.company))
        next_day = visits[-1].last_day + _A_DAY
    return visits


def inspection_of(job: JobSpec, visits: tuple[Visit, ...]) -> date | None:
    """Return the last working day before the pour of a pool deck: its bonding is passed by then."""
    poured = next((visit.first_day for visit in visits[1:] if visit.visit == POUR), None)
    if poured is None or not any(one.use in ROUND_A_POOL for one in job.placements):
        return None
    day = poured - _A_DAY
    while not works_on(day, job.company):
        day -= _A_DAY
    return day


def works_on(day: date, company: Company) -> bool:
    """Whether the company works on a day."""
    return tuple(Weekday)[day.weekday()] in company.working_days and day not in company.closed


def _runs(needed: tuple[NeededVisit, ...]) -> Iterator[tuple[NeededVisit, ...]]:
    """Yield each visit alone, but the pours with the saw that follows them as one run."""
    run: tuple[NeededVisit, ...] = ()
    for one in needed:
        if run and not (run[-1].visit == POUR and one.visit in {POUR, SAW}):
            yield run
            run = ()
        run = (*run, one)
    if run:
        yield run


def _inspected(job: JobSpec, day: date, *, first: bool, rules: RuleBook) -> date:
    """Return the first day after the inspection of a pool deck that lies between two visits."""
    if first or not any(placement.use in ROUND_A_POOL for placement in job.placements):
        return day
    for _ in range(inspection_days(rules, job.quote_date)):
        day = _working_day(day, job.company) + _A_DAY
    return day


def _dated_run(
    run: tuple[NeededVisit, ...], earliest: date, added: Mapping[str, int], company: Company
) -> tuple[Visit, ...]:
    soonest = _dated_from(run, earliest, added, company)
    if run[-1].visit != SAW:
        return soonest
    for later in range(_DAYS_TRIED):
        visits = _dated_from(run, earliest + later * _A_DAY, added, company, tried=later > 0)
        if _unbroken(visits):
            return visits if visits[0].first_day > soonest[0].first_day else soonest
    return soonest


def _dated_from(
    run: tuple[NeededVisit, ...],
    day: date,
    added: Mapping[str, int],
    company: Company,
    *,
    tried: bool = False,
) -> tuple[Visit, ...]:
    visits: list[Visit] = []
    for one in run:
        visit = _dated(
            one, one.days + added.get(one.id, 0), day, company, held=tried and not visits
        )
        visits.append(visit)
        day = visit.last_day + _A_DAY
    return tuple(visits)


def _unbroken(visits: tuple[Visit, ...]) -> bool:
    """Whether no free day lies between a pour, those after it and the saw, but for typed waits."""
    pours = all((v.last_day - v.first_day).days + 1 == v.days for v in visits if v.visit == POUR)
    return pours and all(
        after.first_day == before.last_day + (1 + after.wait_days) * _A_DAY
        for before, after in pairwise(visits)
    )


def _dated(
    needed: NeededVisit, days: int, earliest: date, company: Company, *, held: bool
) -> Visit:
    first = last = _working_day(earliest + timedelta(days=needed.wait_days), company)
    for _ in range(days - 1):
        last = _working_day(last + _A_DAY, company)
    return Visit(
        id=needed.id,
        visit=needed.visit,
        name=needed.name,
        part=needed.part,
        parts=needed.parts,
        first_day=first,
        last_day=last,
        days=days,
        wait_days=needed.wait_days,
        crew=needed.crew,
        held_for_saw=held,
    )


def _working_day(day: date, company: Company) -> date:
    """Return the day, or the next one on which the company works."""
    while not works_on(day, company):
        day += _A_DAY
    return day
