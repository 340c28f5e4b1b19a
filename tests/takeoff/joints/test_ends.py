"""Where joints end: what a finisher would not saw."""

from fractions import Fraction

from shapely import Polygon

from quotegen.quantity import Length
from quotegen.takeoff.joints.cutting import Segment
from quotegen.takeoff.joints.ends import ends_of
from quotegen.takeoff.joints.judge import limits_of
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
SLAB = Polygon([(0, 0), (20, 0), (20, 16), (0, 16)])
LEVEL: Segment = ((0, 8), (20, 8))


def test_a_joint_that_ends_in_another_dies_there():
    """From the edge to the middle of a level joint, and nothing goes on beyond."""
    assert ends_of((LEVEL, ((10, 0), (10, 8))), SLAB, LIMITS).dying == ((10, 8),)


def test_joints_that_cross_or_go_on_do_not_die():
    """Straight across, and a joint that goes on beyond a little turned."""
    assert ends_of((LEVEL, ((10, 0), (10, 16))), SLAB, LIMITS).dying == ()
    assert ends_of((LEVEL, ((10, 0), (10, 8)), ((10, 8), (11, 16))), SLAB, LIMITS).dying == ()


def test_three_joints_that_meet_in_corners_do_not_die():
    """Where each panel has a corner, no crack is led into the side of one."""
    joints: tuple[Segment, ...] = (((0, 6), (6, 6)), ((6, 0), (6, 6)), ((6, 6), (20, 16)))
    assert ends_of(joints, SLAB, LIMITS).dying == ()


def test_a_joint_beside_a_corner_and_in_it():
    """A foot from a corner is under the 18 in that a panel is wide at least; two feet are not."""
    for away_ft, is_near in ((1.0, True), (2.0, False), (0.0, False)):
        ends = ends_of((((away_ft, 0), (10, 16)),), SLAB, LIMITS)
        assert bool(ends.near_corner) == is_near


def test_joints_on_both_sides_of_a_pool_are_in_line():
    """A joint whose line meets none beyond the pool is named; where both sides match, none is."""
    deck = Polygon(SLAB.exterior, [[(5, 5), (15, 5), (15, 11), (5, 11)]])
    near: Segment = ((10, 0), (10, 5))
    assert ends_of((near, ((10, 11), (10, 16))), deck, LIMITS).unmatched == ()
    assert ends_of((near, ((8, 11), (8, 16))), deck, LIMITS).unmatched == ((10, 5),)


def test_a_joint_that_bends_by_over_30_degrees_is_ended_in():
    """Common practice: bent by less it goes straight on, and the joint that ends there dies."""
    for off_ft, dies in ((1.0, True), (2.0, True), (2.9, False)):
        bent: tuple[Segment, ...] = (((0, 8), (10, 8 + off_ft)), ((10, 8 + off_ft), (20, 8)))
        stem: Segment = ((10, 8 + off_ft), (10, 16))
        assert bool(ends_of((*bent, stem), SLAB, LIMITS).dying) == dies


def test_a_joint_that_touches_nothing_dies():
    """A loose end inside the slab is one, and no fault of the program."""
    assert len(ends_of((((5, 8), (15, 8)),), SLAB, LIMITS).dying) == 2
