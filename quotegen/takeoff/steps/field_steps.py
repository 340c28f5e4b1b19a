"""The working of areas measured in the field: the readings, what they give, and the rule used."""

from collections.abc import Callable, Iterator, Mapping

from quotegen.reading.files.shapes import AreaRule, Offsets, Shape
from quotegen.takeoff.job_units import JobUnits
from quotegen.takeoff.shapes.curve import Curve
from quotegen.takeoff.shapes.faults import Fault
from quotegen.takeoff.shapes.loops import rule_spread_sqft
from quotegen.takeoff.shapes.offsets import stations_ft, widths_ft
from quotegen.takeoff.shapes.path import Loop, signed_area_sqft
from quotegen.takeoff.shapes.segments import Line
from quotegen.takeoff.shapes.two_pins import tied_point
from quotegen.working import Step

_TRAPEZOID = "trapezoid rule: for each strip half of its two widths, times its length; then the sum"
_SIMPSON = (
    "Simpson's rule: a third of the spacing, times first width and last width, four times each"
    " even one and twice each odd one between"
)
_LAST_STRIP = "; the last strip by the trapezoid rule"


def offsets_formula(offsets: Offsets) -> str:
    """Return the rule in words."""
    if offsets.rule is AreaRule.TRAPEZOID:
        return _TRAPEZOID
    odd = len(offsets.far) % 2 == 0
    return _SIMPSON + (_LAST_STRIP if odd else "")


def smooth_step(curve: Curve, units: JobUnits) -> Step:
    """Return what a smooth curve adds to the figure with its chord; it may add up to zero."""
    chord = Line(start=curve.end, end=curve.start)
    return Step(
        name="Smooth curve",
        formula="between the curve through its points (a cubic spline) and the straight line from"
        " its start to its end, less where it bows in",
        value=units.shape_area(signed_area_sqft((curve, chord))),
        unit=units.area_unit,
    )


def _offsets(shape: Shape, _loops: tuple[Loop, ...], units: JobUnits) -> tuple[Step, ...]:
    offsets = shape.offsets
    assert offsets is not None
    places = zip(stations_ft(offsets), widths_ft(offsets), strict=True)
    steps = [
        step
        for number, (along_ft, width_ft) in enumerate(places, start=1)
        for step in (units.worked_length(f"Place {number}", along_ft),
                     units.worked_length(f"Width {number}", width_ft))
    ]  # fmt: skip
    return (*steps, Step(
        name="The other rule on the same readings differs by",
        value=units.shape_area(rule_spread_sqft(offsets)), unit=units.area_unit,
    ))  # fmt: skip


def _ties(shape: Shape, _loops: tuple[Loop, ...], units: JobUnits) -> tuple[Step, ...]:
    ties = shape.ties
    assert ties is not None
    return (units.given_length("Between the pins", ties.apart), *_tied(shape, units))


def _tied(shape: Shape, units: JobUnits) -> Iterator[Step]:
    ties = shape.ties
    assert ties is not None
    for index, tied in enumerate(ties.points):
        point, number = tied_point(ties, index), index + 1
        assert not isinstance(point, Fault)
        tapes = (
            units.given_length("First tape", tied.a),
            units.given_length("Second tape", tied.b),
        )
        along = "first tape squared less second squared plus apart squared, over twice apart"
        off = "root of first tape squared less along squared"
        for name, formula, feet in (("along", along, point[0]), ("off", off, point[1])):
            yield Step(
                name=f"Point {number}, {name}", formula=formula, inputs=tapes,
                value=units.worked_length("", feet).value, unit=units.length_unit,
            )  # fmt: skip


def _border(_shape: Shape, loops: tuple[Loop, ...], units: JobUnits) -> tuple[Step, ...]:
    outside, pool = (abs(signed_area_sqft(loop)) for loop in loops)
    return tuple(
        Step(name=name, value=units.shape_area(area), unit=units.area_unit)
        for name, area in (("Inside the outside edge", outside), ("Pool", pool))
    )


FIELD_STEPS: Mapping[str, Callable[[Shape, tuple[Loop, ...], JobUnits], tuple[Step, ...]]] = {
    "offsets": _offsets,
    "ties": _ties,
    "border": _border,
}
