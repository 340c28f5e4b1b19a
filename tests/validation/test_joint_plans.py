"""Whole joint plans against worked examples of published rules.

Each test names its source and how sure we are: `published` was seen; `as reported` was seen in a
page that quotes the source; `arithmetic` follows from the rule named with it.
"""

from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.takeoff.joints.records import JointPlan, PanelRule
from tests.takeoff.plans import joints_of, placement, takeoff, warnings_of


def _plan(size: str, thickness_in: str = "4") -> JointPlan:
    return takeoff(placement({"rectangle": size}, thickness_in=thickness_in)).placements[0].joints


def _sides(plan: JointPlan) -> set[tuple[Decimal, Decimal]]:
    return {(panel.long_ft, panel.short_ft) for panel in plan.panels}


def test_a_patio_of_20_by_36_ft():
    """ACI 302.1R-96, 30 t at 4 in is 10 ft (W2d): 2 x 4 panels of 10 x 9 ft, 96 ft; arithmetic."""
    plan = _plan("36 ft x 20 ft")
    assert plan.spacing_ft == 10
    assert len(plan.panels) == 8
    assert _sides(plan) == {(Decimal("10.00"), Decimal("9.00"))}
    assert {panel.ratio for panel in plan.panels} == {Decimal("1.11")}
    assert plan.length_ft == Decimal("96.0")
    assert plan.exceptions == ()


def test_a_drive_of_12_ft_at_3_in():
    """A ready-mixed trade guide (W2a): at 3 in 12 ft wants a joint down the middle; published.

    The guide's table says 8 ft; 30 t gives 7 ft 6 in, and the lesser rules here.
    """
    plan = _plan("48 ft x 12 ft", "3")
    assert plan.spacing_rules == ("joint_spacing_multiplier",)
    assert max(panel.long_ft for panel in plan.panels) <= Decimal("7.5")
    assert any(joint.length_ft == 48 for joint in plan.joints)


def test_a_drive_of_16_ft_at_6_in():
    """The same guide (W2a): 16 ft at 6 in wants one too, for 16 is over 12; published."""
    plan = _plan("48 ft x 16 ft", "6")
    assert plan.spacing_ft == 12
    assert plan.spacing_rules == ("joint_spacing_by_thickness",)
    assert any(joint.length_ft == 48 for joint in plan.joints)


@pytest.mark.parametrize("side", ["30 ft", "15 ft"])
def test_panels_that_cracked(side: str):
    """A trade magazine (W2c): 30 x 30 and 15 x 15 ft at 4 in cracked, 8-12 ft is the rule."""
    (panel,) = joints_of({"rectangle": f"{side} x {side}"}, lines=()).panels
    assert [one.rule for one in panel.broken] == [PanelRule.SPACING]
    assert _plan(f"{side} x {side}").exceptions == ()


@pytest.mark.parametrize(
    ("thickness", "depth"), [("3.5", "1"), ("4", "1"), ("5", "1.25"), ("6", "1.5")]
)
def test_depth_of_the_cuts(thickness: str, depth: str):
    """ACI 302.1R-15 a quarter, UFGS 03300N 3.8.3 at least 1 in (W2e, C14); published."""
    assert _plan("20 ft x 20 ft", thickness).saw_depth_in == Fraction(depth)


@pytest.mark.parametrize(
    ("thickness", "spacing", "rules"),
    [
        ("3", "7.5", {"joint_spacing_multiplier"}),
        ("4", "10", {"joint_spacing_multiplier", "joint_spacing_by_thickness"}),
        ("5", "12", {"joint_spacing_by_thickness"}),
        ("6", "12", {"joint_spacing_by_thickness"}),
        ("7", "12", {"joint_spacing_by_thickness"}),
    ],
)
def test_the_spacing_names_its_rule(thickness: str, spacing: str, rules: set[str]):
    """The guide's table (C13) and 30 t, inside the 24-36 t of ACI 302.1R-96 and its 18 ft (C10)."""
    plan = _plan("40 ft x 40 ft", thickness)
    assert plan.spacing_ft == Decimal(spacing)
    assert set(plan.spacing_rules) == rules
    assert all(panel.long_ft <= Decimal(spacing) for panel in plan.panels)


def test_our_spacing_at_4_in_is_inside_the_range():
    """ACI 302.1R-96, 24 t and 36 t at 4 in (C09): 8 and 12 ft, and 10 lies between; as reported."""
    assert Decimal(8) <= _plan("30 ft x 30 ft").spacing_ft <= Decimal(12)


@pytest.mark.parametrize(("long", "rules"), [("15 ft", []), ("16 ft", [PanelRule.RATIO])])
def test_a_panel_of_10_by_15_and_by_16_ft(long: str, rules: list[PanelRule]):
    """ACI 302.1R-80 2.3.2, at most 1.5 to 1 (C12): 1.5 passes, 1.6 fails; as reported."""
    (panel,) = joints_of({"rectangle": f"{long} x 10 ft"}, lines=(), thickness_in="4").panels
    assert [one.rule for one in panel.broken if one.rule is not PanelRule.SPACING] == rules


def test_a_patio_without_joints():
    """A homeowner's patio of 12 x 21 ft (R4) cracked across: too long, and 1.75 to 1; published."""
    problems = warnings_of({"rectangle": "21 ft x 12 ft"}, lines=())
    assert [problem.code for problem in problems] == ["joint-panel"]
    assert "21'-0\" long, at most 10'-0\"" in problems[0].message
    assert "1.75 to 1, at most 1.5 to 1" in problems[0].message
    assert len(_plan("21 ft x 12 ft").joints) >= 2
