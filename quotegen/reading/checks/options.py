"""Checks of what a homeowner may choose: alternates, colors, and how many combinations of all."""

from collections.abc import Iterator
from math import prod

from quotegen.problem import Problem
from quotegen.reading.files.job import Job, JobFile, Look
from quotegen.reading.files.rate_book import BASE_COLORS, SECOND_COLORS, Applies, RateBook
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

MOST_COMBINATIONS = 256
"""So many are worked out beforehand for one quote; a page with more is no help to choose by."""


def option_faults(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield alternates and colors that the book does not have, and choices beyond the limit."""
    yield from _alternates(job, book)
    yield from _colors(job, book)
    count = combinations(job.value)
    if count > MOST_COMBINATIONS:
        said = (
            f"finishes, extras, alternates and colors make {count:,} combinations; each has its "
            f"own price, and at most {MOST_COMBINATIONS} are worked out"
        )
        hint = (
            "offer fewer extras, alternates, colors or finishes to compare; one extra less halves "
            "the number"
        )
        path = ("extras",) if job.value.extras else ("placements",)
        yield job.fault(path, "too-many-combinations", said, hint)


def combinations(job: Job) -> int:
    """Return how many combinations a job offers."""
    finishes = 1 + len(job.compare)
    alternates: int = prod(1 + len(placement.alternates) for placement in job.placements)
    return finishes * (1 << len(job.extras)) * alternates * (1 + len(job.colors))


def _alternates(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    for index, placement in enumerate(job.value.placements):
        taken = [placement.finish or job.value.finish]
        for which, finish in enumerate(placement.alternates):
            path = ("placements", index, "alternates", which)
            if finish not in book.finishes:
                said = f"the rate book has no finish `{finish}`"
                yield job.fault(path, "unknown-finish", said, near_miss(finish, book.finishes))
            elif finish in taken:
                said = f"the finish `{finish}` is already offered"
                yield job.fault(path, "finish-twice", said, "delete it here")
            taken.append(finish)


def _colors(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    placements = job.value.placements
    chosen = {job.value.finish, *(p.finish for p in placements if p.finish)}
    offered = {*chosen, *job.value.compare, *(a for p in placements for a in p.alternates)}
    if job.value.color is not None:
        yield from _look(job, book, ("color",), job.value.color, chosen)
    seen = [job.value.color]
    for index, look in enumerate(job.value.colors):
        yield from _look(job, book, ("colors", index), look, offered)
        if look in seen:
            said = f"the colors `{', '.join(look.colors)}` are already offered"
            yield job.fault(("colors", index), "color-twice", said, "delete them here")
        seen.append(look)


def _look(
    job: Typed[JobFile], book: RateBook, path: DocumentPath, look: Look, finishes: set[str]
) -> Iterator[Problem]:
    known = {i: rate for i, rate in book.rates.items() if rate.applies is Applies.COLOR}
    for place, color, hows in (
        ("base", look.base, BASE_COLORS),
        ("second", look.second, SECOND_COLORS),
    ):
        if color is not None and color not in known:
            said = f"the rate book has no color `{color}`"
            yield job.fault((*path, place), "unknown-color", said, near_miss(color, known))
        elif color is not None and known[color].color not in hows:
            said = f"`{color}` is no {place} color; {' and '.join(hows)} are"
            hint = "the base is in or on the slab first, the second tone lies over it"
            yield job.fault((*path, place), "color-place", said, hint)
    if not look.colors:
        hint = "type {base: ...}, {second: ...} or both"
        yield job.fault(path, "no-color", "this look names no color", hint)
    elif set(look.colors) <= known.keys() and not any(
        set(look.colors) <= set(book.finishes[f].colors) for f in finishes if f in book.finishes
    ):
        said = f"no finish on this job takes the colors `{', '.join(look.colors)}`"
        hint = "name the colors under `colors` of the finish in the rate book, or choose others"
        yield job.fault(path, "color-not-taken", said, hint)
