"""The trips that a job takes: the visits of every finish on it, joined."""

from collections.abc import Iterator
from dataclasses import dataclass

from quotegen.reading.files.rate_book import POUR, FinishVisit
from quotegen.reading.records import JobSpec


@dataclass(frozen=True, slots=True, kw_only=True)
class NeededVisit:
    """One trip: its working days, the days that the slab must wait before it, and the crew.

    Attributes:
        id: no other visit of the job has it; of several pours the last is `pour` itself.
        visit: the visit of the book.
        part, parts: which pour of how many it is; 1 of 1 for any other visit.
        crew: how many people come, None where no finish on the job says so.
    """

    id: str
    visit: str
    name: str
    part: int
    parts: int
    days: int
    wait_days: int
    crew: int | None


def visits_needed(job: JobSpec, finish: str) -> tuple[NeededVisit, ...]:
    """Join the visits of all finishes on the job, in the order of the rate book.

    Placements are worked on together: a visit takes the longest days and the longest wait that
    any of their finishes asks for, and the largest crew. A slab that is poured in parts has a
    visit for each.
    """
    finishes = [job.finish_of(placement, finish)[1] for placement in job.placements]
    crew = max((one.crew for one in finishes if one.crew is not None), default=None)
    wanted: dict[str, list[FinishVisit]] = {}
    for one in finishes:
        for visit in one.visits:
            wanted.setdefault(visit.visit, []).append(visit)
    return tuple(
        NeededVisit(
            id=visit_id if part == parts else f"{visit_id}-{part}",
            visit=visit_id,
            name=name,
            part=part,
            parts=parts,
            days=max(v.days for v in wanted[visit_id]),
            wait_days=0 if part > 1 else max(v.wait_days for v in wanted[visit_id]),
            crew=crew,
        )
        for visit_id, name in job.rate_book.visits.items()
        if visit_id in wanted
        for part, parts in _parts(job, visit_id)
    )


def _parts(job: JobSpec, visit_id: str) -> Iterator[tuple[int, int]]:
    parts = job.typed.pours if visit_id == POUR else 1
    return ((part, parts) for part in range(1, parts + 1))
