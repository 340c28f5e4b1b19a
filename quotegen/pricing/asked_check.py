"""What a job asks for and does not have: a cast pool edge on a slab without a pool, say."""

from collections.abc import Iterator

from quotegen.pricing.finish import price_at
from quotegen.problem import Problem
from quotegen.spec.located import DocumentPath
from quotegen.spec.records import JobSpec
from quotegen.spec.validate import path_text
from quotegen.takeoff.records import Takeoff


def asked_problems(job: JobSpec, takeoff: Takeoff) -> tuple[Problem, ...]:
    """Return an error for each rate that was asked for and came to nothing."""
    lines = price_at(job, takeoff, job.finish, tuple(job.extras)).lines
    priced = {(line.rate_id, line.placement) for line in lines}
    rates = {line.rate_id for line in lines}
    return tuple(
        Problem(
            code="nothing-to-price",
            source=job.source(*path),
            path=path_text(path),
            message=f"`{rate}` is asked for, and the takeoff finds none of it here",
            hint="delete the line, type how much there is, or check the shapes",
        )
        for rate, placement, path in _asked(job)
        if (rate not in rates if placement is None else (rate, placement) not in priced)
    )


def _asked(job: JobSpec) -> Iterator[tuple[str, str | None, DocumentPath]]:
    for key, asked in (("include", job.include), ("extras", job.extras)):
        for rate in asked:
            yield rate, None, (key, rate)
    for spec in job.placements:
        for rate in spec.include:
            yield rate, spec.id, (*spec.path, "include", rate)
