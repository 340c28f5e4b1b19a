"""The rates of a job: which apply, at what price, for how much of what."""

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
    ONE,
    SQFT_PER_M2,
    Length,
    Unit,
    Units,
    decimal_of,
    rounded,
)
from quotegen.reading.fields.text_fields import Count, DayOfYear, Rate
from quotegen.reading.files.rate_book import Applies, Basis, BookRate, Finish, Season
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.reading.yaml.located import DocumentPath
from quotegen.takeoff.records import PlacementTakeoff

_US_PER_METRIC = {
    Unit.M2: SQFT_PER_M2,
    Unit.M: FEET_PER_METER,
    Unit.M3: 1 / M3_PER_CUYD,
    Unit.KM: 1 / KM_PER_MILE,
}
_PLACES = {
    Unit.SQ_FT: 1, Unit.FT: 1, Unit.CU_YD: 2, Unit.MILE: 1,
    Unit.M2: 2, Unit.M: 2, Unit.M3: 2, Unit.KM: 1,
}  # fmt: skip
FOLLOWS_THE_FORMS = frozenset({Unit.SQ_FT, Unit.FT, Unit.CU_YD, Unit.M2, Unit.M, Unit.M3})


def us_size(unit: Unit) -> Decimal:
    """Return one US unit in its metric one, an exact decimal such as 0.3048 m in a foot."""
    return decimal_of(1 / _US_PER_METRIC[METRIC[unit]])


def us_quantity(quantity: Decimal, unit: Unit) -> tuple[Fraction, Unit]:
    """Return a quantity of a line in the unit of the rate book, in which costs are typed."""
    if unit not in _US_PER_METRIC:
        return Fraction(quantity), unit
    us_unit = next(us for us, metric in METRIC.items() if metric is unit)
    return Fraction(quantity) * _US_PER_METRIC[unit], us_unit


AS_TAKEN_OFF = Count(None, None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """One rate in use.

    Attributes:
        rate_id: the rate or finish.
        placement: on which it is used, None for the whole job.
        count: how much the job file says of it.
        path: what the quantity rests on in the job file; None where it is the book alone.
    """

    rate_id: str
    placement: PlacementSpec | None
    count: Count
    path: DocumentPath | None

    def follows_area(self, unit: Unit) -> bool:
        """Say whether one more unit of area of the placement is one more unit of this."""
        taken_off = self.placement is not None and self.count.amount is None
        return taken_off and unit in {Unit.SQ_FT, Unit.M2}


def shown_rate(rate: Rate, units: Units) -> Rate:
    """Return a rate in the units of the job.

    A metric rate is the book's rate converted and rounded to the cent once: from then on it is
    the promise, and every metric line is quantity times that rate.
    """
    if units is Units.US or rate.unit not in METRIC:
        return rate
    metric = METRIC[rate.unit]
    return Rate(to_cents(rate.amount * decimal_of(_US_PER_METRIC[metric])), metric)


def rate_at(book_rate: BookRate, thickness: Length | None) -> Rate:
    """Return the price of a rate for a slab thickness: the thickest step not thicker than it.

    A slab thinner than every step takes the first step, and so does a line without a thickness.
    A rate with prices by size gives its first; `bands` has the others.
    """
    if book_rate.rate is not None:
        return book_rate.rate
    if book_rate.bands:
        return book_rate.bands[0].rate
    steps = [s for s in book_rate.by_thickness if thickness and s.thickness <= thickness]
    return (steps[-1] if steps else book_rate.by_thickness[0]).rate


def basis_of(book_rate: BookRate, unit: Unit) -> Basis:
    """Return what moves a line: what is measured in the forms moves, the rest is fixed."""
    if book_rate.basis is not None:
        return book_rate.basis
    return Basis.MEASURED if unit in FOLLOWS_THE_FORMS else Basis.FIXED


def rates_in_use(job: JobSpec, finish: str, extras: tuple[str, ...]) -> Iterator[Use]:
    """Yield every rate that is part of the job at a finish, in the order of the rate book."""
    for rate_id, rate in job.rate_book.rates.items():
        if rate.season is not None and not in_season(rate.season, job.typed.start):
            continue
        if rate.applies is Applies.ASKED:
            yield from _asked(job, rate_id, extras)
        elif rate.applies is Applies.ALWAYS:
            yield from _by_placement(job, rate_id, rate, finish, with_finish=False)
        elif rate.applies is Applies.WITH_FINISH or rate_id in job.color:
            yield from _by_placement(job, rate_id, rate, finish, with_finish=True)


def in_season(season: Season, start: date) -> bool:
    """Say whether work that begins on a day meets the season; both ends count.

    Prices come before dates, so the day is the one on which the work begins.
    """
    day = DayOfYear(start.month, start.day)
    if season.first <= season.last:
        return season.first <= day <= season.last
    return day >= season.first or day <= season.last  # it passes New Year


def _asked(job: JobSpec, rate_id: str, extras: tuple[str, ...]) -> Iterator[Use]:
    for placement in job.placements:
        if rate_id in placement.include:
            count, asked = placement.include[rate_id], (*placement.path, "include", rate_id)
            path = placement.path if count.amount is None else asked
            yield Use(rate_id=rate_id, placement=placement, count=count, path=path)
    if rate_id in job.include:
        yield from _whole_job(job, rate_id, job.include[rate_id], ("include", rate_id))
    if rate_id in extras:
        yield from _whole_job(job, rate_id, job.extras[rate_id], ("extras", rate_id))


def _whole_job(job: JobSpec, rate_id: str, count: Count, asked: DocumentPath) -> Iterator[Use]:
    """Asked for the whole job: `yes` to something measured means every placement that has it."""
    unit = rate_at(job.rate_book.rates[rate_id], None).unit
    if count.amount is None and unit in FOLLOWS_THE_FORMS:
        for placement in job.placements:
            yield Use(rate_id=rate_id, placement=placement, count=count, path=placement.path)
    else:
        yield Use(rate_id=rate_id, placement=None, count=count, path=asked)


def _by_placement(
    job: JobSpec, rate_id: str, rate: BookRate, finish: str, *, with_finish: bool
) -> Iterator[Use]:
    fitting = tuple(
        p
        for p in job.placements
        if (not rate.uses or p.use in rate.uses)
        and (rate.reinforcement is None or p.reinforcement == rate.reinforcement)
        and (not with_finish or rate_id in _brought(job.finish_of(p, finish)[1]))
    )
    unit = rate_at(rate, None).unit
    if unit in FOLLOWS_THE_FORMS:
        for placement in fitting:
            yield Use(rate_id=rate_id, placement=placement, count=AS_TAKEN_OFF, path=placement.path)
    elif fitting:
        path = ("finish",) if unit is Unit.VISIT else None
        yield Use(rate_id=rate_id, placement=None, count=AS_TAKEN_OFF, path=path)


def _brought(finish: Finish) -> tuple[str, ...]:
    return (*finish.brings, *finish.colors)


def quantity_of(
    use: Use, rate: BookRate, unit: Unit, takeoff: PlacementTakeoff | None, visits: int
) -> Decimal:
    """Return how much of a rate there is, in the unit of the line.

    Args:
        use: the rate and what the job says of it.
        rate: its entry in the book.
        unit: of the line; metric in a metric job.
        takeoff: of the placement, None for the whole job.
        visits: how many trips the job takes.
    """
    if use.count.amount is not None:
        return typed_quantity(use.count, unit)
    if unit is Unit.VISIT:
        return rounded(Fraction(visits), 0)
    if takeoff is None:
        return ONE
    edge = rate.of or EdgeKind.OUTER
    by_unit = {
        Unit.SQ_FT: takeoff.area_sqft,
        Unit.M2: takeoff.area_m2,
        Unit.FT: takeoff.edges_ft[edge],
        Unit.M: takeoff.edges_m[edge],
        Unit.CU_YD: rounded(takeoff.volume_cuyd, 2),
        Unit.M3: rounded(takeoff.volume_cuyd * decimal_of(M3_PER_CUYD), 2),
    }
    return by_unit.get(unit, ONE)


def typed_quantity(count: Count, unit: Unit) -> Decimal:
    """Return a typed quantity in the unit of the line, converted where the systems differ."""
    amount = Fraction(count.amount or 0)
    if count.unit is not None and METRIC.get(count.unit) is unit:
        return rounded(amount / _US_PER_METRIC[unit], _PLACES[unit])
    if count.unit in _US_PER_METRIC and METRIC.get(unit) is count.unit:
        return rounded(amount * _US_PER_METRIC[count.unit], _PLACES[unit])
    return count.amount if count.amount is not None else ONE
