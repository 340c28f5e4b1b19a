"""The working of one shape's area: what was given, and the formula in words."""

import math
from collections.abc import Callable, Mapping
from fractions import Fraction

from quotegen.problem import Source
from quotegen.quantity import rounded
from quotegen.reading.fields.text_fields import Size
from quotegen.reading.files.shapes import Round, Shape
from quotegen.takeoff.job_units import JobUnits
from quotegen.takeoff.shapes.curve import Curve
from quotegen.takeoff.shapes.faults import Fault
from quotegen.takeoff.shapes.path import Loop, signed_area_sqft
from quotegen.takeoff.shapes.pieces import outer_radius_ft, piece_loops
from quotegen.takeoff.shapes.placed_shape import PlacedShape
from quotegen.takeoff.shapes.segments import Arc, Line
from quotegen.takeoff.steps.field_steps import FIELD_STEPS, offsets_formula, smooth_step
from quotegen.working import Step, given

SEGMENT_FORMULA = "half of angle minus sine, times radius squared"
_FORMULAS: Mapping[str, str] = {
    "outline": "the straight-sided figure of the corners, more where an arc bows out and less"
    " where it bows in",
    "parallelogram": "base x height",
    "regular_polygon": "half of the number of sides, times corner radius squared, times the sine"
    " of the angle between two corners",
    "segment": SEGMENT_FORMULA,
    "ties": "the figure through the points, each where its two tapes meet",
    "border": "all that the outside edge encloses, less the pool",
    "rectangle": "length x width",
    "right_triangle": "half of leg x leg",
    "triangle": "half of base x height",
    "trapezoid": "half of bottom plus top, times height",
    "circle": "pi x radius squared",
    "half_circle": "half of pi x radius squared",
    "quarter_circle": "a quarter of pi x radius squared",
    "ellipse": "pi x half the length x half the width",
    "ring": "half of the angle, times outer radius squared less inner radius squared",
}
_FULL_TURN_DEG = 360
_THREE_SIDES = "root of s x (s - base) x (s - left) x (s - right), where s is half their sum"
_ROUNDED = "length x width, less (4 - pi) x corner radius squared for the four corners"


def shape_step(placed: PlacedShape, group: str, units: JobUnits, source: Source) -> Step:
    """Return the working of one shape's area, which is always above zero.

    Args:
        placed: the shape in its place.
        group: `add` or `take_away`.
        units: of the job.
        source: where the shape is in the job file.
    """
    shape = placed.shape
    what = "Added" if group == "add" else "Taken away"
    cut_out = f", {shape.is_.value}" if shape.is_ else ""
    kind = shape.kind.replace("_", " ")
    return Step(
        name=f"{what} {placed.index + 1}, {kind}{cut_out}",
        formula=_formula(shape),
        inputs=_inputs(placed, units),
        value=units.shape_area(placed.area_sqft),
        unit=units.area_unit,
        source=source,
    )


def _formula(shape: Shape) -> str:
    if shape.corner_radius:
        return _ROUNDED
    if shape.offsets is not None:
        return offsets_formula(shape.offsets)
    if shape.triangle is not None and shape.triangle.height is None:
        return _THREE_SIDES
    return _FORMULAS[shape.kind]


def _inputs(placed: PlacedShape, units: JobUnits) -> tuple[Step, ...]:
    shape = placed.shape
    if shape.outline is not None:
        return _outline(placed.loops[0], units)
    if shape.kind in FIELD_STEPS:
        return FIELD_STEPS[shape.kind](shape, placed.loops, units)
    return _GIVEN[shape.kind](shape, units)


def _outline(loop: Loop, units: JobUnits) -> tuple[Step, ...]:
    chords = tuple(Line(start=side.start, end=side.end) for side in loop)
    corners = Step(
        name="Straight-sided figure of the corners",
        formula="half the sum, corner after corner, of along x next out less next along x out",
        value=units.shape_area(signed_area_sqft(chords)),
        unit=units.area_unit,
    )
    curves = tuple(side for side in loop if isinstance(side, Curve))
    return (
        corners,
        *(_bulge(side, units) for side in loop if isinstance(side, Arc)),
        *(smooth_step(side, units) for side in curves),
    )


def _bulge(arc: Arc, units: JobUnits) -> Step:
    return Step(
        name="Arc that bows out" if arc.sweep_rad > 0 else "Arc that bows in",
        formula=SEGMENT_FORMULA,
        inputs=(
            units.worked_length("Radius", arc.radius_ft),
            units.angle("Angle", math.degrees(abs(arc.sweep_rad))),
        ),
        value=units.shape_area(arc.bulge_sqft),
        unit=units.area_unit,
    )


def _sized(name: str, first: str, second: str) -> Callable[[Shape, JobUnits], tuple[Step, ...]]:
    def steps(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
        size = getattr(shape, name)
        assert isinstance(size, Size)
        return units.given_length(first, size.length), units.given_length(second, size.width)

    return steps


def _rectangle(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    sides = _sized("rectangle", "Length", "Width")(shape, units)
    if shape.corner_radius is None:
        return sides
    return (*sides, units.given_length("Corner radius", shape.corner_radius))


def _circular(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    typed = getattr(shape, shape.kind)
    assert isinstance(typed, Round)
    if typed.radius:
        return (units.given_length("Radius", typed.radius),)
    assert typed.diameter is not None
    return (units.given_length("Diameter", typed.diameter),)


def _triangle(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    triangle = shape.triangle
    assert triangle is not None
    named = (("Base", triangle.base), ("Height", triangle.height), ("Left side", triangle.left),
             ("Right side", triangle.right))  # fmt: skip
    return tuple(units.given_length(name, length) for name, length in named if length)


def _parallelogram(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    typed = shape.parallelogram
    assert typed is not None
    return units.given_length("Base", typed.base), units.given_length("Height", typed.height)


def _regular_polygon(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    typed, loops = shape.regular_polygon, piece_loops(shape)
    assert typed is not None
    assert not isinstance(loops, Fault)
    corner = loops[0][0].start
    return (
        given("Number of sides", rounded(Fraction(typed.sides), 0), "sides"),
        units.worked_length("Corner radius", math.hypot(*corner)),
        units.angle("Angle between two corners", Fraction(_FULL_TURN_DEG, typed.sides)),
    )


def _segment(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    typed = shape.segment
    assert typed is not None
    loops = piece_loops(shape)
    assert not isinstance(loops, Fault)
    arc = loops[0][1]
    assert isinstance(arc, Arc)
    return (
        units.given_length("Chord", typed.chord),
        units.given_length("Rise", typed.rise),
        units.worked_length("Radius", arc.radius_ft),
        units.angle("Angle", math.degrees(arc.sweep_rad)),
    )


def _trapezoid(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    trapezoid = shape.trapezoid
    assert trapezoid is not None
    return (
        units.given_length("Bottom", trapezoid.bottom),
        units.given_length("Top", trapezoid.top),
        units.given_length("Height", trapezoid.height),
    )


def _ring(shape: Shape, units: JobUnits) -> tuple[Step, ...]:
    ring = shape.ring
    assert ring is not None
    radius_ft = outer_radius_ft(ring)
    arc = (units.given_length("Outer arc", ring.outer_arc),) if ring.outer_arc else ()
    return (
        *arc,
        units.angle("Angle", ring.sweep),
        units.worked_length("Outer radius", radius_ft),
        units.worked_length("Inner radius", radius_ft - ring.width.ft),
    )


_GIVEN: Mapping[str, Callable[[Shape, JobUnits], tuple[Step, ...]]] = {
    "rectangle": _rectangle,
    "right_triangle": _sized("right_triangle", "Leg along", "Leg out"),
    "triangle": _triangle,
    "trapezoid": _trapezoid,
    "parallelogram": _parallelogram,
    "regular_polygon": _regular_polygon,
    "segment": _segment,
    "circle": _circular,
    "half_circle": _circular,
    "quarter_circle": _circular,
    "ellipse": _sized("ellipse", "Length", "Width"),
    "ring": _ring,
}
