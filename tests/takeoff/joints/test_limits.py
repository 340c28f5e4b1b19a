"""The rules for panels as numbers for geometry."""

import math
from fractions import Fraction

import pytest

from quotegen.quantity import Length
from quotegen.takeoff.joints.limits import MOST_PANELS, limits_of, too_many_panels
from quotegen.trade.rules import load_rules
from tests.pricing import shop
from tests.takeoff.plans import DAY


@pytest.mark.parametrize(("inches", "most_ft"), [("3", 7.5), ("4", 10.0), ("6", 12.0)])
def test_the_thickness_decides_the_longest_side(inches: str, most_ft: float):
    """Joints are as far apart as the governing rule for that thickness allows."""
    limits = limits_of(Length.of_inches(Fraction(inches)), load_rules(), DAY)
    assert limits.most_ft == most_ft
    assert limits.times == 1.5
    assert limits.least_ft == 1.5


def test_stricter_limits_ask_for_wider_corners():
    """A layout keeps three degrees more than the rule, and all else as it is."""
    limits = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
    stricter = limits.stricter()
    assert math.degrees(stricter.corner_rad - limits.corner_rad) == pytest.approx(3)
    assert stricter.most_ft == limits.most_ft


def test_more_panels_than_can_be_laid_out(tmp_path):
    """At 4 in a joint stands each 10 ft, so 3,000 panels are 300,000 sq ft; no more is measured."""
    (spec,) = shop.results(tmp_path, shop.job(), rate_book=shop.book()).job.placements
    assert too_many_panels(spec, MOST_PANELS * 100.0, load_rules(), DAY) == ()
    (fault,) = too_many_panels(spec, MOST_PANELS * 100.0 + 1, load_rules(), DAY)
    assert fault.code == "slab-too-large"
