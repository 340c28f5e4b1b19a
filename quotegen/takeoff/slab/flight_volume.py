"""The concrete of a flight of steps: ordered with the slab, and no part of it."""

from datetime import date
from fractions import Fraction
from itertools import accumulate

from quotegen.problem import Source
from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.site_parts import Flight
from quotegen.trade.concrete import net_volume_cuyd
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

STEPS = "Steps"
"""Name of the step of the working that the order list picks out."""

_PLACES = 4


def flight_step(flight: Flight | None, source: Source, rules: RuleBook, on: date) -> Step | None:
    """Return the concrete of a flight in cubic yards; None where its sizes are not typed.

    A solid block stands on the ground behind each riser, one tread deep; that behind the last
    carries the edge of the slab, as the steps are drawn. By plain geometry.
    """
    if flight is None or flight.width is None or flight.tread is None:
        return None
    heights_in = tuple(accumulate(riser.inches for riser in flight.risers))
    tread_sqft = flight.width.feet * flight.tread.feet
    return Step(
        name=STEPS,
        formula="width x tread x height over the ground, a block behind each riser; that behind the"
        " last carries the edge of the slab",
        inputs=(
            given("Width", rounded(flight.width.feet, _PLACES), "ft", source),
            given("Tread", rounded(flight.tread.inches, _PLACES), "in", source),
            *(
                given(f"Block {number}", rounded(height, _PLACES), "in", source)
                for number, height in enumerate(heights_in, start=1)
            ),
        ),
        value=decimal_of(net_volume_cuyd(tread_sqft, sum(heights_in, Fraction(0)), rules, on)),
        unit="cu yd",
    )
