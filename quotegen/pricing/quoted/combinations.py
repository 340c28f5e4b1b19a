"""Every combination that a page offers, priced beforehand so that no page computes a price."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import combinations as chosen_from
from itertools import product

from quotegen.money import Money, total
from quotegen.pricing.quoted.finish import area_prices, price_by_area
from quotegen.pricing.quoted.lines import with_what_follows, work_lines
from quotegen.pricing.quoted.options import Chosen, takes, with_alternates
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.records import Combination, Line
from quotegen.pricing.quoted.visits_needed import visits_needed
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


def combinations_of(job: JobSpec, takeoff: Takeoff) -> Iterator[Combination]:
    """Yield each combination of a finish, alternates, colors and extras, with its price.

    The first is the quote as it stands. Colors that no placement takes at a finish are no choice
    there and left out. Stage 1 has limited how many there are.
    """
    for finish in (job.finish, *job.typed.compare):
        for alternates in _alternates(job):
            other = with_alternates(job, alternates)
            for colors in (job.color, *job.colors):
                if colors == job.color or takes(other, finish, colors):
                    colored = replace(other, color=colors)
                    yield from _with_extras(colored, takeoff, finish, alternates)


def _alternates(job: JobSpec) -> Iterator[Chosen]:
    """Yield each choice of alternates; the placements as quoted come first."""
    offered = (
        ((), *(((placement.id, finish),) for finish in placement.alternates))
        for placement in job.placements
    )
    for picked in product(*offered):
        yield tuple(pair for one in picked for pair in one)


def _with_extras(
    job: JobSpec, takeoff: Takeoff, finish: str, alternates: Chosen
) -> Iterator[Combination]:
    """Yield each set of extras. A line that depends on no other is made only once."""
    work = work_lines(job, takeoff, finish, tuple(job.extras))
    lines = {
        extras: with_what_follows(job, finish, extras, _with_only(job, work, extras))
        for extras in _sets(job)
    }
    totals = {
        frozenset(extras): total(tuple(line.amount for line in priced))
        for extras, priced in lines.items()
    }
    for extras, priced in lines.items():
        price = totals[frozenset(extras)]
        yield Combination(
            finish=finish,
            extras=extras,
            alternates=alternates,
            colors=job.color if takes(job, finish, job.color) else (),
            total=price,
            payments=tuple(payment.amount for payment in payments_of(job, price)),
            visits=len(visits_needed(job, finish)),
            lines=priced,
            by_area=price_by_area(job, takeoff, price),
            area_price=area_prices(job, priced),
            adds=tuple(_adds(totals, frozenset(extras), extra) for extra in job.extras),
        )


def _sets(job: JobSpec) -> Iterator[tuple[str, ...]]:
    for count in range(len(job.extras) + 1):
        yield from chosen_from(job.extras, count)


def _adds(totals: Mapping[frozenset[str], Money], extras: frozenset[str], extra: str) -> Money:
    return Money(totals[extras | {extra}] - totals[extras - {extra}])


def _with_only(job: JobSpec, lines: tuple[Line, ...], extras: tuple[str, ...]) -> tuple[Line, ...]:
    return tuple(line for line in lines if line.rate_id not in job.extras or line.rate_id in extras)
