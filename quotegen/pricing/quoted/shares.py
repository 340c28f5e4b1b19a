"""Lines that are a share of other lines: fuel, a card fee, a reserve for what nobody foresees."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.rates import rates_in_use
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import ONE, Unit, decimal_of
from quotegen.reading.files.rate_book import Basis, BookRate, RateBook
from quotegen.reading.records import JobSpec
from quotegen.working import Operation, Rounding, Step, added, given


def share_lines(
    job: JobSpec, finish: str, extras: tuple[str, ...], lines: tuple[Line, ...]
) -> Iterator[Line]:
    """Yield each share that is part of the job, of the lines of work that it goes by.

    It is rounded half-up to the cent, once. A share of lines that the job lacks is no line.
    """
    for use in rates_in_use(job, finish, extras):
        shared = lines_shared(job.rate_book, use.rate_id, lines)
        if shared:
            yield _line(job, use.rate_id, shared)


def lines_shared(book: RateBook, rate_id: str, lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """Return the lines that a rate is a share of: lines of work, and never another share.

    A line for several scope items is among them where any of the items is. None is where the rate
    has a price of its own.
    """
    rate = book.rates[rate_id]
    return tuple(
        line
        for line in lines
        if line.pays_for_work and not is_share(book, line) and line.pays_for_any(rate.share_of)
    )


def shares_again(book: RateBook, lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """Return a part of the lines of a price with each share worked out on that part."""
    again = {
        line.id: _amount(book.rates[line.rate_id], lines_shared(book, line.rate_id, lines))
        for line in lines
        if is_share(book, line)
    }
    return tuple(replace(line, amount=again.get(line.id, line.amount)) for line in lines)


def is_share(book: RateBook, line: Line) -> bool:
    """Tell whether a line is a share of others."""
    rate = book.rates.get(line.rate_id)
    return rate is not None and rate.share is not None


def _amount(rate: BookRate, shared: tuple[Line, ...]) -> Money:
    whole = total(tuple(line.amount for line in shared))
    return to_cents(whole * decimal_of(rate.share or Fraction(0)))


def _line(job: JobSpec, rate_id: str, shared: tuple[Line, ...]) -> Line:
    """Make one line; it moves with the measure where any of the lines that it follows does."""
    rate = job.rate_book.rates[rate_id]
    share = decimal_of(rate.share or Fraction(0))
    amount = _amount(rate, shared)
    whole = total(tuple(line.amount for line in shared))
    lines = added(f"lines for `{rate_id}`", tuple(line.working for line in shared), whole)
    typed = given(
        f"share `{rate_id}` of the rate book", share, "", job.book_source("rates", rate_id, "share")
    )
    moves = any(line.basis is Basis.MEASURED for line in shared)
    return Line(
        id=rate_id,
        rate_id=rate_id,
        name=rate.name,
        scope=rate.covers,
        placement=None,
        basis=Basis.MEASURED if moves else Basis.FIXED,
        quantity=ONE,
        unit=Unit.LUMP,
        rate=amount,
        amount=amount,
        follows_area=False,
        working=Step(
            name=rate.name,
            formula="lines x share, to the cent",
            operation=Operation.TIMES,
            rounding=Rounding.CENT,
            inputs=(lines, typed),
            value=amount,
            unit="$",
            rules=("line_rounding",),
        ),
    )
