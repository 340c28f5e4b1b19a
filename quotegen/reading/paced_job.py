"""A job that is only paced: a rectangle and a finish, with all that the rate book says is usual."""

import json
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from pathlib import Path

from quotegen.problem import Problem
from quotegen.quantity import rounded
from quotegen.reading.book_versions import book_on
from quotegen.reading.fields.text_fields import Size
from quotegen.reading.files.job import JobFile, Use
from quotegen.reading.files.rate_book import Applies
from quotegen.reading.read import read_with_company
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import Document, Places, parse
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss, validate


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is known on the first visit.

    Attributes:
        folder: where the company's files lie.
        size: two sides, as paced.
        finish: an id of the rate book.
        on: the day of the visit, None for the day on which the newest rate book begins.
        distance, drive_time: the way to the site as typed, where the book prices it.
    """

    folder: Path
    size: Size
    finish: str
    use: Use
    on: date | None
    distance: str | None
    drive_time: str | None


def paced_job(
    asked: Asked, factor: Fraction, scope_items: frozenset[str]
) -> tuple[JobSpec | None, tuple[Problem, ...]]:
    """Return the paced rectangle as a job at every finish of the book, the asked one first.

    Args:
        asked: what is known.
        factor: by which each side is longer or shorter than it was paced.
        scope_items: the ids of the scope items that content/ explains.

    Returns:
        The job, or the problems of the company's files and of what was asked.
    """
    path = asked.folder / "visit.yaml"
    book = book_on(path, asked.on)
    if isinstance(book, tuple):
        return None, book
    if asked.finish not in book.value.finishes:
        return None, (_unknown(asked, book.places, tuple(book.value.finishes)),)
    others = tuple(finish for finish in book.value.finishes if finish != asked.finish)
    on = asked.on or book.value.valid_from
    document = parse(_text(asked, factor, on, others).encode(), str(path))
    if not isinstance(document, Document):
        return None, document
    typed = validate(document, JobFile)
    if isinstance(typed, tuple):
        return None, typed
    read = read_with_company(Typed(typed, document.places), path, scope_items, [])
    if isinstance(read, tuple):
        return None, read
    return (read.job if asked.on else _without_seasons(read.job)), read.problems


def _without_seasons(job: JobSpec) -> JobSpec:
    """Without a day nobody knows the season: its lines are left to be asked for."""
    rates = {
        key: rate.model_copy(update={"applies": Applies.ASKED}) if rate.season else rate
        for key, rate in job.rate_book.rates.items()
    }
    return replace(job, rate_book=job.rate_book.model_copy(update={"rates": rates}))


def _text(asked: Asked, factor: Fraction, on: date, others: tuple[str, ...]) -> str:
    """Write the job as a person would type it; JSON is YAML too."""
    sides = (asked.size.length, asked.size.width)
    length, width = (f"{rounded(side.feet * factor, 4):f} ft" for side in sides)
    way = {"distance": asked.distance, "drive_time": asked.drive_time}
    return json.dumps(
        {
            "quote": "ballpark",
            "date": on.isoformat(),
            "start": on.isoformat(),
            "customer": {"name": "first visit"},
            "site": {"address": "as visited", "town": "as visited"}
            | {key: typed for key, typed in way.items() if typed},
            "title": "First visit",
            "finish": asked.finish,
            "compare": list(others),
            "references": [],
            "placements": [
                {
                    "id": "slab",
                    "use": asked.use.value,
                    "add": [{"rectangle": f"{length} x {width}"}],
                }
            ],
        }
    )


def _unknown(asked: Asked, book: Places, finishes: tuple[str, ...]) -> Problem:
    said = f"the rate book has no finish `{asked.finish}`"
    return book.fault(("finishes",), "unknown-finish", said, near_miss(asked.finish, finishes))
