"""The working of one shape's area: what was given, and the formula in words."""

import math
from collections.abc import Callable, Mapping

from quotegen.problem import Source
from quotegen.spec.shapes import Round, Shape
from quotegen.spec.text_fields import Size
from quotegen.takeoff.figure import Figure
from quotegen.takeoff.path import Loop, signed_area_sqft
from quotegen.takeoff.pieces import outer_radius_ft
from quotegen.takeoff.segments import Arc, Line
from quotegen.takeoff.shown import Shown
from quotegen.working import Step

SEGMENT_FORMULA = "half of angle minus sine, times radius squared"
_FORMULAS: Mapping[str, str] = {
    "outline": "the straight-sided figure of the corners, more where an arc bows out and less"
    " where it bows in",
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
_ROUNDED = "length x width, less (4 - pi) x corner radius squared for the four corners"


def shape_step(figure: Figure, group: str, shown: Shown, source: Source) -> Step:
    """Return the working of one shape's area, always above nought.

    Args:
        figure: the shape in its place.
        group: `add` or `take_away`.
        shown: the units of the job.
        source: where the shape stands in the job file.
    """
    shape = figure.shape
    what = "Added" if group == "add" else "Taken away"
    cut_out = f", {shape.is_.value}" if shape.is_ else ""
    kind = shape.kind.replace("_", " ")
    return Step(
        name=f"{what} {figure.index + 1}, {kind}{cut_out}",
        formula=_ROUNDED if shape.corner_radius else _FORMULAS[shape.kind],
        inputs=_inputs(figure, shown),
        value=shown.part_area(figure.area_sqft),
        unit=shown.area_unit,
        source=source,
    )


def _inputs(figure: Figure, shown: Shown) -> tuple[Step, ...]:
    if figure.shape.outline is not None:
        return _outline(figure.loops[0], shown)
    return _GIVEN[figure.shape.kind](figure.shape, shown)


def _outline(loop: Loop, shown: Shown) -> tuple[Step, ...]:
    chords = tuple(Line(start=side.start, end=side.end) for side in loop)
    corners = Step(
        name="Straight-sided figure of the corners",
        formula="half the sum, corner after corner, of along x next out less next along x out",
        value=shown.part_area(signed_area_sqft(chords)),
        unit=shown.area_unit,
    )
    return (corners, *(_bulge(side, shown) for side in loop if isinstance(side, Arc)))


def _bulge(arc: Arc, shown: Shown) -> Step:
    return Step(
        name="Arc that bows out" if arc.sweep_rad > 0 else "Arc that bows in",
        formula=SEGMENT_FORMULA,
        inputs=(
            shown.worked("Radius", arc.radius_ft),
            shown.angle("Angle", math.degrees(abs(arc.sweep_rad))),
        ),
        value=shown.part_area(arc.bulge_sqft),
        unit=shown.area_unit,
    )


def _sized(name: str, first: str, second: str) -> Callable[[Shape, Shown], tuple[Step, ...]]:
    def steps(shape: Shape, shown: Shown) -> tuple[Step, ...]:
        size = getattr(shape, name)
        assert isinstance(size, Size)
        return shown.typed(first, size.length), shown.typed(second, size.width)

    return steps


def _rectangle(shape: Shape, shown: Shown) -> tuple[Step, ...]:
    sides = _sized("rectangle", "Length", "Width")(shape, shown)
    if shape.corner_radius is None:
        return sides
    return (*sides, shown.typed("Corner radius", shape.corner_radius))


def _circular(shape: Shape, shown: Shown) -> tuple[Step, ...]:
    typed = getattr(shape, shape.kind)
    assert isinstance(typed, Round)
    if typed.radius:
        return (shown.typed("Radius", typed.radius),)
    assert typed.diameter is not None
    return (shown.typed("Diameter", typed.diameter),)


def _triangle(shape: Shape, shown: Shown) -> tuple[Step, ...]:
    triangle = shape.triangle
    assert triangle is not None
    return shown.typed("Base", triangle.base), shown.typed("Height", triangle.height)


def _trapezoid(shape: Shape, shown: Shown) -> tuple[Step, ...]:
    trapezoid = shape.trapezoid
    assert trapezoid is not None
    return (
        shown.typed("Bottom", trapezoid.bottom),
        shown.typed("Top", trapezoid.top),
        shown.typed("Height", trapezoid.height),
    )


def _ring(shape: Shape, shown: Shown) -> tuple[Step, ...]:
    ring = shape.ring
    assert ring is not None
    radius_ft = outer_radius_ft(ring)
    arc = (shown.typed("Outer arc", ring.outer_arc),) if ring.outer_arc else ()
    return (
        *arc,
        shown.angle("Angle", ring.sweep),
        shown.worked("Outer radius", radius_ft),
        shown.worked("Inner radius", radius_ft - ring.width.ft),
    )


_GIVEN: Mapping[str, Callable[[Shape, Shown], tuple[Step, ...]]] = {
    "rectangle": _rectangle,
    "right_triangle": _sized("right_triangle", "Leg along", "Leg out"),
    "triangle": _triangle,
    "trapezoid": _trapezoid,
    "circle": _circular,
    "half_circle": _circular,
    "quarter_circle": _circular,
    "ellipse": _sized("ellipse", "Length", "Width"),
    "ring": _ring,
}
