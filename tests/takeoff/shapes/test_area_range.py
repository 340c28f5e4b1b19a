"""How sure an area is: its deviation, and the range that it lies in."""

import math
from pathlib import Path
from typing import Any

import pytest

from quotegen.takeoff.shapes.area_range import area_sd_sqft, typed_area_sqft
from quotegen.trade.rules import load_rules
from tests.pricing import shop
from tests.takeoff.plans import DAY, outline, shape, slab

RULES = load_rules()

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)


@EVERY_EXAMPLE
def test_an_area_lies_in_its_range(job_file: Path):
    """The printed area is between the printed ends, and they are not the same."""
    for placement in shop.example_results(job_file).takeoff.placements:
        found = placement.area_range
        assert found.low_sqft < placement.area_sqft < found.high_sqft
        assert found.low_m2 < placement.area_m2 < found.high_m2


@pytest.mark.parametrize(("typed", "closed_form"), [
    ({"rectangle": "24 ft x 16 ft"}, math.hypot(24, 16)),
    ({"circle": {"radius": "9 ft"}}, 2 * math.pi * 9),
    ({"ellipse": "20 ft x 12 ft"}, math.pi / 4 * math.hypot(20, 12)),
    ({"offsets": {"every": "4 ft", "far": ["3 ft", "5 ft", "4 ft"], "rule": "simpson"}},
     math.hypot(27 / 3 / 2, 4 / 3, 16 / 3, 4 / 3)),
    ({"border": {"pool": {"rectangle": "20 ft x 10 ft"}, "width": "3 ft"}},
     math.hypot(6, 6, 2 * 30 + 8 * 3)),
])  # fmt: skip
def test_the_deviation_is_that_of_the_partial_derivatives(typed: Any, closed_form: float):
    """One standard deviation is the root of the sum of squares of derivative times accuracy."""
    found = area_sd_sqft((shape(**typed, accuracy="1/8 in"),), RULES, DAY)
    assert found == pytest.approx(closed_form / 96, rel=1e-4)


def test_a_corner_typed_again_is_read_once():
    """An outline that is closed by typing its first corner again is as sure as one that is not."""
    corners = ((1.0, 1.0), (25.0, 1.0), (25.0, 17.0))
    open_end, closed = (
        area_sd_sqft((shape(**outline(*each)),), RULES, DAY)
        for each in (corners, (*corners, corners[0]))
    )
    assert closed == pytest.approx(open_end)


@pytest.mark.parametrize("typed", [
    {"rectangle": "24 ft x 16 ft", "corner_radius": "4 ft"},
    {"offsets": {"every": "4 ft", "far": ["3 ft", "5 ft", "4 ft"], "rule": "simpson"}},
    {"border": {"pool": {"ellipse": "20 ft x 12 ft"}, "width": "4 ft"}},
])  # fmt: skip
def test_the_area_that_is_differentiated_is_the_one_that_is_priced(typed: Any):
    """What a changed reading is compared with is the area of the slab, to 0.001 sq ft."""
    assert typed_area_sqft(shape(**typed)) == pytest.approx(slab(typed).area_sqft, abs=1e-3)


def test_readings_that_contradict_each_other_have_no_area():
    """Three sides that do not close are no triangle."""
    sides = {"base": "14 ft", "left": "5 ft", "right": "6 ft"}
    assert typed_area_sqft(shape(triangle=sides)) is None
