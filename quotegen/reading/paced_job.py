"""A job that is only paced: a rectangle and a finish, with all that the rate book says is usual."""

from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from pathlib import Path

from quotegen.problem import Problem
from quotegen.quantity import Length, rounded
from quotegen.reading.fields.text_fields import Road, Size
from quotegen.reading.files.job import Customer, JobFile, Placement, Site, Use
from quotegen.reading.files.rate_book import Applies, RateBook
from quotegen.reading.files.shapes import Shape
from quotegen.reading.read import read_company, with_company
from quotegen.reading.records import JobSpec, ReadJob
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

_PLACES = 4
"""Decimals of a foot to which a paced side is taken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is known on the first visit.

    Attributes:
        folder: where the company's files lie.
        size: two sides, as paced.
        finish: an id of the rate book.
        on: the day of the visit, None for the day on which the newest rate book begins.
        distance, drive_time: the way to the site one way, where the book prices it.
    """

    folder: Path
    size: Size
    finish: str
    use: Use
    on: date | None
    distance: Road | None
    drive_time: Road | None


def paced_job(asked: Asked, scope_items: frozenset[str]) -> ReadJob | tuple[Problem, ...]:
    """Return the paced rectangle as a job at every finish of the book, the asked one first.

    Args:
        asked: what is known.
        scope_items: the ids of the scope items that content/ explains.

    Returns:
        The job, or the problems of the company's files and of what was asked.
    """
    path = asked.folder / "visit.yaml"
    files = read_company(path, asked.on, scope_items)
    if files.book is None:
        return files.problems
    finishes = files.book.value.finishes
    if asked.finish not in finishes:
        said = f"the rate book has no finish `{asked.finish}`"
        hint = near_miss(asked.finish, finishes)
        return (files.book.fault(("finishes",), "unknown-finish", said, hint),)
    job = Typed(_job_file(asked, files.book.value), Places(str(path)))
    read = with_company(job, files, scope_items)
    if isinstance(read, tuple) or asked.on is not None:
        return read
    return replace(read, job=_without_seasons(read.job))


def with_sides(job: JobSpec, size: Size, factor: Fraction) -> JobSpec:
    """Return a paced job with each side longer or shorter by a factor than it was paced."""
    return replace(job, placements=(replace(job.placements[0], add=_rectangle(size, factor)),))


def _rectangle(size: Size, factor: Fraction) -> tuple[Shape, ...]:
    length, width = (
        Length(Fraction(rounded(side.feet * factor, _PLACES))) for side in (size.length, size.width)
    )
    return (Shape.model_construct(rectangle=Size(length, width)),)


def _without_seasons(job: JobSpec) -> JobSpec:
    """Without a day nobody knows the season: its lines are left to be asked for."""
    rates = {
        key: rate.model_copy(update={"applies": Applies.ASKED}) if rate.season else rate
        for key, rate in job.rate_book.rates.items()
    }
    return replace(job, rate_book=job.rate_book.model_copy(update={"rates": rates}))


def _job_file(asked: Asked, book: RateBook) -> JobFile:
    on = asked.on or book.valid_from
    add = _rectangle(asked.size, Fraction(1))
    return JobFile.model_construct(
        quote="ballpark",
        date=on,
        start=on,
        customer=Customer.model_construct(name="first visit"),
        site=Site.model_construct(
            address="as visited",
            town="as visited",
            distance=asked.distance,
            drive_time=asked.drive_time,
        ),
        title="First visit",
        finish=asked.finish,
        compare=tuple(finish for finish in book.finishes if finish != asked.finish),
        references=(),
        placements=(Placement.model_construct(id="slab", use=asked.use, add=add),),
    )
