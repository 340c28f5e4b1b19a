"""The working of a shape's area can be done again from its inputs."""

import math
from collections.abc import Callable
from decimal import Decimal

import pytest

from quotegen.problem import Source
from quotegen.quantity import Units
from quotegen.takeoff.job_units import JobUnits
from quotegen.takeoff.steps.shape_steps import shape_step
from quotegen.working import Step
from tests.takeoff.plans import Typed, feet, outline, slab

HERE = Source(file="job.yaml", line=7)

# Typed, what the step is called, and its formula done by hand from the inputs.
CASES: dict[str, tuple[Typed, str, Callable[..., float]]] = {
    "rectangle": ({"rectangle": "24 ft 6 in x 16 ft"}, "rectangle", lambda a, b: a * b),
    "rounded": (
        {"rectangle": "24 ft x 16 ft", "corner_radius": "3 ft"}, "rectangle",
        lambda a, b, r: a * b - (4 - math.pi) * r**2,
    ),
    "right triangle": (
        {"right_triangle": "3 ft x 4 ft"}, "right triangle", lambda a, b: a * b / 2,
    ),
    "triangle": (
        {"triangle": {"base": "6 ft", "height": "4 ft"}}, "triangle", lambda a, b: a * b / 2,
    ),
    "trapezoid": (
        {"trapezoid": {"bottom": "9 ft", "top": "3 ft", "height": "4 ft"}}, "trapezoid",
        lambda a, b, h: (a + b) / 2 * h,
    ),
    "circle": ({"circle": {"diameter": "9 ft"}}, "circle", lambda d: math.pi * d**2 / 4),
    "half": (
        {"half_circle": {"radius": "9 ft"}}, "half circle", lambda r: math.pi * r**2 / 2,
    ),
    "quarter": (
        {"quarter_circle": {"radius": "9 ft"}}, "quarter circle", lambda r: math.pi * r**2 / 4,
    ),
    "ellipse": ({"ellipse": "20 ft x 12 ft"}, "ellipse", lambda a, b: math.pi * a * b / 4),
    "ring": (
        {"ring": {"outer_radius": "14 ft", "width": "4 ft", "sweep": "70 deg"}}, "ring",
        lambda angle, outer, inner: math.radians(angle) / 2 * (outer**2 - inner**2),
    ),
    "outline": (
        outline((0, 0), (10, 0), {"to": feet((10, 8)), "rise": "2 ft"},
                {"to": feet((0, 8)), "rise": "1 ft", "bows": "in"}),
        "outline", lambda *parts: sum(parts),
    ),
}  # fmt: skip


def _numbers(step: Step) -> list[float]:
    return [float(given.value) for given in step.inputs]


@pytest.mark.parametrize("name", CASES)
def test_a_reader_can_do_it_again(name: str):
    """The formula in words, done on the inputs as printed, gives the area as printed."""
    typed, kind, formula = CASES[name]
    (figure,) = slab(typed).added
    step = shape_step(figure, "add", JobUnits(units=Units.US), HERE)
    assert step.name == f"Added 1, {kind}"
    assert step.formula
    assert (step.unit, step.source) == ("sq ft", HERE)
    assert float(step.value) == pytest.approx(formula(*_numbers(step)), abs=0.011)


def test_an_arc_shows_radius_and_angle():
    """Half of angle minus sine, times radius squared, from the printed radius and angle."""
    typed = outline((0, 0), (10, 0), {"to": feet((10, 8)), "rise": "2 ft"}, (0, 8))
    step = shape_step(slab(typed).added[0], "add", JobUnits(units=Units.US), HERE)
    arc = step.inputs[1]
    radius, angle = _numbers(arc)
    theta = math.radians(angle)
    assert arc.name == "Arc that bows out"
    assert float(arc.value) == pytest.approx(radius**2 / 2 * (theta - math.sin(theta)), abs=0.01)


def test_a_metric_job_shows_meters():
    """In a metric job the inputs are meters and the area is square meters."""
    (figure,) = slab({"rectangle": "4.8 m x 13.5 m"}).added
    step = shape_step(figure, "add", JobUnits(units=Units.METRIC), HERE)
    assert (step.value, step.unit) == (Decimal("64.80"), "m2")
    assert [(given.value, given.unit) for given in step.inputs] == [
        (Decimal("4.8000"), "m"), (Decimal("13.5000"), "m")]  # fmt: skip


def test_what_is_taken_away_says_what_it_is():
    """The step of a pool says that it is taken away and that it is a pool."""
    pool = {"circle": {"radius": "4 ft"}, "at": feet((12, 8)), "is": "pool"}
    (figure,) = slab({"rectangle": "24 ft x 16 ft"}, take_away=(pool,)).cut_outs
    step = shape_step(figure, "take_away", JobUnits(units=Units.US), HERE)
    assert step.name == "Taken away 1, circle, pool"


def test_a_ring_by_its_arc_shows_the_arc():
    """The measured arc is among the inputs, before the radius that follows from it."""
    (figure,) = slab({"ring": {"outer_arc": "57 ft", "width": "12 ft", "sweep": "180 deg"}}).added
    step = shape_step(figure, "add", JobUnits(units=Units.US), HERE)
    names = [given.name for given in step.inputs]
    assert names == ["Outer arc", "Angle", "Outer radius", "Inner radius"]
