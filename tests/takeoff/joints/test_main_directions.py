"""A slab turned level for its joints, and its joints turned back."""

import math

import pytest

from quotegen.takeoff.joints.main_directions import Frame
from tests.takeoff.plans import Typed, outline, slab

DECK: Typed = {"rectangle": "24 ft x 10 ft"}


@pytest.mark.parametrize("turn", ["0 deg", "17 deg", "90 deg", "-133 deg"])
def test_a_turned_slab_comes_out_level(turn: str):
    """However it lies on the plan, a slab of 24 x 10 ft is wide and not high in its frame."""
    measured = slab({**DECK, "turn": turn})
    loops = measured.boundary.outer
    level = Frame.of(measured.region, loops).levelled(measured.region, loops)
    left, low, right, high = level.bounds
    assert (right - left, high - low) == pytest.approx((24, 10))


def test_there_and_back():
    """A point of the plan is found again from where it lies in the frame."""
    measured = slab({**DECK, "turn": "33 deg"})
    frame = Frame.of(measured.region, measured.boundary.outer)
    assert frame.plan(frame.level((3.5, 7.25))) == pytest.approx((3.5, 7.25), abs=1e-6)


@pytest.mark.parametrize(("against_house", "degrees"), [("no", 0), ("yes", 45)])
def test_a_side_at_the_house_counts_double(against_house: str, degrees: int):
    """A slanted side of 12.7 ft outweighs two square ones of 9 ft if it is at the house."""
    slanted = {"to": ("0", "9 ft"), "against_house": against_house}
    measured = slab(outline((0, 0), (9, 0), slanted))
    frame = Frame.of(measured.region, measured.boundary.outer)
    angle = math.degrees(math.atan2(frame.sin, frame.cos)) % 90
    assert angle == pytest.approx(degrees, abs=1e-6)
