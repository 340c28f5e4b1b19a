"""Layouts whose joints die into others, mended."""

from decimal import Decimal
from fractions import Fraction

import pytest
from shapely import MultiPolygon, Polygon

from quotegen.quantity import Length
from quotegen.takeoff.joints.ends import ends_of
from quotegen.takeoff.joints.judge import limits_of
from quotegen.takeoff.joints.records import JointPlan
from quotegen.trade.rules import load_rules
from tests.takeoff.joints.test_ring_of_panels import DECK, POOL
from tests.takeoff.plans import DAY, Typed, joints_of, outline, slab

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
L_SHAPE = outline((0, 0), (14, 0), (14, 7), (22, 7), (22, 18), (0, 18))


def _dying(plan: JointPlan, *add: Typed, take_away: tuple[Typed, ...] = ()) -> int:
    region = slab(*add, take_away=take_away).region
    whole = region.geoms[0] if isinstance(region, MultiPolygon) else region
    assert isinstance(whole, Polygon)
    joints = [(joint.start_ft, joint.end_ft) for joint in plan.joints]
    return len(ends_of(joints, whole, LIMITS).dying)


@pytest.mark.parametrize(
    "typed",
    [{"rectangle": "30 ft x 18 ft"}, {"rectangle": "44 ft x 4 ft"}, L_SHAPE],
    ids=["patio", "walk", "L"],
)
def test_plain_slabs_have_no_joint_that_dies(typed: Typed):
    """On a patio, a walk and an L every joint runs from edge to edge or goes on."""
    assert _dying(joints_of(typed), typed) == 0


def test_a_wide_deck_has_a_line_round_its_pool():
    """Where the deck is wider than a panel may be long a line goes round, and dies nowhere."""
    plan = joints_of(DECK, take_away=(POOL,))
    assert plan.exceptions == ()
    assert _dying(plan, DECK, take_away=(POOL,)) == 0


def test_a_small_radius_at_a_pool_corner_needs_one_joint():
    """Corners of 1 ft radius have a joint at their end, and the deck is not cut to crumbs there."""
    pool: Typed = {**POOL, "corner_radius": "1 ft", "at": ["6 ft", "6 ft"]}
    plan = joints_of({"rectangle": "44 ft x 26 ft"}, take_away=(pool,))
    assert plan.exceptions == ()
    assert min(panel.short_ft for panel in plan.panels) > Decimal("3.5")
