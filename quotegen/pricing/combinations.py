"""Every combination that a page offers, worked out beforehand, so that no page computes a price."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations as chosen_from
from itertools import product

from quotegen.money import total
from quotegen.pricing.lines import closed, work_lines
from quotegen.pricing.options import Chosen, takes, with_alternates
from quotegen.pricing.payments import payments_of
from quotegen.pricing.records import Combination, Line
from quotegen.spec.records import JobSpec
from quotegen.takeoff.records import Takeoff


def combinations_of(job: JobSpec, takeoff: Takeoff) -> Iterator[Combination]:
    """Yield each way to choose a finish, alternates, a look and extras, with its price.

    The first is the quote as it stands. A look that no placement takes at a finish is no choice
    there and left out. Stage 1 has seen to it that there are not too many.
    """
    for finish in (job.finish, *job.compare):
        for alternates in _alternates(job):
            other = with_alternates(job, alternates)
            for look in (job.colour, *job.colours):
                if look == job.colour or takes(other, finish, look):
                    yield from _with_extras(
                        replace(other, colour=look), takeoff, finish, alternates
                    )


def _alternates(job: JobSpec) -> Iterator[Chosen]:
    """Yield each way to choose alternates; the placements as quoted come first."""
    ways = (
        ((), *(((placement.id, finish),) for finish in placement.alternates))
        for placement in job.placements
    )
    for way in product(*ways):
        yield tuple(pair for one in way for pair in one)


def _with_extras(
    job: JobSpec, takeoff: Takeoff, finish: str, alternates: Chosen
) -> Iterator[Combination]:
    """Yield each set of extras. Lines of work stand by themselves, so each is made only once."""
    lines = work_lines(job, takeoff, finish, tuple(job.extras))
    for count in range(len(job.extras) + 1):
        for extras in chosen_from(job.extras, count):
            kept = tuple(line for line in lines if _kept(job, line, extras))
            price = total(tuple(line.amount for line in closed(job, kept)))
            yield Combination(
                finish=finish,
                extras=extras,
                alternates=alternates,
                colours=job.colour if takes(job, finish, job.colour) else (),
                total=price,
                payments=tuple(payment.amount for payment in payments_of(job, price)),
            )


def _kept(job: JobSpec, line: Line, extras: tuple[str, ...]) -> bool:
    return line.rate_id not in job.extras or line.rate_id in extras
