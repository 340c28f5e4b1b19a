"""A slab turned level for its joints, and its joints turned back."""

import math

import pytest
from shapely import Polygon

from quotegen.takeoff.joints.main_directions import Frame, axes_of
from quotegen.takeoff.shapes.overlay import polygons
from quotegen.takeoff.shapes.path import Loop
from tests.takeoff.plans import Typed, outline, slab

DECK: Typed = {"rectangle": "24 ft x 10 ft"}


def _measured(typed: Typed) -> tuple[Polygon, tuple[Loop, ...]]:
    measured = slab(typed)
    (region,) = polygons(measured.region)
    return region, measured.boundary.outer


@pytest.mark.parametrize("turn", ["0 deg", "17 deg", "90 deg", "-133 deg"])
def test_a_turned_slab_comes_out_level(turn: str):
    """However it lies on the plan, a slab of 24 x 10 ft is wide and not high in its frame."""
    region, loops = _measured({**DECK, "turn": turn})
    level = Frame.of(region, loops).levelled(region, loops)
    left, low, right, high = level.bounds
    assert (right - left, high - low) == pytest.approx((24, 10))


def test_there_and_back():
    """A point of the plan is found again from where it lies in the frame."""
    frame = Frame.of(*_measured({**DECK, "turn": "33 deg"}))
    assert frame.plan(frame.level((3.5, 7.25))) == pytest.approx((3.5, 7.25), abs=1e-6)


@pytest.mark.parametrize(("against_house", "degrees"), [("no", 0), ("yes", 45)])
def test_a_side_at_the_house_counts_double(against_house: str, degrees: int):
    """A slanted side of 12.7 ft outweighs two square ones of 9 ft if it is at the house."""
    slanted = {"to": ("0", "9 ft"), "against_house": against_house}
    frame = Frame.of(*_measured(outline((0, 0), (9, 0), slanted)))
    angle = math.degrees(math.atan2(frame.sin, frame.cos)) % 90
    assert angle == pytest.approx(degrees, abs=1e-6)


@pytest.mark.parametrize(
    ("corners", "upright", "level"),
    [
        ([(0, 0), (8, 0), (8, 4), (0, 4)], 4, 2),
        ([(0, 0), (8, 0), (6, 4), (2, 4)], 4, None),
        ([(0, 0), (8, 0), (8, 4)], None, None),
    ],
    ids=["rectangle", "trapezoid", "triangle"],
)
def test_axes(corners, upright, level):
    """A rectangle has two axes, an even trapezoid one, a right triangle none."""
    found = {axis.is_upright: axis.at_ft for axis in axes_of(Polygon(corners))}
    assert (found.get(True), found.get(False)) == (upright, level)


def test_the_image_of_the_image_is_the_part():
    """Turned over twice, a point is back where it was."""
    axis, *_ = axes_of(Polygon([(0, 0), (8, 0), (6, 4), (2, 4)]))
    point = (1.25, 3.5)
    assert math.dist(axis.image(axis.image(point)), point) == 0
