"""The dates of the care card: from the day of the pour to the next coat of sealer."""

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from quotegen.reading.files.job import DRIVEN_ON, ROUND_A_POOL
from quotegen.reading.files.rate_book import POUR, SEAL, Sealer
from quotegen.reading.records import JobSpec
from quotegen.schedule.visits import Visit
from quotegen.trade import opening, sealing
from quotegen.trade.rules import RuleBook


class Care(StrEnum):
    """What the slab is ready for, or needs."""

    POUR = "pour"
    COLOR = "color"
    TRUCK = "truck"
    WINTER = "winter"
    YEARLY = "yearly"
    RESEAL = "reseal"


@dataclass(frozen=True, slots=True, kw_only=True)
class CareDate:
    """The day of one kind of care, or the first and the last year of it."""

    care: Care
    day: date | None = None
    years: tuple[int, int] | None = None


def care_dates_of(job: JobSpec, visits: tuple[Visit, ...], rules: RuleBook) -> tuple[CareDate, ...]:
    """Return the care dates, days first; none where no visit is a pour.

    Color is judged once the slab has dried, and under a film once the film has dried too. The
    first winter begins in the year of the pour. The next coat of sealer is counted from the visit
    of the first; a slab without a sealer needs none.
    """
    last = {visit.id: visit.last_day for visit in visits}
    if POUR not in last:
        return ()
    poured, on = last[POUR], job.quote_date
    dates = [
        CareDate(care=Care.POUR, day=poured),
        CareDate(care=Care.COLOR, day=_color_day(job, last, rules)),
    ]
    if any(p.use in DRIVEN_ON for p in job.placements):
        truck = poured + timedelta(days=opening.truck_days(rules, on))
        dates.append(CareDate(care=Care.TRUCK, day=truck))
    dates.append(CareDate(care=Care.WINTER, years=(poured.year, poured.year + 1)))
    dates.append(CareDate(care=Care.YEARLY, years=(poured.year + 1, poured.year + 1)))
    dates.extend(_reseal(job, last, rules))
    return tuple(dates)


def _color_day(job: JobSpec, last: dict[str, date], rules: RuleBook) -> date:
    day = last[POUR] + timedelta(days=opening.color_days(rules, job.quote_date))
    film = any(job.finish_of(p, job.finish)[1].sealer is Sealer.FILM for p in job.placements)
    if not film or SEAL not in last:
        return day
    dry = last[SEAL] + timedelta(days=opening.sealer_load_days(rules, job.quote_date))
    return max(day, dry)


def _reseal(job: JobSpec, last: dict[str, date], rules: RuleBook) -> tuple[CareDate, ...]:
    sealers = {job.finish_of(p, job.finish)[1].sealer for p in job.placements} - {Sealer.NONE}
    if SEAL not in last or len(sealers) != 1:
        return ()
    kind = sealing.Sealer(next(iter(sealers)).value)
    at_pool = frozenset(p.use in ROUND_A_POOL for p in job.placements)
    years = sealing.reseal_years(kind, rules, job.quote_date, at_pool=at_pool)
    sealed = last[SEAL].year
    return (
        CareDate(care=Care.RESEAL, years=(sealed + int(years.least), sealed + int(years.most))),
    )
