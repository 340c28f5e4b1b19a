"""Parts of a slab: their angles, where a line meets them, and how they are cut."""

import math

import pytest

from quotegen.takeoff.joints.part import (
    Part,
    Spot,
    crossings,
    hit,
    interior_angles_rad,
    interior_rad,
    split,
    spot_at,
    tight_box,
)

BOX = ((0.0, 0.0), (12.0, 0.0), (12.0, 8.0), (0.0, 8.0))
ELL = ((0.0, 0.0), (12.0, 0.0), (12.0, 4.0), (4.0, 4.0), (4.0, 8.0), (0.0, 8.0))


def test_area_and_perimeter():
    """An L of 12 x 8 ft without 8 x 4 ft."""
    part = Part(ring=ELL, cut=(False,) * 6)
    assert (part.area_sqft, part.around_ft) == (64, 40)


def test_angles_inside_a_ring():
    """Five square corners, and one inside corner of three quarters of a turn."""
    angles = [math.degrees(angle) for angle in interior_angles_rad(ELL)]
    assert angles == pytest.approx([90, 90, 90, 270, 90, 90])
    assert angles[3] == pytest.approx(math.degrees(interior_rad(ELL[2], ELL[3], ELL[4])))


def test_a_chord_cuts_a_part_in_two():
    """Both halves know their new side as a joint, and the joints they had."""
    part = Part(ring=BOX, cut=(False, True, False, False))
    halves = split(part, (spot_at(BOX, 0, 0.5), spot_at(BOX, 2, 0.5)))
    assert halves is not None
    assert [half.area_sqft for half in halves] == [48, 48]
    assert [sum(half.cut) for half in halves] == [2, 1]


@pytest.mark.parametrize(("side", "share"), [(0, 0.9), (1, 0.0)])
def test_a_chord_along_a_side_cuts_nothing(side: int, share: float):
    """From one place on a side to another on the same side."""
    part = Part(ring=BOX, cut=(False,) * 4)
    assert split(part, (spot_at(BOX, 0, 0.1), spot_at(BOX, side, share))) is None


def test_a_place_next_to_a_corner_is_the_corner():
    """Within a hair of the end of a side it is the start of the next."""
    assert spot_at(BOX, 0, 1 - 1e-9) == Spot(1, 0.0, (12.0, 0.0))


def test_a_ray_stops_where_it_first_leaves():
    """From the left side of the L straight across at 6 ft it meets the short arm's edge at 4 ft."""
    found = hit(ELL, (0.0, 6.0), (1.0, 0.0))
    assert found is not None
    assert found.point == pytest.approx((4, 6))


def test_a_line_may_cross_a_part_twice():
    """Across a U there are two stretches inside."""
    you = (
        (0.0, 0.0),
        (9.0, 0.0),
        (9.0, 6.0),
        (6.0, 6.0),
        (6.0, 3.0),
        (3.0, 3.0),
        (3.0, 6.0),
        (0.0, 6.0),
    )
    found = crossings(you, (0.0, 5.0), (1.0, 0.0))
    assert [(a.point[0], b.point[0]) for a, b in found] == [(0, 3), (6, 9)]


def test_the_tightest_box_is_turned_with_the_part():
    """A square on its tip has sides of its own length, not of its diagonal."""
    box = tight_box(((0.0, 0.0), (3.0, 3.0), (0.0, 6.0), (-3.0, 3.0)))
    assert math.dist(box[0], box[1]) == pytest.approx(3 * math.sqrt(2))
