"""Layouts of joints for a few kinds of slab."""

from decimal import Decimal

from quotegen.takeoff.joints.records import JointPlan
from tests.takeoff.plans import feet, joints_of, outline

L_SHAPE = outline((0, 0), (14, 0), (14, 7), (22, 7), (22, 18), (0, 18))
POOL = {"rectangle": "28 ft x 14 ft", "at": feet((8, 9)), "is": "pool"}
DECK = {"rectangle": "45 ft x 30 ft", "against_house": "bottom"}
POST = {"rectangle": "1 ft x 1 ft", "at": feet((8, 10)), "is": "opening"}


def _ends(plan: JointPlan) -> set[tuple[float, float]]:
    return {
        (round(x, 2), round(y, 2))
        for joint in plan.joints
        for x, y in (joint.start_ft, joint.end_ft)
    }


def _passes_through(plan: JointPlan, at: tuple[float, float]) -> bool:
    x, y = at
    return any(
        min(a, c) - 0.01 <= x <= max(a, c) + 0.01
        and min(b, d) - 0.01 <= y <= max(b, d) + 0.01
        and abs((c - a) * (y - b) - (d - b) * (x - a)) < 0.01
        for (a, b), (c, d) in ((joint.start_ft, joint.end_ft) for joint in plan.joints)
    )


def test_an_inside_corner_has_a_joint():
    """A joint starts at the inside corner of an L."""
    plan = joints_of(L_SHAPE)
    assert _passes_through(plan, (14, 7))
    assert plan.exceptions == ()


def test_every_corner_of_a_pool_has_a_joint():
    """Joints go out from all four corners of a square pool, and every panel passes."""
    plan = joints_of(DECK, take_away=(POOL,))
    assert {(8, 9), (36, 9), (36, 23), (8, 23)} <= _ends(plan)
    assert plan.exceptions == ()


def test_a_small_opening_has_joints_through_its_middle():
    """At a post joints meet it in its middle, are not counted inside it, and nothing fails."""
    plan = joints_of({"rectangle": "24 ft x 18 ft"}, take_away=(POST,))
    assert {(8.5, 10), (8.5, 11), (8, 10.5), (9, 10.5)} <= _ends(plan)
    assert plan.exceptions == ()


def test_a_slab_of_one_panel_has_no_joint():
    """A pad no longer than the spacing is one panel."""
    plan = joints_of({"rectangle": "9 ft x 8 ft"})
    assert plan.joints == ()
    assert plan.length_ft == 0
    (panel,) = plan.panels
    assert (panel.long_ft, panel.short_ft) == (Decimal("9.00"), Decimal("8.00"))


def test_a_walk_has_joints_across():
    """A walk 4 ft wide has joints 6 ft apart, one and a half times its width."""
    plan = joints_of({"rectangle": "60 ft x 4 ft"})
    assert {panel.long_ft for panel in plan.panels} == {Decimal("6.00")}
    assert len(plan.joints) == 9


def test_a_huge_slab_has_a_plain_grid():
    """A slab of hundreds of panels is not searched, only divided evenly."""
    plan = joints_of({"rectangle": "300 ft x 200 ft"})
    assert len(plan.panels) == 600
    assert plan.exceptions == ()
