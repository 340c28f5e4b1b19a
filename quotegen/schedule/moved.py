"""What changes do to the days: added work lengthens a visit, and later visits move."""

from collections import Counter
from dataclasses import dataclass

from quotegen.reading.records import JobSpec
from quotegen.schedule.visits import Visit, visits_of
from quotegen.trade.rules import RuleBook


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedVisit:
    """A visit that a change lengthens or moves: its days before, and after."""

    was: Visit
    now: Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class Days:
    """The days of the contract.

    Attributes:
        moves: the visits that each change moves, in the order of the changes.
        visits: after all changes.
    """

    moves: tuple[tuple[MovedVisit, ...], ...]
    visits: tuple[Visit, ...]


def days_of(job: JobSpec, finish: str, rules: RuleBook) -> Days:
    """Work out what each change moves.

    The days that a change adds go to the first visit that is not over on its date; a change after
    the last visit lengthens that one.
    """
    added: Counter[str] = Counter()
    visits = visits_of(job, finish, rules)
    moves = []
    for change in job.typed.changes:
        before = visits
        if change.days:
            open_ = (visit for visit in before if visit.last_day >= change.date)
            added[next(open_, before[-1]).id] += change.days
            visits = visits_of(job, finish, rules, added)
        pairs = zip(before, visits, strict=True)
        moves.append(tuple(MovedVisit(was=was, now=now) for was, now in pairs if was != now))
    return Days(moves=tuple(moves), visits=visits)
