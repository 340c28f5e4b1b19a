"""The rates of a job: which apply, and at what price."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.money import to_cents
from quotegen.quantity import (
    FEET_PER_METER,
    KM_PER_MILE,
    M3_PER_CUYD,
    METRIC,
    SQFT_PER_M2,
    Length,
    Unit,
    Units,
    decimal_of,
)
from quotegen.reading.fields.text_fields import Count, DayOfYear, Rate
from quotegen.reading.files.price import Price
from quotegen.reading.files.rate_book import Applies, Basis, BookRate, Finish, Season
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.reading.yaml.located import DocumentPath

US_PER_METRIC = {
    Unit.M2: SQFT_PER_M2,
    Unit.M: FEET_PER_METER,
    Unit.M3: 1 / M3_PER_CUYD,
    Unit.KM: 1 / KM_PER_MILE,
}
FOLLOWS_THE_FORMS = frozenset({Unit.SQ_FT, Unit.FT, Unit.CU_YD, Unit.M2, Unit.M, Unit.M3})


def us_size(unit: Unit) -> Decimal:
    """Return one US unit in its metric one, an exact decimal such as 0.3048 m in a foot."""
    return decimal_of(1 / US_PER_METRIC[METRIC[unit]])


def us_quantity(quantity: Decimal, unit: Unit) -> tuple[Fraction, Unit]:
    """Return a quantity of a line in the unit of the rate book, in which costs are typed."""
    if unit not in US_PER_METRIC:
        return Fraction(quantity), unit
    us_unit = next(us for us, metric in METRIC.items() if metric is unit)
    return Fraction(quantity) * US_PER_METRIC[unit], us_unit


AS_TAKEN_OFF = Count(None, None)
"""What the job file says of a quantity that comes from the takeoff or the book: nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RateInUse:
    """One rate that is part of the price.

    Attributes:
        rate_id: the rate or finish.
        unit: what its line counts; metric in a metric job.
        placement: on which it is used, None for the whole job.
        count: how much the job file says of it.
        path: what the quantity rests on in the job file; None where it is the book alone.
    """

    rate_id: str
    unit: Unit
    placement: PlacementSpec | None
    count: Count = AS_TAKEN_OFF
    path: DocumentPath | None

    @property
    def line_id(self) -> str:
        return f"{self.rate_id}.{self.placement.id}" if self.placement else self.rate_id

    @property
    def follows_area(self) -> bool:
        """Whether one more unit of area of the placement is one more unit of this."""
        taken_off = self.placement is not None and self.count.amount is None
        return taken_off and self.unit in {Unit.SQ_FT, Unit.M2}


def shown_rate(rate: Rate, units: Units) -> Rate:
    """Return a rate in the units of the job.

    A metric rate is the book's rate converted and rounded to the cent once: from then on it is
    the promise, and every metric line is quantity times that rate.
    """
    if units is Units.US or rate.unit not in METRIC:
        return rate
    metric = METRIC[rate.unit]
    return Rate(to_cents(rate.amount * decimal_of(US_PER_METRIC[metric])), metric)


def rate_at(price: Price, thickness: Length | None) -> Rate:
    """Return the rate of a price for a slab thickness: that of the thickest step it reaches.

    A slab thinner than every step takes the first step, and so does a line without a thickness.
    Of prices by size this is the first; `bands` has the others.
    """
    if price.rate is not None:
        return price.rate
    if price.bands:
        return price.bands[0].rate
    steps = [s for s in price.by_thickness if thickness and s.thickness <= thickness]
    return (steps[-1] if steps else price.by_thickness[0]).rate


def basis_of(book_rate: BookRate, unit: Unit) -> Basis:
    """Return what moves a line: what the forms measure moves it, anything else is fixed."""
    if book_rate.basis is not None:
        return book_rate.basis
    return Basis.MEASURED if unit in FOLLOWS_THE_FORMS else Basis.FIXED


def rates_in_use(job: JobSpec, finish: str, extras: tuple[str, ...]) -> Iterator[RateInUse]:
    """Yield every rate that is part of the job at a finish, in the order of the rate book."""
    for rate_id, rate in job.rate_book.rates.items():
        if rate.season is not None and not in_season(rate.season, job.typed.start):
            continue
        unit = _line_unit(job, rate)
        if rate.applies is Applies.ASKED:
            yield from _asked(job, rate_id, unit, extras)
        elif rate.applies is Applies.ALWAYS:
            yield from _by_placement(rate_id, unit, tuple(_fitting(job, rate)))
        elif rate.applies is Applies.WITH_FINISH or rate_id in job.color:
            brought = (
                p for p in _fitting(job, rate) if rate_id in _brought(job.finish_of(p, finish)[1])
            )
            yield from _by_placement(rate_id, unit, tuple(brought))


def _line_unit(job: JobSpec, rate: BookRate) -> Unit:
    """Return what a line of a rate counts; a share of other lines is one sum for the whole job."""
    if rate.share is not None:
        return Unit.LUMP
    return shown_rate(rate_at(rate, None), job.units).unit


def in_season(season: Season, start: date) -> bool:
    """Tell whether work that begins on a day falls in the season, first and last day included.

    Prices come before dates, so the day is the one on which the work begins.
    """
    day = DayOfYear(start.month, start.day)
    if season.first <= season.last:
        return season.first <= day <= season.last
    return day >= season.first or day <= season.last  # a season over New Year


def _asked(job: JobSpec, rate_id: str, unit: Unit, extras: tuple[str, ...]) -> Iterator[RateInUse]:
    for placement in job.placements:
        if rate_id in placement.include:
            count, asked = placement.include[rate_id], (*placement.path, "include", rate_id)
            path = placement.path if count.amount is None else asked
            yield RateInUse(rate_id=rate_id, unit=unit, placement=placement, count=count, path=path)
    if rate_id in job.include:
        yield from _whole_job(job, rate_id, unit, job.include[rate_id], ("include", rate_id))
    if rate_id in extras:
        yield from _whole_job(job, rate_id, unit, job.extras[rate_id], ("extras", rate_id))


def _whole_job(
    job: JobSpec, rate_id: str, unit: Unit, count: Count, path: DocumentPath
) -> Iterator[RateInUse]:
    """Asked for the whole job: `yes` to something measured means every placement that has it."""
    if count.amount is None and unit in FOLLOWS_THE_FORMS:
        yield from _by_placement(rate_id, unit, job.placements)
    else:
        yield RateInUse(rate_id=rate_id, unit=unit, placement=None, count=count, path=path)


def _fitting(job: JobSpec, rate: BookRate) -> Iterator[PlacementSpec]:
    for placement in job.placements:
        if rate.uses and placement.use not in rate.uses:
            continue
        if rate.reinforcement in {None, placement.reinforcement}:
            yield placement


def _by_placement(
    rate_id: str, unit: Unit, placements: tuple[PlacementSpec, ...]
) -> Iterator[RateInUse]:
    """What is measured in the forms is used on each placement; anything else once for all."""
    if unit in FOLLOWS_THE_FORMS:
        for placement in placements:
            yield RateInUse(rate_id=rate_id, unit=unit, placement=placement, path=placement.path)
    elif placements:
        path = ("finish",) if unit is Unit.VISIT else None
        yield RateInUse(rate_id=rate_id, unit=unit, placement=None, path=path)


def _brought(finish: Finish) -> tuple[str, ...]:
    return (*finish.brings, *finish.colors)
