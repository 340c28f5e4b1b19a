"""The trips that a job takes: the visits of every finish on it, joined."""

from dataclasses import dataclass

from quotegen.reading.files.rate_book import FinishVisit
from quotegen.reading.records import JobSpec

FORM, POUR = "form", "pour"
"""The visit of every book on which the concrete comes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NeededVisit:
    """One trip: its working days, the days that the slab must wait before it, and the crew.

    `crew` is how many people come, None where no finish on the job says so.
    """

    id: str
    name: str
    days: int
    wait_days: int
    crew: int | None


def visits_needed(job: JobSpec, finish: str) -> tuple[NeededVisit, ...]:
    """Join the visits of all finishes on the job, in the order of the rate book.

    Placements are worked on together: a visit takes the longest days and the longest wait that
    any of their finishes asks for, and the largest crew.
    """
    finishes = [job.finish_of(placement, finish)[1] for placement in job.placements]
    crew = max((one.crew for one in finishes if one.crew is not None), default=None)
    wanted: dict[str, list[FinishVisit]] = {}
    for one in finishes:
        for visit in one.visits:
            wanted.setdefault(visit.visit, []).append(visit)
    return tuple(
        NeededVisit(
            id=visit_id,
            name=name,
            days=max(v.days for v in wanted[visit_id]),
            wait_days=max(v.wait_days for v in wanted[visit_id]),
            crew=crew,
        )
        for visit_id, name in job.rate_book.visits.items()
        if visit_id in wanted
    )
