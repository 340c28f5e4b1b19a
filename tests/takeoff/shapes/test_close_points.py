"""Measured points that are closer together than the tape can tell."""

import pytest

from quotegen.takeoff.shapes.close_points import close_points
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY, Typed, feet, outline, placement


def _smooth(apart_ft: float, **more: str) -> Typed:
    """A patio with a smooth side through two points, so far apart."""
    side = {"to": feet((0, 12)), "smooth_through": [feet((16, 15)), feet((16 - apart_ft, 15))]}
    return {**outline((0, 0), (24, 0), (24, 12), side), **more}


@pytest.mark.parametrize(("apart_ft", "faults"), [(0.005, 1), (0.1, 0)])
def test_points_within_the_accuracy_are_told(apart_ft: float, faults: int):
    """A tape good to an eighth of an inch cannot tell points a sixteenth apart."""
    spec = placement(_smooth(apart_ft, accuracy="1/8 in"))
    found = close_points(spec, load_rules(), DAY)
    assert [fault.code for fault in found] == ["points-too-close"] * faults
    assert all(fault.path[:4] == ("add", 0, "outline", 3) for fault in found)


def test_a_coarser_tape_tells_less():
    """An inch apart, points are fine for a good tape and too close for one good to 2 in."""
    rules, inch = load_rules(), 1 / 12
    assert close_points(placement(_smooth(inch, accuracy="1/2 in")), rules, DAY) == ()
    assert len(close_points(placement(_smooth(inch, accuracy="2 in")), rules, DAY)) == 1


def test_places_along_a_base_line_count_too():
    """Two readings at nearly the same place are one."""
    typed = {"offsets": {"along": ["0", "3 ft", "3 ft 1/16 in"], "far": ["5 ft"] * 3}}
    (fault,) = close_points(placement(typed), load_rules(), DAY)
    assert fault.path == ("add", 0, "offsets", "along", 2)
