"""Shapes that do not lie as they must."""

import pytest

from quotegen.takeoff.slab.checks import sqft_text
from tests.takeoff.plans import Typed, faults, feet, slab

DECK: Typed = {"rectangle": "24 ft x 16 ft"}


def _box(size: str, at: tuple[float, float], **more: str) -> Typed:
    return {"rectangle": size, "at": feet(at), **more}


def test_pieces_that_overlap_are_named_with_the_area():
    """The overlap counts twice, so it says of which shapes and how much."""
    (fault,) = faults(DECK, _box("10 ft x 5 ft", (20, 3)))
    assert (fault.code, fault.path) == ("pieces-overlap", ("add", 1))
    assert "shape 1 of `add` (rectangle) and shape 2 of `add` (rectangle)" in fault.message
    assert "20.0 sq ft near [22'-0\", 5'-6\"]" in fault.message


def test_the_same_piece_twice_overlaps_all_over():
    """A piece typed twice is told."""
    assert [fault.code for fault in faults(DECK, DECK)] == ["pieces-overlap"]


def test_a_pool_larger_than_its_deck_sticks_out():
    """It says how much area sticks out and how far."""
    (fault,) = faults(DECK, take_away=(_box("26 ft x 8 ft", (0, 4), **{"is": "pool"}),))
    assert (fault.code, fault.path) == ("cut-out-outside", ("take_away", 0))
    assert "shape 1 of `take_away` (rectangle)" in fault.message
    assert "16.0 sq ft" in fault.message
    assert "up to 2'-0\" past its edge" in fault.message


def test_a_cut_out_beside_the_slab_sticks_out_whole():
    """A pool that was placed elsewhere is told with its whole area."""
    (fault,) = faults(DECK, take_away=(_box("6 ft x 8 ft", (40, 0)),))
    assert "48.0 sq ft" in fault.message


def test_a_cut_out_over_two_pieces_is_inside():
    """A pool may lie over the side that two pieces share."""
    pool = _box("6 ft x 8 ft", (21, 4))
    assert slab(DECK, _box("24 ft x 16 ft", (24, 0)), take_away=(pool,)).area_sqft == 768 - 48


def test_cut_outs_that_overlap():
    """Two cut-outs over each other would take the area twice."""
    (fault,) = faults(DECK, take_away=(_box("6 ft x 8 ft", (2, 2)), _box("6 ft x 8 ft", (7, 2))))
    assert (fault.code, fault.path) == ("cut-outs-overlap", ("take_away", 1))
    assert "8.0 sq ft" in fault.message


def test_nothing_left():
    """A slab that is all taken away is told."""
    (fault,) = faults(DECK, take_away=(DECK,))
    assert (fault.code, fault.path) == ("nothing-left", ("add",))


def test_a_slab_too_small_to_print():
    """A slab of 0.0 sq ft is a slip of the unit."""
    (fault,) = faults({"rectangle": "2 in x 2 in"})
    assert fault.code == "nothing-left"


def test_faults_of_the_plan_come_with_faults_of_the_shapes():
    """An overlap is told beside a bad radius of a third shape; a false one is not."""
    bad = {"rectangle": "9 ft x 9 ft", "corner_radius": "5 ft", "at": feet((50, 0))}
    pool = _box("6 ft x 8 ft", (51, 1))
    found = faults(DECK, _box("9 ft x 9 ft", (20, 0)), bad, take_away=(pool,))
    assert {fault.code for fault in found} == {"corner-radius", "pieces-overlap"}


@pytest.mark.parametrize(
    ("area_sqft", "said"),
    [(0.04, "less than 0.1 sq ft"), (12.34, "12.3 sq ft"), (1234.5, "1,234.5 sq ft")],
)
def test_areas_of_faults(area_sqft: float, said: str):
    """An area that rounds to zero is not printed as 0.0."""
    assert sqft_text(area_sqft) == said
