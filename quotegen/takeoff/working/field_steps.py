"""The working of areas measured in the field: the readings, where they lead, and the rule used."""

from collections.abc import Callable, Iterator, Mapping

from quotegen.reading.files.shapes import AreaRule, Offsets, Shape
from quotegen.takeoff.job_units import Shown
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
    """Return the rule that was used, in words."""
    if offsets.rule is AreaRule.TRAPEZOID:
        return _TRAPEZOID
    odd = len(offsets.far) % 2 == 0
    return _SIMPSON + (_LAST_STRIP if odd else "")


def smooth_step(curve: Curve, shown: Shown) -> Step:
    """Return what a smooth curve adds to the figure of its chord; zero in all is possible."""
    chord = Line(start=curve.end, end=curve.start)
    return Step(
        name="Smooth curve",
        formula="between the curve through its points (a cubic spline) and the straight line from"
        " its start to its end, less where it bows in",
        value=shown.part_area(signed_area_sqft((curve, chord))),
        unit=shown.area_unit,
    )


def _offsets(shape: Shape, _loops: tuple[Loop, ...], shown: Shown) -> tuple[Step, ...]:
    offsets = shape.offsets
    assert offsets is not None
    places = zip(stations_ft(offsets), widths_ft(offsets), strict=True)
    steps = [
        step
        for number, (along_ft, width_ft) in enumerate(places, start=1)
        for step in (shown.worked(f"Place {number}", along_ft),
                     shown.worked(f"Width {number}", width_ft))
    ]  # fmt: skip
    return (*steps, Step(
        name="The other rule on the same readings differs by",
        value=shown.part_area(rule_spread_sqft(offsets)), unit=shown.area_unit,
    ))  # fmt: skip


def _ties(shape: Shape, _loops: tuple[Loop, ...], shown: Shown) -> tuple[Step, ...]:
    ties = shape.ties
    assert ties is not None
    return (shown.typed("Between the pins", ties.apart), *_tied(shape, shown))


def _tied(shape: Shape, shown: Shown) -> Iterator[Step]:
    ties = shape.ties
    assert ties is not None
    for index, tied in enumerate(ties.points):
        point, number = tied_point(ties, index), index + 1
        assert not isinstance(point, Fault)
        tapes = (shown.typed("First tape", tied.a), shown.typed("Second tape", tied.b))
        along = "first tape squared less second squared plus apart squared, over twice apart"
        off = "root of first tape squared less along squared"
        for name, formula, feet in (("along", along, point[0]), ("off", off, point[1])):
            yield Step(
                name=f"Point {number}, {name}", formula=formula, inputs=tapes,
                value=shown.worked("", feet).value, unit=shown.length_unit,
            )  # fmt: skip


def _border(_shape: Shape, loops: tuple[Loop, ...], shown: Shown) -> tuple[Step, ...]:
    outside, pool = (abs(signed_area_sqft(loop)) for loop in loops)
    return tuple(
        Step(name=name, value=shown.part_area(area), unit=shown.area_unit)
        for name, area in (("Inside the outside edge", outside), ("Pool", pool))
    )


FIELD_STEPS: Mapping[str, Callable[[Shape, tuple[Loop, ...], Shown], tuple[Step, ...]]] = {
    "offsets": _offsets,
    "ties": _ties,
    "border": _border,
}
