"""Corner panels of a deck around a pool."""

from fractions import Fraction

import pytest
from shapely import Point, Polygon

from quotegen.quantity import Length
from quotegen.takeoff.joints.corners import corner_panels
from quotegen.takeoff.joints.limits import limits_of
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
DECK = Polygon([(0, 0), (40, 0), (40, 40), (0, 40)])


def test_the_corners_of_a_deck_around_a_round_pool_are_squared_off():
    """Each far corner gets a square panel that reaches part of the way to the pool."""
    deck = DECK.difference(Point(20, 20).buffer(18, 16))
    assert isinstance(deck, Polygon)
    panels = corner_panels(deck, 0.65, LIMITS)
    assert len(panels) == 4
    gap_ft = 20 * 2**0.5 - 18
    side_ft = gap_ft * 0.65 / 2**0.5
    assert [panel.area for panel in panels] == pytest.approx([side_ft**2] * 4, rel=0.01)


def test_a_corner_too_far_for_one_panel_is_left():
    """Around a small pool a corner panel would be longer than a panel may be."""
    deck = DECK.difference(Point(20, 20).buffer(4, 16))
    assert isinstance(deck, Polygon)
    assert corner_panels(deck, 0.65, LIMITS) == ()
