"""Lines: every rate in use becomes quantity times rate, to the cent, with its working."""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from quotegen.money import to_cents
from quotegen.pricing.quoted.bands import PriceSlice, price_slices
from quotegen.pricing.quoted.quantities import quantity_of
from quotegen.pricing.quoted.rates import (
    RateInUse,
    basis_of,
    rates_in_use,
    shown_rate,
    us_size,
)
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.small_job_minimum import minimum_line
from quotegen.pricing.quoted.tax import tax_lines
from quotegen.pricing.quoted.visits_needed import visits_needed
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.rate_book import Basis, BookRate
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import Takeoff
from quotegen.working import Operation, Rounding, Step, given

NO_BANDS: Mapping[str, int] = MappingProxyType({})


def lines_of(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...] = (),
    quoted_bands: Mapping[str, int] = NO_BANDS,
) -> tuple[Line, ...]:
    """Return every line of the job at a finish: the work, the small-job minimum, the taxes.

    A line in `quoted_bands` is priced at the band that was quoted, whatever its quantity.
    """
    return with_minimum_and_tax(job, work_lines(job, takeoff, finish, extras, quoted_bands))


def work_lines(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...] = (),
    quoted_bands: Mapping[str, int] = NO_BANDS,
) -> tuple[Line, ...]:
    """Return the lines that pay for work; none of them depends on another."""
    return (
        *_rate_lines(job, takeoff, finish, extras, quoted_bands),
        *_finish_lines(job, takeoff, finish),
    )


def with_minimum_and_tax(job: JobSpec, lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """Add the lines that follow from the others: what a small job is topped up by, and taxes.

    The minimum is a price before tax, so taxes come last.
    """
    lines = (*lines, *minimum_line(job, lines))
    return (*lines, *tax_lines(job, lines))


def _rate_lines(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...],
    quoted_bands: Mapping[str, int],
) -> Iterator[Line]:
    visits = len(visits_needed(job, finish))
    for use in rates_in_use(job, finish, extras):
        book_rate = job.rate_book.rates[use.rate_id]
        quantity = quantity_of(job, use, book_rate, takeoff, visits)
        if quantity.value > 0:
            yield from _lines_of_rate(job, use, book_rate, quantity, quoted_bands.get(use.line_id))


def _lines_of_rate(
    job: JobSpec, use: RateInUse, book_rate: BookRate, quantity: Step, quoted_band: int | None
) -> Iterator[Line]:
    thickness = use.placement.thickness if use.placement else None
    slices = tuple(price_slices(book_rate, quantity.value, use.unit, thickness, quoted_band))
    for one in slices:
        yield _line(
            use=use,
            name=book_rate.name,
            scope=book_rate.covers,
            basis=basis_of(book_rate, use.unit),
            rate=shown_rate(one.rate, job.units),
            priced=one,
            working=(
                quantity if len(slices) == 1 else _slice_step(job, use, quantity, one),
                _rate_step(job, use.rate_id, one.rate, ("rates", use.rate_id, *one.path)),
            ),
        )


def _slice_step(job: JobSpec, use: RateInUse, quantity: Step, one: PriceSlice) -> Step:
    """Return a slice of a quantity: the last one is what the slices before it leave."""
    border = given(
        "where the slice begins",
        quantity.value - one.quantity,
        quantity.unit,
        job.book_source("rates", use.rate_id, *one.path[:2]),
    )
    if not one.is_last or not border.value:
        return given("slice", one.quantity, quantity.unit, border.source)
    return Step(
        name="last slice",
        formula="quantity less where the slice begins",
        operation=Operation.MINUS,
        inputs=(quantity, border),
        value=one.quantity,
        unit=quantity.unit,
    )


def _line(
    *,
    use: RateInUse,
    name: str,
    scope: tuple[str, ...],
    basis: Basis,
    rate: Rate,
    priced: PriceSlice,
    working: tuple[Step, ...],
) -> Line:
    """Make one line; its amount is rounded half-up to the cent, once."""
    amount = to_cents(priced.quantity * rate.amount)
    placement = use.placement
    number = priced.slice_number
    title = f"{name}, slice {number}" if number else name
    return Line(
        id=f"{use.line_id}.{number}" if number else use.line_id,
        rate_id=use.rate_id,
        name=name,
        scope=scope,
        placement=placement.id if placement else None,
        basis=basis,
        quantity=priced.quantity,
        unit=rate.unit,
        rate=rate.amount,
        amount=amount,
        follows_area=priced.is_last and use.follows_area,
        band=priced.band,
        working=Step(
            name=f"{title}, {placement.name}" if placement else title,
            formula="quantity x rate, to the cent",
            operation=Operation.TIMES,
            rounding=Rounding.CENT,
            inputs=working,
            value=amount,
            unit="$",
            rules=("line_rounding",),
        ),
    )


def _rate_step(job: JobSpec, rate_id: str, rate: Rate, path: tuple[str | int, ...]) -> Step:
    """Return the rate as the book has it, or its conversion in a metric job."""
    name = f"rate `{rate_id}` of the rate book"
    source = job.book_source(*path)
    typed = given(name, rate.amount, f"$ / {rate.unit.value}", source)
    shown = shown_rate(rate, job.units)
    if shown.unit is rate.unit:
        return typed
    one = given(f"{shown.unit.value} in one {rate.unit.value}", us_size(rate.unit), "")
    return Step(
        name=name, formula="rate / size of its unit, to the cent", operation=Operation.OVER,
        rounding=Rounding.CENT, inputs=(typed, one), value=shown.amount,
        unit=f"$ / {shown.unit.value}", source=source,
    )  # fmt: skip


def _finish_lines(job: JobSpec, takeoff: Takeoff, finish: str) -> Iterator[Line]:
    for placement in job.placements:
        finish_id, book_finish = job.finish_of(placement, finish)
        rate = shown_rate(book_finish.rate, job.units)
        area = takeoff.placement(placement.id).area(job.units)
        yield _line(
            use=RateInUse(
                rate_id=finish_id, unit=rate.unit, placement=placement, path=placement.path
            ),
            name=book_finish.name,
            scope=("finish",),
            basis=Basis.MEASURED,
            rate=rate,
            priced=PriceSlice(
                quantity=area, rate=book_finish.rate, path=("rate",), band=None, is_last=True
            ),
            working=(
                given("quantity", area, rate.unit.value, job.source(*placement.path)),
                _rate_step(job, finish_id, book_finish.rate, ("finishes", finish_id, "rate")),
            ),
        )
