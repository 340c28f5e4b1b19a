"""Lines: every rate in use becomes quantity times rate, to the cent, with its working."""

from collections.abc import Iterator, Mapping
from decimal import Decimal
from types import MappingProxyType

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.bands import Part, parts_of
from quotegen.pricing.quoted.rates import (
    AS_TAKEN_OFF,
    Use,
    basis_of,
    quantity_of,
    rate_at,
    rates_in_use,
    shown_rate,
    us_size,
)
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.tax import tax_lines
from quotegen.pricing.quoted.travel import travelled
from quotegen.pricing.quoted.visits_needed import visits_needed
from quotegen.quantity import ONE, Unit, Units, decimal_of
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.rate_book import Basis, BookRate
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.records import Takeoff
from quotegen.working import Operation, Rounding, Step, added, given, taken_away

NONE_HELD: Mapping[str, int] = MappingProxyType({})


def lines_of(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...] = (),
    held: Mapping[str, int] = NONE_HELD,
) -> tuple[Line, ...]:
    """Return every line of the job at a finish: the work, the small-job minimum, the taxes.

    `held` has the bands that were quoted, by line; such a line is priced at its band whatever
    its quantity.
    """
    return closed(job, work_lines(job, takeoff, finish, extras, held))


def work_lines(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...] = (),
    held: Mapping[str, int] = NONE_HELD,
) -> tuple[Line, ...]:
    """Return the lines that work stands behind, none of which depends on another."""
    return (*_rate_lines(job, takeoff, finish, extras, held), *_finish_lines(job, takeoff, finish))


def closed(job: JobSpec, lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """Return the lines with those that follow from the others: the minimum, if it bites, and taxes.

    The minimum is a price before tax, so taxes come last.
    """
    lines = (*lines, *_minimum(job, lines))
    return (*lines, *tax_lines(job, lines))


def _rate_lines(
    job: JobSpec,
    takeoff: Takeoff,
    finish: str,
    extras: tuple[str, ...],
    held: Mapping[str, int],
) -> Iterator[Line]:
    visits = len(visits_needed(job, finish))
    for use in rates_in_use(job, finish, extras):
        book_rate = job.rate_book.rates[use.rate_id]
        quantity = _quantity(job, use, book_rate, takeoff, visits)
        if quantity.value > 0:
            yield from _lines_of_rate(job, use, book_rate, quantity, held.get(_id_of(use)))


def _quantity(job: JobSpec, use: Use, book_rate: BookRate, takeoff: Takeoff, visits: int) -> Step:
    unit = shown_rate(rate_at(book_rate, None), job.units).unit
    if book_rate.travel is not None and use.count.amount is None:
        return travelled(job.site, book_rate.travel, unit, visits)
    measured = takeoff.placement(use.placement.id) if use.placement else None
    value = quantity_of(use, book_rate, unit, measured, visits)
    source = None if use.path is None else job.source(*use.path)
    plain = given("quantity", value, unit.value, source)
    if book_rate.cutting is None:
        return plain
    factor = decimal_of(1 + book_rate.cutting)
    return Step(
        name="quantity with cutting",
        formula="quantity x (1 + cutting), not rounded again",
        operation=Operation.TIMES,
        inputs=(plain, given("one and the share for cutting", factor, "", source)),
        value=value * factor,
        unit=unit.value,
    )


def _id_of(use: Use) -> str:
    return f"{use.rate_id}.{use.placement.id}" if use.placement else use.rate_id


def _lines_of_rate(
    job: JobSpec, use: Use, book_rate: BookRate, quantity: Step, held: int | None
) -> Iterator[Line]:
    thickness = use.placement.thickness if use.placement else None
    unit = shown_rate(rate_at(book_rate, None), job.units).unit
    parts = tuple(parts_of(book_rate, quantity.value, unit, thickness, held))
    for part in parts:
        rate = shown_rate(part.rate, job.units)
        yield line(
            use=use,
            name=book_rate.name,
            scope=book_rate.covers,
            basis=basis_of(book_rate, rate.unit),
            rate=rate,
            part=part,
            working=(
                quantity if len(parts) == 1 else _slice(job, use, quantity, part),
                _rate_step(job, use.rate_id, part.rate, ("rates", use.rate_id, *part.path)),
            ),
        )  # fmt: skip


def _slice(job: JobSpec, use: Use, quantity: Step, part: Part) -> Step:
    """Return a slice of a quantity: the last one is what the slices before it leave."""
    border = given(
        "where the slice begins",
        quantity.value - part.quantity,
        quantity.unit,
        job.book_source("rates", use.rate_id, *part.path[:2]),
    )
    if not part.is_last or not border.value:
        return given("slice", part.quantity, quantity.unit, border.source)
    return Step(
        name="last slice",
        formula="quantity less where the slice begins",
        operation=Operation.MINUS,
        inputs=(quantity, border),
        value=part.quantity,
        unit=quantity.unit,
    )


def line(
    *,
    use: Use,
    name: str,
    scope: tuple[str, ...],
    basis: Basis,
    rate: Rate,
    part: Part,
    working: tuple[Step, ...],
) -> Line:
    """Make one line; its amount is rounded half-up to the cent, once."""
    amount = to_cents(part.quantity * rate.amount)
    placement = use.placement
    sliced = f".{part.band + 1}" if part.path[:1] == ("by_slice",) and part.band is not None else ""
    said = f"{name}, slice {sliced[1:]}" if sliced else name
    return Line(
        id=_id_of(use) + sliced,
        rate_id=use.rate_id,
        name=name,
        scope=scope,
        placement=placement.id if placement else None,
        basis=basis,
        quantity=part.quantity,
        unit=rate.unit,
        rate=rate.amount,
        amount=amount,
        follows_area=part.is_last and use.follows_area(rate.unit),
        band=part.band,
        working=Step(
            name=f"{said}, {placement.name}" if placement else said,
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
        quantity = _area(takeoff, placement, job.units)
        use = Use(rate_id=finish_id, placement=placement, count=AS_TAKEN_OFF, path=placement.path)
        yield line(
            use=use,
            name=book_finish.name,
            scope=("finish",),
            basis=Basis.MEASURED,
            rate=rate,
            part=_whole(quantity, book_finish.rate),
            working=(
                given("quantity", quantity, rate.unit.value, job.source(*placement.path)),
                _rate_step(job, finish_id, book_finish.rate, ("finishes", finish_id, "rate")),
            ),
        )


def _whole(quantity: Decimal, rate: Rate) -> Part:
    return Part(quantity=quantity, rate=rate, path=("rate",), band=None, is_last=True)


def _area(takeoff: Takeoff, placement: PlacementSpec, units: Units) -> Decimal:
    measured = takeoff.placement(placement.id)
    return measured.area_sqft if units is Units.US else measured.area_m2


def _minimum(job: JobSpec, lines: tuple[Line, ...]) -> Iterator[Line]:
    """A job under the smallest one that pays for coming is topped up, in a line of its own."""
    minimum = job.rate_book.minimum
    so_far = total(tuple(one.amount for one in lines))
    if minimum is None or so_far >= minimum:
        return
    missing = to_cents(minimum - so_far)
    smallest = given("smallest job in the rate book", minimum, "$", job.book_source("minimum"))
    others = added("all other lines", tuple(one.working for one in lines), so_far)
    name = "Small-job minimum"
    yield Line(
        id="minimum", rate_id="minimum", name=name, scope=("minimum",), placement=None,
        basis=Basis.MEASURED, quantity=ONE, unit=Unit.LUMP, rate=missing, amount=missing,
        follows_area=False, working=taken_away(name, smallest, others, Money(missing)),
    )  # fmt: skip
