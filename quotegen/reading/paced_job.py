"""A job that is only paced: an area and a finish, with all that the rate book says is usual."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction
from pathlib import Path

from quotegen.problem import Problem
from quotegen.quantity import Length, rounded
from quotegen.reading.fields.road_fields import Road
from quotegen.reading.fields.text_fields import Count, Size
from quotegen.reading.files.after_signing import Measured, MeasuredPlacement
from quotegen.reading.files.job import Customer, JobFile, Placement, Site, Use
from quotegen.reading.files.rate_book import Applies, RateBook
from quotegen.reading.files.shapes import EdgeKind, Shape
from quotegen.reading.read import read_company, with_company
from quotegen.reading.records import JobSpec, ReadJob
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

_PLACES = 4
"""Decimals of a foot to which a paced side is taken."""

_SAME = {
    EdgeKind.POOL: (EdgeKind.POOL, EdgeKind.INNER),
    EdgeKind.FORMED: (EdgeKind.FORMED, EdgeKind.OUTER),
}
"""The edges that may be paced, each with all that it says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is known on the first visit.

    Attributes:
        folder: where the company's files lie.
        sizes: rectangles as paced, which together are the slab; or else `area_sqft`.
        area_sqft: of the slab, where nobody paced its sides.
        edges: at the pool, or formed, as paced, where a rectangle alone does not say them.
        finish: an id of the rate book; its first finish where none is asked for.
        on: the day of the visit, None for the day on which the newest rate book begins.
        distance, drive_time: the way to the site one way, where the book prices it.
    """

    folder: Path
    sizes: tuple[Size, ...] = ()
    area_sqft: Fraction | None = None
    edges: Mapping[EdgeKind, Length] = field(default_factory=dict)
    finish: str | None = None
    use: Use
    on: date | None
    distance: Road | None
    drive_time: Road | None

    @property
    def drawn(self) -> Size:
        """The rectangle as paced, or the square that has the same area as all of the slab."""
        if len(self.sizes) == 1:
            return self.sizes[0]
        side = Length(Fraction(rounded(math.sqrt(self.paced_sqft), _PLACES)))
        return Size(side, side)

    @property
    def paced_sqft(self) -> Fraction:
        """The area of all that was paced."""
        if self.area_sqft is not None:
            return self.area_sqft
        return sum((size.length.feet * size.width.feet for size in self.sizes), Fraction(0))

    @property
    def is_a_rectangle(self) -> bool:
        """Whether one rectangle says both the area and the edges."""
        return len(self.sizes) == 1 and not self.edges


def paced_job(asked: Asked, scope_items: frozenset[str]) -> ReadJob | tuple[Problem, ...]:
    """Return the paced slab as a job at every finish of the book, the asked one first.

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
    if asked.finish is not None and asked.finish not in finishes:
        said = f"the rate book has no finish `{asked.finish}`"
        hint = near_miss(asked.finish, finishes)
        return (files.book.fault(("finishes",), "unknown-finish", said, hint),)
    job = Typed(_job_file(asked, files.book.value), Places(str(path)))
    read = with_company(job, files, scope_items)
    if isinstance(read, tuple) or asked.on is not None:
        return read
    return replace(read, job=_without_seasons(read.job))


def paced_by(job: JobSpec, asked: Asked, factor: Fraction) -> tuple[JobSpec, Measured | None]:
    """Return a paced job with each side longer or shorter by a factor than it was paced.

    Returns:
        The job, and beside it the area and the edges that count in place of its rectangle's, if
        it is not one rectangle alone.
    """
    longer = replace(job, placements=(replace(job.placements[0], add=_rectangle(asked, factor)),))
    if asked.is_a_rectangle:
        return longer, None
    edges = {
        edge: Length(length.feet * factor)
        for paced, length in asked.edges.items()
        for edge in _SAME[paced]
    }
    counts = MeasuredPlacement.model_construct(
        area=asked.paced_sqft * factor * factor, edges=edges, add=(), take_away=()
    )
    placements = {job.placements[0].id: counts}
    return longer, Measured.model_construct(date=job.quote_date, placements=placements)


def _rectangle(asked: Asked, factor: Fraction) -> tuple[Shape, ...]:
    length, width = (
        Length(Fraction(rounded(side.feet * factor, _PLACES)))
        for side in (asked.drawn.length, asked.drawn.width)
    )
    return (Shape.model_construct(rectangle=Size(length, width)),)


def _at_edges(asked: Asked, book: RateBook) -> dict[str, Count]:
    """What is asked for by pacing the edge that it follows, such as a cast edge at a pool."""
    return {
        rate_id: Count(None, None)
        for rate_id, rate in book.rates.items()
        if rate.applies is Applies.ASKED and rate.of in asked.edges and rate.of is EdgeKind.POOL
    }


def _without_seasons(job: JobSpec) -> JobSpec:
    """Without a day nobody knows the season: its lines are left to be asked for."""
    rates = {
        key: rate.model_copy(update={"applies": Applies.ASKED}) if rate.season else rate
        for key, rate in job.rate_book.rates.items()
    }
    return replace(job, rate_book=job.rate_book.model_copy(update={"rates": rates}))


def _job_file(asked: Asked, book: RateBook) -> JobFile:
    on = asked.on or book.valid_from
    finish = asked.finish or next(iter(book.finishes))
    slab = Placement.model_construct(id="slab", use=asked.use, add=_rectangle(asked, Fraction(1)))
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
        finish=finish,
        compare=tuple(other for other in book.finishes if other != finish),
        include=_at_edges(asked, book),
        references=(),
        placements=(slab,),
    )
