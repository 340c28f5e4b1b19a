"""A slab that is its own mirror image gets joints that are, too."""

import math

import pytest
from shapely import Polygon

from quotegen.takeoff.joints.mirror import Axis, axes_of
from tests.takeoff.plans import joints_of, outline

POOL = {
    "rectangle": "32 ft x 14 ft",
    "at": ["6.625 ft", "8 ft"],
    "corner_radius": "7 ft",
    "is": "pool",
}
DECK = outline(
    (0, 0), (45.25, 0),
    {"to": ["42.75 ft", "25.25 ft"], "radius": "16 ft"},
    {"to": ["2.5 ft", "25.25 ft"], "radius": "38 ft"},
    {"to": ["0", "0"], "radius": "16 ft"},
)  # fmt: skip


def test_a_deck_round_a_pool_is_laid_out_even_handed():
    """A deck that is the same left and right of the middle of its pool has such joints."""
    plan = joints_of(DECK, take_away=(POOL,))
    assert plan.exceptions == ()
    drawn = [(joint.start_ft, joint.end_ft) for joint in plan.joints]
    assert len(drawn) > 10
    assert Axis(is_upright=True, at_ft=22.625).mirrors(drawn)
    assert not Axis(is_upright=True, at_ft=22.5).mirrors(drawn)


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
