"""Joints around one pool."""

import math
from fractions import Fraction

from shapely import LineString, Point, Polygon

from quotegen.quantity import Length
from quotegen.takeoff.joints.limits import limits_of
from quotegen.takeoff.joints.spokes import spokes_round
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)


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
