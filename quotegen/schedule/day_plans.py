"""The days of every combination: finishes and alternates decide the visits, extras do not."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from quotegen.pricing.quoted.options import Chosen, with_alternates
from quotegen.pricing.quoted.records import Combination
from quotegen.reading.records import JobSpec
from quotegen.schedule.openings import OpeningDay, openings_of
from quotegen.schedule.visits import Visit, inspection_of, visits_of
from quotegen.trade.rules import RuleBook

FinishChoice = tuple[str, Chosen]
"""A finish of the job, and the finishes of single placements."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """Days between two visits on which nobody works on the slab."""

    first_day: date
    last_day: date
    days: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DayPlan:
    """Dated visits and opening days, and the choices of finishes that lead to them.

    Attributes:
        inspection: the day by which the bonding round a pool is inspected, None without a pool.
    """

    choices: tuple[FinishChoice, ...]
    visits: tuple[Visit, ...]
    waits: tuple[Wait, ...]
    openings: tuple[OpeningDay, ...]
    inspection: date | None


def day_plans_of(
    job: JobSpec, combinations: tuple[Combination, ...], rules: RuleBook
) -> tuple[DayPlan, ...]:
    """Return each distinct plan of the days once; that of the quote comes first."""
    choices = dict.fromkeys((one.finish, one.alternates) for one in combinations)
    dated = {
        (finish, chosen): visits_of(with_alternates(job, chosen), finish, rules)
        for finish, chosen in choices
    }
    by_days: dict[tuple[tuple[str, date, date], ...], list[FinishChoice]] = {}
    for choice, visits in dated.items():
        days = tuple((visit.id, visit.first_day, visit.last_day) for visit in visits)
        by_days.setdefault(days, []).append(choice)
    return tuple(
        DayPlan(
            choices=tuple(same_days),
            visits=dated[same_days[0]],
            waits=tuple(waits_between(dated[same_days[0]])),
            openings=openings_of(job, dated[same_days[0]], rules),
            inspection=inspection_of(job, dated[same_days[0]]),
        )
        for same_days in by_days.values()
    )


def waits_between(visits: tuple[Visit, ...]) -> Iterator[Wait]:
    """Yield the calendar days between one visit and the next."""
    for before, after in pairwise(visits):
        days = (after.first_day - before.last_day).days - 1
        if days > 0:
            yield Wait(
                first_day=before.last_day + timedelta(days=1),
                last_day=after.first_day - timedelta(days=1),
                days=days,
            )
