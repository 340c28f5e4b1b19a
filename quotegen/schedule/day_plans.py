"""The days of every way to choose: finishes and alternates decide the visits, extras do not."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from quotegen.pricing.quoted.options import Chosen, with_alternates
from quotegen.pricing.quoted.records import Combination
from quotegen.reading.records import JobSpec
from quotegen.schedule.openings import OpeningDay, openings_of
from quotegen.schedule.visits import Visit, visits_of
from quotegen.trade.rules import RuleBook

Way = tuple[str, Chosen]
"""A finish of the job, and the finishes of single placements."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """Days between two visits on which nobody works on the slab."""

    first_day: date
    last_day: date
    days: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DayPlan:
    """Dated visits and opening days, and the ways to choose that lead to them."""

    ways: tuple[Way, ...]
    visits: tuple[Visit, ...]
    waits: tuple[Wait, ...]
    openings: tuple[OpeningDay, ...]


def day_plans_of(
    job: JobSpec, combinations: tuple[Combination, ...], rules: RuleBook
) -> tuple[DayPlan, ...]:
    """Return each different plan of the days once; that of the quote comes first."""
    dated = {way: visits_of(with_alternates(job, way[1]), way[0]) for way in _ways(combinations)}
    ways_at: dict[tuple[tuple[str, date, date], ...], list[Way]] = {}
    for way, visits in dated.items():
        days = tuple((visit.id, visit.first_day, visit.last_day) for visit in visits)
        ways_at.setdefault(days, []).append(way)
    return tuple(
        DayPlan(
            ways=tuple(ways),
            visits=dated[ways[0]],
            waits=tuple(waits_between(dated[ways[0]])),
            openings=openings_of(job, dated[ways[0]], rules),
        )
        for ways in ways_at.values()
    )


def waits_between(visits: tuple[Visit, ...]) -> Iterator[Wait]:
    """Yield the days between visits, counted by the calendar."""
    for before, after in pairwise(visits):
        days = (after.first_day - before.last_day).days - 1
        if days > 0:
            yield Wait(
                first_day=before.last_day + timedelta(days=1),
                last_day=after.first_day - timedelta(days=1),
                days=days,
            )


def _ways(combinations: tuple[Combination, ...]) -> Iterator[Way]:
    yield from dict.fromkeys((one.finish, one.alternates) for one in combinations)
