"""The trips that a job takes: the visits of every finish on it, joined."""

from dataclasses import dataclass

from quotegen.spec.rate_book import FinishVisit
from quotegen.spec.records import JobSpec


@dataclass(frozen=True, slots=True, kw_only=True)
class NeededVisit:
    """One trip: how many working days it takes and how many days the slab must wait before it."""

    id: str
    name: str
    days: int
    wait_days: int


def visits_needed(job: JobSpec, finish: str) -> tuple[NeededVisit, ...]:
    """Join the visits of all finishes on the job, in the order of the rate book.

    Placements are worked on together: a visit takes the longest days and the longest wait that
    any of their finishes asks for.
    """
    wanted: dict[str, list[FinishVisit]] = {}
    for placement in job.placements:
        for visit in job.finish_of(placement, finish)[1].visits:
            wanted.setdefault(visit.visit, []).append(visit)
    return tuple(
        NeededVisit(
            id=visit_id,
            name=name,
            days=max(v.days for v in wanted[visit_id]),
            wait_days=max(v.wait_days for v in wanted[visit_id]),
        )
        for visit_id, name in job.rate_book.visits.items()
        if visit_id in wanted
    )
