"""The working of areas measured in the field."""

from decimal import Decimal
from typing import Any

import pytest

from quotegen.problem import Source
from quotegen.quantity import Units
from quotegen.takeoff.job_units import JobUnits
from quotegen.takeoff.steps.shape_steps import shape_step
from quotegen.working import Step
from tests.takeoff.plans import slab

US = JobUnits(units=Units.US)


def _step(typed: dict[str, Any]) -> Step:
    (placed,) = slab(typed).added
    return shape_step(placed, "add", US, Source(file="job.yaml"))


def _values(step: Step) -> list[Decimal]:
    return [given.value for given in step.inputs]


@pytest.mark.parametrize(
    ("more", "area", "apart"), [({}, "70.00", "6.00"), ({"rule": "simpson"}, "76.00", "6.00")]
)
def test_offsets_name_their_places_widths_and_the_other_rule(more: Any, area: str, apart: str):
    """Five readings are five places and five widths; the other rule gives 6 sq ft more or less."""
    far = ["3 ft", "5 ft", "4 ft", "6 ft", "2 ft"]
    step = _step({"offsets": {"every": "4 ft", "far": far, **more}})
    assert str(step.value) == area
    assert [int(value) for value in _values(step)[:-1]] == [0, 3, 4, 5, 8, 4, 12, 6, 16, 2]
    assert str(_values(step)[-1]) == apart
    assert ("Simpson" in step.formula) == bool(more)


def test_an_odd_strip_is_said():
    """The formula tells that the last strip was taken by the trapezoid rule."""
    six = {"every": "4 ft", "far": ["3 ft"] * 6, "rule": "simpson", "odd_strip": "trapezoid"}
    assert _step({"offsets": six}).formula.endswith("the last strip by the trapezoid rule")


def test_a_border_is_worked_out_from_two_areas():
    """Inside the outside edge 40 x 24 ft, the pool 32 x 16 ft: 448 sq ft between them."""
    step = _step({"border": {"pool": {"rectangle": "32 ft x 16 ft"}, "width": "4 ft"}})
    assert _values(step) == [Decimal(960), Decimal(512)]
    assert step.value == 448


def test_each_tied_point_shows_its_two_tapes():
    """Between the pins, then for each point how far along and how far off."""
    points = [
        {"a": a, "b": b} for a, b in (("12 ft", "16 ft"), ("16 ft", "12 ft"), ("10 ft", "10 ft"))
    ]
    step = _step({"ties": {"apart": "20 ft", "side": "top", "points": points}})
    assert [str(value) for value in _values(step)] == [
        "20.0000", "7.20", "9.60", "12.80", "9.60", "10.00", "0.00"
    ]  # fmt: skip
