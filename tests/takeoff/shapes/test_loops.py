"""From a typed shape to its loops and its area."""

import math
from typing import Any

import pytest

from quotegen.reading.files.shapes import AreaRule
from quotegen.takeoff.shapes.loops import area_of, crossings_of, loops_of, rule_spread_sqft
from quotegen.takeoff.shapes.offsets import area_by_rule_sqft
from quotegen.takeoff.shapes.path import signed_area_sqft
from tests.takeoff.plans import outline, shape

OFFSETS = {"every": "4 ft", "far": ["3 ft", "5 ft", "4 ft", "6 ft", "2 ft"], "rule": "simpson"}


@pytest.mark.parametrize("corners", [((0, 0), (8, 0), (8, 4)), ((8, 4), (8, 0), (0, 0))])
def test_an_outer_loop_runs_counter_clockwise(corners: Any):
    """Whichever way around the corners were typed."""
    (loop,), faults = loops_of(shape(**outline(*corners)))
    assert faults == ()
    assert signed_area_sqft(loop) == pytest.approx(16)


def test_a_hole_runs_clockwise_and_is_not_counted():
    """A ring of 14 and 10 ft has the area between its circles."""
    ring = shape(ring={"outer_radius": "14 ft", "width": "4 ft", "sweep": "360 deg"})
    loops, _ = loops_of(ring)
    assert [signed_area_sqft(loop) > 0 for loop in loops] == [True, False]
    assert area_of(ring, loops) == pytest.approx(math.pi * (14**2 - 10**2))


def test_offsets_have_the_area_of_their_rule():
    """Simpson's 76 sq ft are priced, whatever the drawn edge encloses; the other rule gives 70."""
    typed = shape(offsets=OFFSETS)
    loops, _ = loops_of(typed)
    assert area_of(typed, loops) == pytest.approx(76)
    assert typed.offsets is not None
    by_trapezoid = area_by_rule_sqft(typed.offsets, AreaRule.TRAPEZOID)
    assert rule_spread_sqft(typed.offsets) == pytest.approx(76 - by_trapezoid) == 6


def test_a_border_is_what_lies_around_its_pool():
    """4 ft around a pool of 9 ft radius: 13 squared less 9 squared, times pi."""
    typed = shape(border={"pool": {"circle": {"radius": "9 ft"}}, "width": "4 ft"})
    loops, _ = loops_of(typed)
    assert len(loops) == 2
    assert area_of(typed, loops) == pytest.approx(math.pi * (13**2 - 9**2))


def test_an_outline_that_crosses_itself_is_told():
    """A bow tie encloses two areas."""
    typed = shape(**outline((0, 0), (4, 4), (4, 0), (0, 4)))
    loops, faults = loops_of(typed)
    assert faults == ()
    (fault,) = crossings_of(typed, loops)
    assert fault.code == "outline-crosses"
    assert fault.path == ("outline",)
