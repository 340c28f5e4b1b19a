"""The best set of joints around one pool."""

import math
from fractions import Fraction

from shapely import LineString, Point, Polygon

from quotegen.quantity import Length
from quotegen.takeoff.joints.ends import ends_of
from quotegen.takeoff.joints.judge import limits_of
from quotegen.takeoff.joints.main_directions import Axis
from quotegen.takeoff.joints.ring_of_panels import spokes_round
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY, joints_of, outline

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
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


def test_every_corner_of_a_square_pool_has_a_spoke():
    """A deck of 5 ft around a pool of 20 x 10 ft."""
    pool = [(5, 5), (25, 5), (25, 15), (5, 15)]
    deck = Polygon([(0, 0), (30, 0), (30, 20), (0, 20)], [pool])
    starts = {(round(x, 6), round(y, 6)) for (x, y), _ in spokes_round(deck, LIMITS)}
    assert set(pool) <= starts


def test_spokes_of_a_round_pool_point_at_its_middle():
    """Around a round pool in a round deck every joint leaves square to both edges."""
    deck = Point(0, 0).buffer(14, 16).difference(Point(0, 0).buffer(9, 16))
    assert isinstance(deck, Polygon)
    spokes = spokes_round(deck, LIMITS)
    assert len(spokes) >= math.ceil(2 * math.pi * 14 / LIMITS.most_ft)
    for start, end in spokes:
        assert LineString((start, end)).length < 5.2
        assert math.dist((0, 0), end) > 13.9


def test_a_deck_round_a_pool_is_laid_out_even_handed():
    """A deck that is the same left and right of the middle of its pool has such joints."""
    plan = joints_of(DECK, take_away=(POOL,))
    assert plan.exceptions == ()
    drawn = [(joint.start_ft, joint.end_ft) for joint in plan.joints]
    assert len(drawn) > 10
    assert Axis(is_upright=True, at_ft=22.625).mirrors(drawn)
    assert not Axis(is_upright=True, at_ft=22.5).mirrors(drawn)


def test_joints_leave_a_rounded_pool_where_its_straight_sides_end():
    """From the tangent points of both long sides, so that those of the far side are in line."""
    plan = joints_of(DECK, take_away=(POOL,))
    ends = [end for joint in plan.joints for end in (joint.start_ft, joint.end_ft)]
    for tangent in ((13.625, 8), (31.625, 8), (13.625, 22), (31.625, 22)):
        assert min(math.dist(tangent, end) for end in ends) < 0.02


def test_a_wide_deck_has_a_line_round_its_pool_that_dies_nowhere():
    """A deck 12 ft wide is two panels wide, and the line between them goes all the way round."""
    deck = Point(0, 0).buffer(21, 16).difference(Point(0, 0).buffer(9, 16))
    assert isinstance(deck, Polygon)
    joints = spokes_round(deck, LIMITS)
    assert ends_of(joints, deck, LIMITS).dying == ()
    around = [line for line in joints if 12 < LineString(line).distance(Point(0, 0)) < 17]
    assert len(around) >= 2 * math.pi * 15 / LIMITS.most_ft
