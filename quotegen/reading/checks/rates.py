"""Checks of single rates: bands without gap or overlap, travel, allowances and colors."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from quotegen.money import to_cents
from quotegen.problem import Problem
from quotegen.quantity import Unit, decimal_of
from quotegen.reading.files.rate_book import (
    Applies,
    Band,
    Basis,
    BookRate,
    ExceededRule,
    Finish,
)
from quotegen.reading.files.rate_book_file import CostedBand, RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss

TRAVELLED = (Unit.MILE, Unit.HOUR)


def rates_themselves(book: Typed[RateBookFile]) -> Iterator[Problem]:
    """Yield what is wrong within one rate, or between a finish and its colors."""
    for rate_id, rate in book.value.rates.items():
        path = ("rates", rate_id)
        for kind in ("by_size", "by_slice"):
            yield from _bands(book, (*path, kind), getattr(rate, kind))
        if rate.by_size:
            yield from _inversions(book, (*path, "by_size"), rate.by_size)
        yield from _road(book, path, rate)
        yield from _allowance(book, path, rate)
        if (rate.applies is Applies.COLOR) != (rate.color is not None):
            yield book.fault(
                path,
                "color-how",
                "a color needs both `applies: with color` and `color:`, how it is made",
                "add the other line: integral, hardener, release or antiquing",
            )
    for finish_id, finish in book.value.finishes.items():
        yield from _colors(book, ("finishes", finish_id, "colors"), finish)


def _bands(
    book: Typed[RateBookFile], path: DocumentPath, bands: tuple[CostedBand, ...]
) -> Iterator[Problem]:
    unit = bands[0].rate.unit if bands else None
    for index, band in enumerate(bands):
        wrong = [
            b.unit for b in (band.from_, band.to, band.rate, band.cost) if b and b.unit is not unit
        ]
        if wrong and unit:
            said = wrong[0].value if wrong[0] else "nothing"
            yield book.fault(
                (*path, index),
                "band-unit",
                f"the bands of a price per {unit.value} count {unit.value}; this one has {said}",
                f"type sizes like 400 {unit.value} and every rate per {unit.value}",
            )
            return
    if bands and bands[0].from_ is not None:
        yield _gap(book, (*path, 0, "from"), "nothing", _size(bands[0], "from_"))
    for index, (below, above) in enumerate(pairwise(bands), start=1):
        yield from _border(book, (*path, index), below, above)
    if bands and bands[-1].to is not None:
        yield _gap(book, (*path, len(bands) - 1, "to"), _size(bands[-1], "to"), "any larger size")


def _border(
    book: Typed[RateBookFile], path: DocumentPath, below: Band, above: Band
) -> Iterator[Problem]:
    end = below.to.amount if below.to else None
    start = above.from_.amount if above.from_ else None
    begins = below.from_.amount if below.from_ else None
    if end is None or start is None or start < end or (begins or 0) >= end:
        yield book.fault(
            path,
            "band-overlap",
            f"this band, from {_size(above, 'from_')}, overlaps the one before it, "
            f"which goes up to {_size(below, 'to')}",
            "let each band but the first have `from`, each but the last `to`, and let them meet",
        )
    elif start > end:
        yield _gap(book, path, _size(below, "to"), _size(above, "from_"))


def _inversions(
    book: Typed[RateBookFile], path: DocumentPath, bands: tuple[Band, ...]
) -> Iterator[Problem]:
    for index, (below, above) in enumerate(pairwise(bands), start=1):
        size = below.to.amount if below.to else None
        if size is None or above.rate.amount >= below.rate.amount:
            continue
        before, after = to_cents(size * below.rate.amount), to_cents(size * above.rate.amount)
        unit = above.rate.unit.value
        until = f"up to {_even(size, below, above):,.1f} {unit} " if above.rate.amount else ""
        yield book.fault(
            (*path, index, "rate"),
            "band-inversion",
            f"{size} {unit} cost ${before:,} at the rate below and ${after:,} at this one, so that "
            f"{until}a larger job would be cheaper",
            "use `by_slice`, where each rate pays for its own slice alone; or raise this rate",
        )


def _even(size: Decimal, below: Band, above: Band) -> Decimal:
    """Return the size from which the lower rate costs as much as the border at the higher one."""
    return decimal_of(Fraction(size * below.rate.amount) / Fraction(above.rate.amount))


def _road(book: Typed[RateBookFile], path: DocumentPath, rate: BookRate) -> Iterator[Problem]:
    unit = rate.rate.unit if rate.rate else None
    if rate.travel is None and unit in TRAVELLED and rate.applies is not Applies.ASKED:
        yield book.fault(
            path,
            "how-many",
            f"nothing says how many {unit.value}s a job has" if unit else "",
            "add `travel: {both_ways: yes}` for the way to the site, or `applies: asked`",
        )
    if rate.travel is not None:
        free = rate.travel.free
        other = free and (free.miles is None if unit is Unit.MILE else free.hours is None)
        if unit not in TRAVELLED or other:
            yield book.fault(
                (*path, "travel"),
                "travel-unit",
                "travel is priced by the mile with free miles, or by the hour with free time",
                "type it like $1.80 / mile with free: 10 miles, or $85 / hour with free: 30 min",
            )


def _allowance(book: Typed[RateBookFile], path: DocumentPath, rate: BookRate) -> Iterator[Problem]:
    exceeded = rate.exceeded
    if exceeded is None:
        return
    if rate.basis is not Basis.ALLOWANCE:
        yield book.fault(
            (*path, "exceeded"),
            "not-an-allowance",
            "only an allowance can be exceeded, and this rate is none",
            "add `basis: allowance`, or delete `exceeded`",
        )
    if (exceeded.rule is ExceededRule.COST_PLUS) != (exceeded.plus is not None):
        yield book.fault(
            (*path, "exceeded"),
            "plus-what",
            "`plus` goes with the rule `cost plus`, and with no other",
            "type {rule: cost plus, plus: 15%}, {rule: at cost} or {rule: capped}",
        )


def _colors(book: Typed[RateBookFile], path: DocumentPath, finish: Finish) -> Iterator[Problem]:
    known = [i for i, rate in book.value.rates.items() if rate.applies is Applies.COLOR]
    for index, color in enumerate(finish.colors):
        if color not in known:
            yield book.fault(
                (*path, index),
                "unknown-color",
                f"the rate book has no color `{color}`",
                near_miss(color, known),
            )


def _size(band: Band, end: str) -> str:
    count = getattr(band, end)
    return f"{count.amount} {count.unit.value}" if count else "no size"


def _gap(book: Typed[RateBookFile], path: DocumentPath, end: str, start: str) -> Problem:
    return book.fault(
        path,
        "band-gap",
        f"no band has a price between {end} and {start}",
        "leave out `from` in the first band and `to` in the last, and let the others meet",
    )
