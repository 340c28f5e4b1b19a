"""The way to the site: miles, or hours on the road, beyond what is free, on every visit."""

from fractions import Fraction

from quotegen.quantity import KM_PER_MILE, METRIC, Unit, decimal_of, rounded
from quotegen.reading.fields.text_fields import Road
from quotegen.reading.files.job import Site
from quotegen.reading.files.rate_book import Travel
from quotegen.working import Operation, Rounding, Step, given

_PLACES = {Unit.MILE: 1, METRIC[Unit.MILE]: 1, Unit.HOUR: 2}
_ROUNDED = {1: Rounding.TENTH, 2: Rounding.HUNDREDTH}


def travelled(site: Site, travel: Travel, unit: Unit, visits: int) -> Step:
    """Return how far, or how long, the crew travels in all, rounded once at the end.

    Both the way and the free part of it count one way; both are taken twice where the book says
    so. A site within the free part has nothing to pay for.
    """
    places = _PLACES[unit]
    way, free = _one_way(site, unit), _amount(travel.free, unit)
    paid = max(way - free, Fraction(0))
    ways = 2 if travel.both_ways else 1
    beyond = Step(
        name="one way, beyond what is free",
        formula="the way less the free part of it",
        operation=Operation.MINUS,
        inputs=(
            given("one way", decimal_of(way), unit.value),
            given("free", decimal_of(min(free, way)), unit.value),
        ),
        value=decimal_of(paid),
        unit=unit.value,
    )
    return Step(
        name="on the road",
        formula="beyond what is free x ways x visits",
        operation=Operation.TIMES,
        rounding=_ROUNDED[places],
        inputs=(
            beyond,
            given("ways", decimal_of(Fraction(ways)), ""),
            given("visits", decimal_of(Fraction(visits)), Unit.VISIT.value),
        ),
        value=rounded(paid * ways * visits, places),
        unit=unit.value,
    )


def _one_way(site: Site, unit: Unit) -> Fraction:
    return _amount(site.drive_time if unit is Unit.HOUR else site.distance, unit)


def _amount(road: Road | None, unit: Unit) -> Fraction:
    """Return a part of the way in a unit, cut to four places so that it can be printed whole."""
    if road is None:
        return Fraction(0)
    exact = (road.hours if unit is Unit.HOUR else road.miles) or Fraction(0)
    return Fraction(rounded(exact * KM_PER_MILE if unit is Unit.KM else exact, 4))
