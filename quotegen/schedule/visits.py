"""Stage 4, visits: the trips of a finish get dates."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from types import MappingProxyType

from quotegen.pricing.quoted.visits_needed import NeededVisit, visits_needed
from quotegen.reading.files.company import Company, Weekday
from quotegen.reading.records import JobSpec


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """One trip of the crew, from its first to its last working day."""

    id: str
    name: str
    first_day: date
    last_day: date
    days: int
    wait_days: int
    crew: int | None


def visits_of(
    job: JobSpec, finish: str, added: Mapping[str, int] = MappingProxyType({})
) -> tuple[Visit, ...]:
    """Return the dated visits of the job at a finish.

    A visit begins on the first working day after the visit before it and its own wait, which is
    counted in calendar days.

    Args:
        job: the job.
        finish: whose visits they are.
        added: working days that changes add, by visit id.
    """
    visits: list[Visit] = []
    next_day = job.typed.start
    for needed in visits_needed(job, finish):
        days = needed.days + added.get(needed.id, 0)
        visit = _dated(needed, days, next_day + timedelta(days=needed.wait_days), job.company)
        visits.append(visit)
        next_day = visit.last_day + timedelta(days=1)
    return tuple(visits)


def _dated(needed: NeededVisit, days: int, earliest: date, company: Company) -> Visit:
    first = last = _working_day(earliest, company)
    for _ in range(days - 1):
        last = _working_day(last + timedelta(days=1), company)
    return Visit(
        id=needed.id,
        name=needed.name,
        first_day=first,
        last_day=last,
        days=days,
        wait_days=needed.wait_days,
        crew=needed.crew,
    )


def _working_day(day: date, company: Company) -> date:
    """Return the day, or the next one on which the company works."""
    names = tuple(Weekday)
    while names[day.weekday()] not in company.working_days or day in company.closed:
        day += timedelta(days=1)
    return day
