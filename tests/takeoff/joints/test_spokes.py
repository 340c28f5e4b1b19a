"""The joints that may lead from a pool to the edge of a deck."""

import math
from fractions import Fraction

from quotegen.quantity import Length
from quotegen.takeoff.joints.judge import limits_of
from quotegen.takeoff.joints.spokes import spokes_of
from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
EDGE: Ring = ((0, 0), (40, 0), (40, 40), (0, 40))


def _circle(radius: float) -> Ring:
    turns = [math.tau * n / 32 for n in range(32)]
    return tuple((20 + radius * math.cos(turn), 20 + radius * math.sin(turn)) for turn in turns)


def _forked(hole: Ring) -> set[Point]:
    found = spokes_of(EDGE, hole, LIMITS)
    return {one.node for one in found if one.node and one.ends[0] != one.ends[1]}


def test_a_spoke_forks_before_each_far_corner():
    """It squares off a panel that reaches 0.65 or 0.8 of the way from the corner to the pool."""
    side_ft = 20 - 18 / math.sqrt(2)
    for corner in EDGE:
        away = [max(abs(x - corner[0]), abs(y - corner[1])) for x, y in _forked(_circle(18))]
        for reach in (0.65, 0.8):
            assert min(abs(one - side_ft * reach) for one in away) < 0.01


def test_a_corner_too_far_for_one_panel_has_no_fork():
    """Around a small pool a corner panel would be longer than a panel may be."""
    assert _forked(_circle(4)) == set()


def test_a_line_ends_in_a_spoke_that_bends_enough():
    """Where a line round the pool leaves to one side only, the spoke turns by over 30 degrees."""
    bent = [one for one in spokes_of(EDGE, _circle(9), LIMITS)
            if one.tied[0] != one.tied[1] and one.ends[0] == one.ends[1]]  # fmt: skip
    assert bent
    for one in bent:
        (x0, y0), (x1, y1), (x2, y2) = one.start.point, one.node or (0, 0), one.ends[0].point
        turn = math.atan2(y2 - y1, x2 - x1) - math.atan2(y1 - y0, x1 - x0)
        assert abs(math.degrees(math.remainder(turn, math.tau))) > 30
