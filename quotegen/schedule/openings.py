"""When the new slab may be used: days after the pour and after the sealer."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from quotegen.reading.files.job import DRIVEN_ON, ROUND_A_POOL
from quotegen.reading.files.rate_book import POUR, SEAL
from quotegen.reading.records import JobSpec
from quotegen.schedule.visits import Visit
from quotegen.trade import opening
from quotegen.trade.rules import RuleBook


class Opening(StrEnum):
    """A use of the new slab that has to wait."""

    WALK = "walk"
    FURNISH = "furnish"
    DRIVE = "drive"
    FILL = "fill"
    WALK_AFTER_SEALER = "walk_after_sealer"
    LOAD_AFTER_SEALER = "load_after_sealer"
    DRIVE_AFTER_SEALER = "drive_after_sealer"


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningDay:
    """The first day on which the slab is ready for a use, in mild weather."""

    use: Opening
    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class _Waits:
    """What a use waits for: days after the pour, days after a sealer, and its name after one."""

    after_pour: Callable[[RuleBook, date], int]
    after_sealer: Callable[[RuleBook, date], int]
    again: Opening


_WAITS = {
    Opening.WALK: _Waits(
        after_pour=opening.walk_days, after_sealer=opening.sealer_walk_days,
        again=Opening.WALK_AFTER_SEALER,
    ),
    Opening.FURNISH: _Waits(
        after_pour=opening.furniture_days, after_sealer=opening.sealer_load_days,
        again=Opening.LOAD_AFTER_SEALER,
    ),
    Opening.DRIVE: _Waits(
        after_pour=opening.drive_days, after_sealer=opening.sealer_load_days,
        again=Opening.DRIVE_AFTER_SEALER,
    ),
}  # fmt: skip


def openings_of(job: JobSpec, visits: tuple[Visit, ...], rules: RuleBook) -> tuple[OpeningDay, ...]:
    """Return the opening days in calendar order; none where no visit is a pour.

    A use that opened before the sealer went on closes for it and opens again. One that is still
    waiting by then waits for both, and opens once.
    """
    last = {visit.id: visit for visit in visits}
    if POUR not in last:
        return ()
    poured, on = last[POUR].last_day, job.quote_date
    days: list[OpeningDay] = []
    for use in _uses(job):
        waits = _WAITS[use]
        day = poured + timedelta(days=waits.after_pour(rules, on))
        if SEAL in last:
            sealed = last[SEAL].last_day + timedelta(days=waits.after_sealer(rules, on))
            if day < last[SEAL].first_day:
                days.append(OpeningDay(use=waits.again, day=sealed))
            else:
                day = max(day, sealed)
        days.append(OpeningDay(use=use, day=day))
    if any(placement.use in ROUND_A_POOL for placement in job.placements):
        filled = poured + timedelta(days=opening.fill_days(rules, on))
        days.append(OpeningDay(use=Opening.FILL, day=filled))
    order = tuple(Opening)
    return tuple(sorted(days, key=lambda opened: (opened.day, order.index(opened.use))))


def ready_on(visits: tuple[Visit, ...], openings: tuple[OpeningDay, ...]) -> date:
    """Return the day from which the slab is finished and ready for every use."""
    return max((visits[-1].last_day, *(opened.day for opened in openings)))


def _uses(job: JobSpec) -> Iterator[Opening]:
    """Yield walking; furniture where no car stands, and cars where one does."""
    driven = [placement.use in DRIVEN_ON for placement in job.placements]
    yield Opening.WALK
    if not all(driven):
        yield Opening.FURNISH
    if any(driven):
        yield Opening.DRIVE
