"""Options: a job with another finish on one placement, or with other colors."""

from collections.abc import Iterator
from dataclasses import replace

from quotegen.money import Money
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.records import Line, PricedAlternate, PricedColors, PricedFinish
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff

Chosen = tuple[tuple[str, str], ...]
"""Placements, each with the finish that is chosen for it alone."""


def with_alternates(job: JobSpec, chosen: Chosen) -> JobSpec:
    """Return the job with the chosen finish on each of these placements."""
    finishes = dict(chosen)
    return replace(
        job,
        placements=tuple(replace(p, finish=finishes.get(p.id, p.finish)) for p in job.placements),
    )


def takes(job: JobSpec, finish: str, colors: tuple[str, ...]) -> bool:
    """Tell whether the finish of any placement takes all of these colors."""
    return any(set(colors) <= set(job.finish_of(p, finish)[1].colors) for p in job.placements)


def alternates_of(
    job: JobSpec, takeoff: Takeoff, chosen: PricedFinish
) -> Iterator[PricedAlternate]:
    """Yield each alternate by itself, against the price of the quote."""
    for placement in job.placements:
        for finish in placement.alternates:
            after = price_at(with_alternates(job, ((placement.id, finish),)), takeoff, chosen.id)
            yield PricedAlternate(
                placement=placement.id,
                finish=finish,
                name=job.rate_book.finishes[finish].name,
                visits=after.visits,
                lines=changed_lines(chosen, after),
                amount=Money(after.total - chosen.total),
                total=after.total,
            )


def color_choices_of(
    job: JobSpec, takeoff: Takeoff, finishes: tuple[PricedFinish, ...]
) -> Iterator[PricedColors]:
    """Yield each choice of colors by itself, on the first offered finish that takes it.

    The chosen finish is tried first, then those to compare, then the alternates.
    """
    for colors in job.colors:
        finish, alternate = _taker(job, tuple(f.id for f in finishes), colors)
        with_finish = with_alternates(job, alternate)
        before = price_at(with_finish, takeoff, finish)
        after = price_at(replace(with_finish, color=colors), takeoff, finish)
        yield PricedColors(
            finish=alternate[0][1] if alternate else finish,
            placement=alternate[0][0] if alternate else None,
            colors=colors,
            names=tuple(job.rate_book.rates[color].name for color in colors),
            lines=changed_lines(before, after),
            amount=Money(after.total - before.total),
            total=after.total,
        )


def changed_lines(before: PricedFinish, after: PricedFinish) -> tuple[Line, ...]:
    """Return the lines that are new, or at another amount."""
    known = {line.id: line.amount for line in before.lines}
    return tuple(line for line in after.lines if known.get(line.id) != line.amount)


def _taker(job: JobSpec, finishes: tuple[str, ...], colors: tuple[str, ...]) -> tuple[str, Chosen]:
    for finish in finishes:
        if takes(job, finish, colors):
            return finish, ()
    for placement in job.placements:
        for finish in placement.alternates:
            alternate = ((placement.id, finish),)
            if takes(with_alternates(job, alternate), finishes[0], colors):
                return finishes[0], alternate
    return finishes[0], ()
