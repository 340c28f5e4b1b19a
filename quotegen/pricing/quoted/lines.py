"""Lines: every rate in use becomes quantity times rate, to the cent; others follow from them."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from quotegen.money import to_cents
from quotegen.pricing.quoted.bands import PriceSlice, price_slices
from quotegen.pricing.quoted.discount import discount_line
from quotegen.pricing.quoted.quantities import quantity_of
from quotegen.pricing.quoted.rates import (
    RateInUse,
    basis_of,
    rates_in_use,
    shown_rate,
    us_size,
)
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.rounding import rounding_line
from quotegen.pricing.quoted.shares import share_lines
from quotegen.pricing.quoted.small_job_minimum import minimum_line
from quotegen.pricing.quoted.tax import tax_lines
from quotegen.pricing.quoted.visits_needed import visits_needed
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.price import Price
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import DocumentPath
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
    """Return every line of the job at a finish: the work, and what follows from it.

    A line in `quoted_bands` is priced at the band that was quoted, whatever its quantity.
    """
    work = work_lines(job, takeoff, finish, extras, quoted_bands)
    return with_what_follows(job, finish, extras, work)


def work_lines(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...] = (),
    quoted_bands: Mapping[str, int] = NO_BANDS,
) -> tuple[Line, ...]:
    """Return the lines of work that do not depend on another: all but the shares."""
    return (
        *_rate_lines(job, takeoff, finish, extras, quoted_bands),
        *_finish_lines(job, takeoff, finish, quoted_bands),
    )


def with_what_follows(
    job: JobSpec, finish: str, extras: tuple[str, ...], lines: tuple[Line, ...]
) -> tuple[Line, ...]:
    """Add the lines that follow from the others, each from all that stand before it.

    Shares of the work come first, then what a small job is topped up by, the discount, and the
    taxes; last what makes the sum round.
    """
    lines = (*lines, *share_lines(job, finish, extras, lines))
    lines = (*lines, *minimum_line(job, lines))
    lines = (*lines, *discount_line(job, lines))
    lines = (*lines, *tax_lines(job, lines))
    return (*lines, *rounding_line(job, lines))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Entry:
    """A rate or a finish of the book, as its lines need it; `path` is where it stands there."""

    price: Price
    name: str
    scope: tuple[str, ...]
    basis: Basis
    path: DocumentPath


def _rate_lines(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...],
    quoted_bands: Mapping[str, int],
) -> Iterator[Line]:
    visits = len(visits_needed(job, finish))
    for use in rates_in_use(job, finish, extras):
        rate = job.rate_book.rates[use.rate_id]
        if rate.share is not None:  # it follows from the lines that are made here
            continue
        entry = _Entry(
            price=rate, name=rate.name, scope=rate.covers, basis=basis_of(rate, use.unit),
            path=job.rate_book.path_of(use.rate_id),
        )  # fmt: skip
        quantity = quantity_of(job, use, rate, takeoff, visits)
        yield from _lines_of(job, use, entry, quantity, quoted_bands)


def _finish_lines(
    job: JobSpec, takeoff: Takeoff, finish: str, quoted_bands: Mapping[str, int]
) -> Iterator[Line]:
    for placement in job.placements:
        finish_id, book_finish = job.finish_of(placement, finish)
        entry = _Entry(
            price=book_finish, name=book_finish.name, scope=job.rate_book.covered_by(book_finish),
            basis=Basis.MEASURED, path=job.rate_book.path_of(finish_id),
        )  # fmt: skip
        unit = job.units.area_unit
        use = RateInUse(rate_id=finish_id, unit=unit, placement=placement, path=placement.path)
        area = takeoff.placement(placement.id).area(job.units)
        quantity = given("quantity", area, unit.value, job.source(*placement.path))
        yield from _lines_of(job, use, entry, quantity, quoted_bands)


def _lines_of(
    job: JobSpec, use: RateInUse, entry: _Entry, quantity: Step, quoted_bands: Mapping[str, int]
) -> Iterator[Line]:
    """Yield the line of an entry, or one for each slice of it; none of nothing or at no price."""
    if quantity.value <= 0:
        return
    thickness = use.placement.thickness if use.placement else None
    band = quoted_bands.get(use.line_id)
    slices = tuple(price_slices(entry.price, quantity.value, use.unit, thickness, band))
    for one in slices:
        if not one.rate.amount:
            continue
        path = (*entry.path, *one.path)
        yield _line(
            use=use,
            entry=entry,
            rate=shown_rate(one.rate, job.units),
            priced=one,
            working=(
                quantity if len(slices) == 1 else _slice_step(job, entry, quantity, one),
                _rate_step(job, use.rate_id, one.rate, path),
            ),
        )


def _slice_step(job: JobSpec, entry: _Entry, quantity: Step, one: PriceSlice) -> Step:
    """Return a slice of a quantity: the last one is what the slices before it leave."""
    border = given(
        "where the slice begins",
        quantity.value - one.quantity,
        quantity.unit,
        job.book_source(*entry.path, *one.path[:2]),
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
    entry: _Entry,
    rate: Rate,
    priced: PriceSlice,
    working: tuple[Step, ...],
) -> Line:
    """Make one line; its amount is rounded half-up to the cent, once."""
    amount = to_cents(priced.quantity * rate.amount)
    placement = use.placement
    number = priced.slice_number
    title = f"{entry.name}, slice {number}" if number else entry.name
    return Line(
        id=f"{use.line_id}.{number}" if number else use.line_id,
        rate_id=use.rate_id,
        name=entry.name,
        scope=entry.scope,
        placement=placement.id if placement else None,
        basis=entry.basis,
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
