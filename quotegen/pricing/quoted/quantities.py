"""How much of a rate there is: typed, taken off, counted in visits, or travelled to the site."""

from decimal import Decimal
from fractions import Fraction

from quotegen.pricing.quoted.rates import US_PER_METRIC, RateInUse
from quotegen.quantity import KM_PER_MILE, M3_PER_CUYD, METRIC, ONE, Unit, decimal_of, rounded
from quotegen.reading.fields.road_fields import Road
from quotegen.reading.fields.text_fields import Count
from quotegen.reading.files.job import Site
from quotegen.reading.files.rate_book import BookRate, Travel
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.working import Operation, Rounding, Step, given

_PLACES = {
    Unit.SQ_FT: 1, Unit.FT: 1, Unit.CU_YD: 2, Unit.MILE: 1, Unit.HOUR: 2,
    Unit.M2: 2, Unit.M: 2, Unit.M3: 2, Unit.KM: 1,
}  # fmt: skip
_ROUNDED = {1: Rounding.TENTH, 2: Rounding.HUNDREDTH}


def quantity_of(
    job: JobSpec, use: RateInUse, rate: BookRate, takeoff: Takeoff, visits: int
) -> Step:
    """Work out how much of a rate of the book there is, in the unit of its line.

    Args:
        job: what was typed.
        use: the rate and where it is used.
        rate: its entry in the book.
        takeoff: what was measured.
        visits: how many trips the job takes.
    """
    if rate.travel is not None and use.count.amount is None:
        return travelled(job.site, rate.travel, use.unit, visits)
    measured = takeoff.placement(use.placement.id) if use.placement else None
    value = _counted(use, rate.of or EdgeKind.OUTER, measured, visits)
    if use.count.amount is None and use.unit is Unit.LUMP and _is_access(job, use.rate_id):
        value = rounded(Fraction(job.typed.pours), 0)  # a pump comes to each pour
    source = None if use.path is None else job.source(*use.path)
    plain = given("quantity", value, use.unit.value, source)
    if rate.cutting is None:
        return plain
    factor = decimal_of(1 + rate.cutting)
    return Step(
        name="quantity with cutting",
        formula="quantity x (1 + cutting), not rounded again",
        operation=Operation.TIMES,
        inputs=(plain, given("one and the share for cutting", factor, "", source)),
        value=value * factor,
        unit=use.unit.value,
    )


def _is_access(job: JobSpec, rate_id: str) -> bool:
    return rate_id in {method.rate for method in job.rate_book.access.values()}


def _counted(
    use: RateInUse, edge: EdgeKind, takeoff: PlacementTakeoff | None, visits: int
) -> Decimal:
    if use.count.amount is not None:
        return typed_quantity(use.count, use.unit)
    if use.unit is Unit.VISIT:
        return rounded(Fraction(visits), 0)
    if takeoff is None:
        return ONE
    by_unit = {
        Unit.SQ_FT: takeoff.area_sqft,
        Unit.M2: takeoff.area_m2,
        Unit.FT: takeoff.edges_ft[edge],
        Unit.M: takeoff.edges_m[edge],
        Unit.CU_YD: rounded(takeoff.volume_cuyd, 2),
        Unit.M3: rounded(takeoff.volume_cuyd * decimal_of(M3_PER_CUYD), 2),
    }
    return by_unit.get(use.unit, ONE)


def typed_quantity(count: Count, unit: Unit) -> Decimal:
    """Return a typed quantity in the unit of the line, converted where the systems differ."""
    amount = Fraction(count.amount or 0)
    if count.unit is not None and METRIC.get(count.unit) is unit:
        return rounded(amount / US_PER_METRIC[unit], _PLACES[unit])
    if count.unit in US_PER_METRIC and METRIC.get(unit) is count.unit:
        return rounded(amount * US_PER_METRIC[count.unit], _PLACES[unit])
    return count.amount if count.amount is not None else ONE


def travelled(site: Site, travel: Travel, unit: Unit, visits: int) -> Step:
    """Return how far, or how long, the crew travels on all visits, rounded once at the end.

    The distance to the site and the free part of it count one way; both are doubled where the
    book charges both ways. A site within the free part is charged nothing.
    """
    to_site, free = _one_way(site, unit), _road(travel.free, unit)
    paid = max(to_site - free, Fraction(0))
    ways = 2 if travel.both_ways else 1
    beyond = Step(
        name="one way, beyond what is free",
        formula="the way less the free part of it",
        operation=Operation.MINUS,
        inputs=(
            given("one way", decimal_of(to_site), unit.value),
            given("free", decimal_of(min(free, to_site)), unit.value),
        ),
        value=decimal_of(paid),
        unit=unit.value,
    )
    return Step(
        name="on the road",
        formula="beyond what is free x ways x visits",
        operation=Operation.TIMES,
        rounding=_ROUNDED[_PLACES[unit]],
        inputs=(
            beyond,
            given("ways", decimal_of(Fraction(ways)), ""),
            given("visits", decimal_of(Fraction(visits)), Unit.VISIT.value),
        ),
        value=rounded(paid * ways * visits, _PLACES[unit]),
        unit=unit.value,
    )


def _one_way(site: Site, unit: Unit) -> Fraction:
    return _road(site.drive_time if unit is Unit.HOUR else site.distance, unit)


def _road(road: Road | None, unit: Unit) -> Fraction:
    """Return a distance or a drive in a unit, cut to four places so that it prints in full."""
    if road is None:
        return Fraction(0)
    exact = (road.hours if unit is Unit.HOUR else road.miles) or Fraction(0)
    return Fraction(rounded(exact * KM_PER_MILE if unit is Unit.KM else exact, 4))
