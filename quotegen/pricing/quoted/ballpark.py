"""The ballpark of a first visit: a low and a high price at each finish, from paced sides."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.money import Money
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.no_work import ROUNDING
from quotegen.pricing.quoted.rates import rate_at, shown_rate
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.rate_book import Applies
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff


@dataclass(frozen=True, slots=True, kw_only=True)
class BallparkRow:
    """The price of the whole job at one finish lies between these two."""

    finish: str
    name: str
    low: Money
    high: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class Ballpark:
    """A rough price with what it rests on.

    Attributes:
        paced, least, most: the area as paced, and with each side short or long by the spread.
        rows: the finish that was asked about, then the others of the book.
        begins: the day that picks seasonal lines, None where there are none.
        covers: the names of the lines in it.
        adds: what is not in it and has a price in the book, or a share of one, by name.
    """

    paced: Decimal
    least: Decimal
    most: Decimal
    rows: tuple[BallparkRow, ...]
    begins: date | None
    covers: tuple[str, ...]
    adds: tuple[tuple[str, Rate | Fraction], ...]


def ballpark_of(
    jobs: tuple[JobSpec, JobSpec, JobSpec],
    takeoffs: tuple[Takeoff, Takeoff, Takeoff],
    step: Decimal,
    begins: date | None,
) -> Ballpark:
    """Price the least and the most area, and widen the range to whole steps.

    Args:
        jobs: the same job with its sides short, as paced, and long.
        takeoffs: of each.
        step: dollars that the low price is rounded down to, and the high one up.
        begins: the day that picks seasonal lines, None where they are left out.
    """
    job = jobs[1]
    lines = price_at(job, takeoffs[1], job.finish).lines
    least, paced, most = (takeoff.area(job.units) for takeoff in takeoffs)
    return Ballpark(
        paced=paced,
        least=least,
        most=most,
        rows=tuple(_row(jobs, takeoffs, f, step) for f in (job.finish, *job.typed.compare)),
        begins=begins,
        covers=tuple(dict.fromkeys(line.name for line in lines if ROUNDING not in line.scope)),
        adds=tuple(
            (rate.name, rate.share or shown_rate(rate_at(rate, None), job.units))
            for rate_id, rate in job.rate_book.rates.items()
            if rate.applies in {Applies.ASKED, Applies.IF_FOUND} and rate_id not in job.include
        ),
    )


def _row(
    jobs: tuple[JobSpec, JobSpec, JobSpec],
    takeoffs: tuple[Takeoff, Takeoff, Takeoff],
    finish: str,
    step: Decimal,
) -> BallparkRow:
    low = price_at(jobs[0], takeoffs[0], finish).total
    high = price_at(jobs[2], takeoffs[2], finish).total
    return BallparkRow(
        finish=finish,
        name=jobs[1].rate_book.finishes[finish].name,
        low=Money(low // step * step),
        high=Money(-(-high // step) * step),
    )
