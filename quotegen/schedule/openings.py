"""When the new slab may be used: days after the pour and after the sealer."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from quotegen.pricing.quoted.visits_needed import POUR
from quotegen.reading.files.job import Use
from quotegen.reading.files.rate_book import SEAL
from quotegen.reading.records import JobSpec
from quotegen.schedule.visits import Visit
from quotegen.trade import opening
from quotegen.trade.rules import RuleBook

ROUND_A_POOL = frozenset({Use.POOL_DECK})
DRIVEN_ON = frozenset({Use.DRIVE, Use.APRON, Use.PAD})


class Opening(StrEnum):
    """A use of the new slab that has to wait."""

    WALK = "walk"
    FURNISH = "furnish"
    DRIVE = "drive"
    FILL = "fill"
    WALK_AFTER_SEALER = "walk_after_sealer"
    LOAD_AFTER_SEALER = "load_after_sealer"


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningDay:
    """The first day on which the slab is ready for a use, in mild weather."""

    use: Opening
    day: date


def openings_of(job: JobSpec, visits: tuple[Visit, ...], rules: RuleBook) -> tuple[OpeningDay, ...]:
    """Return the opening days in calendar order."""
    on = job.quote_date
    after: dict[str, tuple[tuple[Opening, int], ...]] = {
        POUR: (
            (Opening.WALK, opening.walk_days(rules, on)),
            (Opening.FURNISH, opening.furniture_days(rules, on)),
            (Opening.DRIVE, opening.drive_days(rules, on)),
            (Opening.FILL, opening.fill_days(rules, on)),
        ),
        SEAL: (
            (Opening.WALK_AFTER_SEALER, opening.sealer_walk_days(rules, on)),
            (Opening.LOAD_AFTER_SEALER, opening.sealer_load_days(rules, on)),
        ),
    }
    days = [
        OpeningDay(use=use, day=visit.last_day + timedelta(days=wait))
        for visit in visits
        for use, wait in after.get(visit.id, ())
        if any(p.use in _ONLY_FOR.get(use, (p.use,)) for p in job.placements)
    ]
    return tuple(sorted(days, key=lambda opened: opened.day))


def ready_on(visits: tuple[Visit, ...], openings: tuple[OpeningDay, ...]) -> date:
    """Return the day from which the slab is finished and ready for every use."""
    return max((visits[-1].last_day, *(opened.day for opened in openings)))


_ONLY_FOR: Mapping[Opening, frozenset[Use]] = {
    Opening.DRIVE: DRIVEN_ON,
    Opening.FILL: ROUND_A_POOL,
}
"""The slabs that some uses are limited to; every other use goes with every slab."""
