"""Faults and how they name a place."""

import pytest

from quotegen.takeoff.shapes.faults import Fault, shape_name, spot, sqft_text, tape_of
from tests.takeoff.plans import job


def test_a_fault_becomes_a_problem_with_its_path():
    """The path is written as in the other messages, and the source is looked up by it."""
    fault = Fault(code="arc-radius", path=("radius",), message="m", hint="h")
    problem = fault.under("placements", 0, "add", 1, "outline", 2).problem(job())
    assert problem.path == "placements[0].add[1].outline[2].radius"
    assert (problem.source.line, problem.code, problem.hint) == (7, "arc-radius", "h")


def test_points_print_as_typed():
    """A point is printed like the job file has it, without float dust."""
    assert spot((24.5, -1e-13)) == '[24\'-6", 0"]'
    assert tape_of(12) == "12'-0\""


def test_shapes_count_from_one():
    """A person counts shapes from one."""
    assert shape_name("add", 1, "half_circle") == "shape 2 of `add` (half circle)"


@pytest.mark.parametrize(
    ("area_sqft", "text"),
    [(0.04, "less than 0.1 sq ft"), (12.34, "12.3 sq ft"), (1234.5, "1,234.5 sq ft")],
)
def test_areas_of_faults(area_sqft: float, text: str):
    """An area that rounds to zero is not printed as 0.0."""
    assert sqft_text(area_sqft) == text
