"""Lines: every rate in use becomes quantity times rate, to the cent, with its working."""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.money import Money, to_cents, total
from quotegen.pricing.rates import (
    AS_TAKEN_OFF,
    Use,
    basis_of,
    quantity_of,
    rate_at,
    rates_in_use,
    shown_rate,
)
from quotegen.pricing.records import Line
from quotegen.pricing.visits_needed import visits_needed
from quotegen.quantity import ONE, Unit, Units
from quotegen.spec.rate_book import Basis
from quotegen.spec.records import JobSpec, PlacementSpec
from quotegen.spec.text_fields import Rate
from quotegen.takeoff.records import Takeoff
from quotegen.working import Step, given


def lines_of(
    job: JobSpec, takeoff: Takeoff, finish: str, extras: tuple[str, ...] = ()
) -> tuple[Line, ...]:
    """Return every line of the job at a finish, the small-job minimum last if it bites."""
    lines = (*_rate_lines(job, takeoff, finish, extras), *_finish_lines(job, takeoff, finish))
    return (*lines, *_minimum(job, lines))


def _rate_lines(
    job: JobSpec, takeoff: Takeoff, finish: str, extras: tuple[str, ...]
) -> Iterator[Line]:
    visits = len(visits_needed(job, finish))
    for use in rates_in_use(job, finish, extras):
        book_rate = job.rate_book.rates[use.rate_id]
        thickness = use.placement.thickness if use.placement else None
        rate = shown_rate(rate_at(book_rate, thickness), job.units)
        measured = takeoff.placement(use.placement.id) if use.placement else None
        quantity = quantity_of(use, book_rate, rate.unit, measured, visits)
        if quantity > 0:
            yield line(
                use=use,
                name=book_rate.name,
                scope=book_rate.covers,
                basis=basis_of(book_rate, rate.unit),
                quantity=quantity,
                rate=rate,
                working=_inputs(job, use, quantity, rate),
            )


def line(
    *,
    use: Use,
    name: str,
    scope: tuple[str, ...],
    basis: Basis,
    quantity: Decimal,
    rate: Rate,
    working: tuple[Step, ...],
) -> Line:
    """Make one line; its amount is rounded half-up to the cent, once."""
    amount = to_cents(quantity * rate.amount)
    placement = use.placement
    return Line(
        id=f"{use.rate_id}.{placement.id}" if placement else use.rate_id,
        rate_id=use.rate_id,
        name=name,
        scope=scope,
        placement=placement.id if placement else None,
        basis=basis,
        quantity=quantity,
        unit=rate.unit,
        rate=rate.amount,
        amount=amount,
        follows_area=use.follows_area(rate.unit),
        working=Step(
            name=f"{name}, {placement.name}" if placement else name,
            formula="quantity x rate, to the cent",
            inputs=working,
            value=amount,
            unit="$",
        ),
    )


def _inputs(job: JobSpec, use: Use, quantity: Decimal, rate: Rate) -> tuple[Step, ...]:
    source = None if use.path is None else job.source(*use.path)
    return (
        given("quantity", quantity, rate.unit.value, source),
        given(f"rate `{use.rate_id}` of the rate book", rate.amount, f"$ / {rate.unit.value}"),
    )


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
            quantity=quantity,
            rate=rate,
            working=_inputs(job, use, quantity, rate),
        )


def _area(takeoff: Takeoff, placement: PlacementSpec, units: Units) -> Decimal:
    measured = takeoff.placement(placement.id)
    return measured.area_sqft if units is Units.US else measured.area_m2


def _minimum(job: JobSpec, lines: tuple[Line, ...]) -> Iterator[Line]:
    """A job under the smallest one that pays for coming is topped up, in a line of its own."""
    minimum = job.rate_book.minimum
    so_far = total(tuple(one.amount for one in lines))
    if minimum is None or so_far >= minimum:
        return
    missing = Rate(Money(minimum - so_far), Unit.LUMP)
    use = Use(rate_id="minimum", placement=None, count=AS_TAKEN_OFF, path=None)
    yield line(
        use=use, name="Small-job minimum", scope=("minimum",), basis=Basis.MEASURED,
        quantity=ONE, rate=missing,
        working=(given("smallest job in the rate book", minimum, "$"),
                 Step(name="all other lines", formula="sum", value=so_far, unit="$")),
    )  # fmt: skip
