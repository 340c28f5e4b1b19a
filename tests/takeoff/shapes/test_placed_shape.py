"""Figures: shapes in their place, and what their sides meet."""

import pytest

from quotegen.reading.files.shapes import EdgeKind
from tests.takeoff.plans import Typed, edges, faults, outline, slab

TRIANGLE: Typed = {"triangle": {"base": "6 ft", "height": "4 ft"}}


@pytest.mark.parametrize(
    ("side", "length_ft"), [("bottom", 24), ("top", 24), ("left", 16), ("right", 16)]
)
@pytest.mark.parametrize("turn", ["0 deg", "90 deg", "33 deg"])
def test_a_side_of_a_piece_may_be_against_the_house(side: str, length_ft: float, turn: str):
    """The named side is the one before the piece is turned."""
    measured = slab({"rectangle": "24 ft x 16 ft", "against_house": side, "turn": turn})
    assert edges(measured)[EdgeKind.HOUSE] == pytest.approx(length_ft)
    assert edges(measured)[EdgeKind.FORMED] == pytest.approx(80 - length_ft)


def test_rounded_corners_do_not_reach_the_shared():
    """Of a side with rounded corners only the straight part is against the house."""
    typed = {"rectangle": "24 ft x 16 ft", "corner_radius": "2 ft", "against_house": "bottom"}
    assert edges(slab(typed))[EdgeKind.HOUSE] == pytest.approx(20)


def test_the_flat_side_of_a_half_circle_may_be_against_the_shared():
    """The flat side of a half circle is its bottom."""
    measured = slab({"half_circle": {"radius": "5 ft"}, "against_house": "bottom"})
    assert edges(measured)[EdgeKind.HOUSE] == pytest.approx(10)


def test_a_whole_outline_may_name_its_house_side():
    """`against_house` on an outline marks what lies on that side of it."""
    typed = {**outline((0, 0), (10, 0), (10, 8), (0, 8)), "against_house": "left"}
    assert edges(slab(typed))[EdgeKind.HOUSE] == pytest.approx(8)


@pytest.mark.parametrize(
    ("typed", "side"),
    [({"circle": {"radius": "5 ft"}}, "top"), (TRIANGLE, "top"), (TRIANGLE, "left")],
)
def test_a_side_that_is_not_straight_cannot_be_against_the_house(typed: Typed, side: str):
    """Where no straight side lies on the named side, it says so."""
    (fault,) = faults({**typed, "against_house": side})
    assert (fault.code, fault.path) == ("house-side", ("add", 0, "against_house"))
    assert f"the {side} of this shape" in fault.message


def test_a_corner_of_the_house_may_be_taken_away():
    """A notch for the house counts as house edge where it says so, else as an opening."""
    notch = {"rectangle": "4 ft x 3 ft", "against_house": "top"}
    measured = slab({"rectangle": "24 ft x 16 ft"}, take_away=(notch,))
    assert edges(measured)[EdgeKind.HOUSE] == pytest.approx(4)
    assert edges(measured)[EdgeKind.FORMED] == pytest.approx(80 - 4)
    assert edges(measured)[EdgeKind.POOL] == 0


def test_an_added_shape_cannot_be_a_pool():
    """`is: pool` under `add` is a fault, since the pool would be poured full."""
    (fault,) = faults({"rectangle": "24 ft x 16 ft", "is": "pool"})
    assert (fault.code, fault.path) == ("cut-out-added", ("add", 0, "is"))


def test_a_slab_of_two_miles_is_a_slip():
    """Numbers that no slab has are taken for a slip of the unit."""
    (fault,) = faults({"rectangle": "24000 ft x 16 ft"})
    assert (fault.code, fault.path) == ("shape-too-far", ("add", 0))
    assert "24000'-0\"" in fault.message


def test_a_shape_of_a_hair_is_a_slip():
    """A shape that is nowhere as wide as a tape is read to is taken for a slip of the unit."""
    (fault,) = faults({"rectangle": "24 ft x 1/16 in"})
    assert (fault.code, fault.path) == ("shape-too-thin", ("add", 0))
    assert '1/8"' in fault.message
