"""A slab cut along lines, and the joints found again from its parts."""

import math

import pytest
from shapely import Polygon

from quotegen.takeoff.joints.cutting import Segment, cut_along, joints_of, parts_of

SLAB = Polygon([(0, 0), (20, 0), (20, 10), (0, 10)])
ACROSS: Segment = ((10.0, 0.0), (10.0, 10.0))
ALONG: Segment = ((0.0, 5.0), (20.0, 5.0))


def test_two_lines_make_four_panels():
    """Each of 10 x 5 ft, with two sides that are joints."""
    parts = parts_of(cut_along(SLAB, (ACROSS, ALONG)), SLAB)
    assert [part.area_sqft for part in parts] == pytest.approx([50] * 4)
    assert [sum(part.cut) for part in parts] == [2] * 4


def test_the_joints_are_found_again():
    """The sides that parts share are the lines they were cut along, each in one piece."""
    parts = parts_of(cut_along(SLAB, (ACROSS, ALONG)), SLAB)
    assert [round(math.dist(*joint), 6) for joint in joints_of(parts)] == [20, 10]


@pytest.mark.parametrize("end", [9.0, 9.98])
def test_a_line_that_stops_short_cuts_nothing(end: float):
    """A loose end divides no slab; one within a hair of the edge does."""
    pieces = cut_along(SLAB, (((10.0, 0.0), (10.0, end)),))
    assert len(pieces) == (2 if end > 9.9 else 1)


def test_a_part_never_encloses_an_opening():
    """A slab around a pool is cut through the middle of it, the shorter way."""
    deck = Polygon([(0, 0), (20, 0), (20, 10), (0, 10)], [[(6, 3), (14, 3), (14, 7), (6, 7)]])
    parts = parts_of((deck,), deck)
    assert len(parts) == 2
    assert sorted(joints_of(parts)) == [
        ((10.0, 0.0), (10.0, 3.0)), ((10.0, 7.0), (10.0, 10.0))
    ]  # fmt: skip
