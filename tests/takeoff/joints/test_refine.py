"""Parts divided until they pass."""

from fractions import Fraction

import pytest

from quotegen.quantity import Length
from quotegen.takeoff.joints.judge import limits_of, passes
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.joints.refine import Refiner
from quotegen.takeoff.plan_geometry import Ring
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
ELL: Ring = ((0, 0), (14, 0), (14, 6), (6, 6), (6, 14), (0, 14))


@pytest.mark.parametrize(
    ("ring", "panels"),
    [(((0, 0), (9, 0), (9, 9), (0, 9)), 1), (((0, 0), (20, 0), (20, 10), (0, 10)), 2), (ELL, 3)],
)
def test_a_part_is_divided_until_every_panel_passes(ring: Ring, panels: int):
    """Into as few panels as the rules allow, which cover the part."""
    part = Part(ring=ring, cut=(False,) * len(ring))
    found = Refiner(LIMITS).refine(part, ())
    assert len(found) == panels
    assert all(passes(panel, LIMITS) for panel in found)
    assert sum(panel.area_sqft for panel in found) == pytest.approx(part.area_sqft)


def test_a_cut_continues_a_joint_from_outside():
    """A joint of a neighbor that ends in the middle of a side is carried on."""
    ring: Ring = ((0, 0), (18, 0), (18, 10), (0, 10))
    part = Part(ring=ring, cut=(True, False, False, False))
    found = Refiner(LIMITS).refine(part, ((8.0, 0.0),))
    assert len(found) == 2
    assert any((8.0, 0.0) in panel.ring for panel in found)
