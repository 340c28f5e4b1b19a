"""Checks of what a homeowner may choose, of the way to the site, and of the company's taxes."""

from collections.abc import Iterator
from math import prod

from quotegen.problem import Problem
from quotegen.quantity import Unit
from quotegen.reading.files.company import EVERYTHING, Company
from quotegen.reading.files.job import JobFile, Look
from quotegen.reading.files.rate_book import BASE_COLORS, SECOND_COLORS, Applies, RateBook
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss

MOST_COMBINATIONS = 256
"""So many are worked out beforehand for one quote; a page with more is no help to choose by."""


def options_against_book(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield alternates and colors that the book does not have, and choices beyond the limit."""
    for index, placement in enumerate(job.value.placements):
        taken = [placement.finish or job.value.finish]
        for which, finish in enumerate(placement.alternates):
            path = ("placements", index, "alternates", which)
            if finish not in book.finishes:
                yield job.fault(
                    path,
                    "unknown-finish",
                    f"the rate book has no finish `{finish}`",
                    near_miss(finish, book.finishes),
                )
            elif finish in taken:
                yield job.fault(
                    path,
                    "finish-twice",
                    f"the finish `{finish}` is already offered",
                    "delete it here",
                )
            taken.append(finish)
    yield from _colors(job, book)
    count = combinations(job.value)
    if count > MOST_COMBINATIONS:
        yield job.fault(
            ("extras",) if job.value.extras else ("placements",),
            "too-many-combinations",
            f"finishes, extras, alternates and colors make {count:,} combinations; each has its "
            f"own price, and at most {MOST_COMBINATIONS} are worked out",
            "offer fewer extras, alternates, colors or finishes to compare; one extra less halves "
            "the number",
        )


def combinations(job: JobFile) -> int:
    """Return how many combinations a job offers."""
    finishes = 1 + len(job.compare)
    alternates: int = prod(1 + len(placement.alternates) for placement in job.placements)
    return finishes * (1 << len(job.extras)) * alternates * (1 + len(job.colors))


def road_to_site(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield a way to the site that the book prices and the job does not tell."""
    for rate_id, rate in book.rates.items():
        if (
            rate.travel is None
            or rate.rate is None
            or not _in_use(rate_id, rate.applies, job.value)
        ):
            continue
        by_mile = rate.rate.unit is Unit.MILE
        if (job.value.site.distance if by_mile else job.value.site.drive_time) is None:
            key, example = ("distance", "14 miles") if by_mile else ("drive_time", "35 min")
            yield job.fault(
                ("site",),
                "road-unknown",
                f"`{rate_id}` is priced per {rate.rate.unit.value} of the way to the site, "
                "which is not given",
                f"add `{key}: {example}` to `site`, counted one way",
            )


def taxes(company: Typed[Company], scope_items: frozenset[str]) -> Iterator[Problem]:
    """Yield taxes on something that no price covers, and taxes with one id."""
    seen: set[str] = set()
    for index, tax in enumerate(company.value.tax):
        for which, item in enumerate(tax.covers):
            if item != EVERYTHING and item not in scope_items:
                yield company.fault(
                    ("tax", index, "covers", which),
                    "unknown-scope-item",
                    f"`{item}` is not a scope item that content/ explains",
                    near_miss(item, {*scope_items, EVERYTHING}),
                )
        if tax.id in seen:
            yield company.fault(
                ("tax", index, "id"),
                "tax-twice",
                f"there is already a tax `{tax.id}`",
                "give each its own id",
            )
        seen.add(tax.id)


def _in_use(rate_id: str, applies: Applies, job: JobFile) -> bool:
    asked = {*job.include, *job.extras, *(i for p in job.placements for i in p.include)}
    return applies is not Applies.ASKED or rate_id in asked


def _colors(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    chosen = {job.value.finish, *(p.finish for p in job.value.placements if p.finish)}
    offered = {
        *chosen,
        *job.value.compare,
        *(a for p in job.value.placements for a in p.alternates),
    }
    if job.value.color is not None:
        yield from _look(job, book, ("color",), job.value.color, chosen)
    seen = [job.value.color]
    for index, look in enumerate(job.value.colors):
        yield from _look(job, book, ("colors", index), look, offered)
        if look in seen:
            yield job.fault(
                ("colors", index),
                "color-twice",
                f"the colors `{', '.join(look.colors)}` are already offered",
                "delete them here",
            )
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
            yield job.fault(
                (*path, place),
                "unknown-color",
                f"the rate book has no color `{color}`",
                near_miss(color, known),
            )
        elif color is not None and known[color].color not in hows:
            yield job.fault(
                (*path, place),
                "color-place",
                f"`{color}` is no {place} color; {' and '.join(hows)} are",
                "the base is in or on the slab first, the second tone lies over it",
            )
    if not look.colors:
        yield job.fault(
            path, "no-color", "this look names no color", "type {base: ...}, {second: ...} or both"
        )
    elif set(look.colors) <= known.keys() and not any(
        set(look.colors) <= set(book.finishes[f].colors) for f in finishes if f in book.finishes
    ):
        yield job.fault(
            path,
            "color-not-taken",
            f"no finish on this job takes the colors `{', '.join(look.colors)}`",
            "name the colors under `colors` of the finish in the rate book, or choose others",
        )
