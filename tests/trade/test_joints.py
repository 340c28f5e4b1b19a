"""Spacing of joints beyond the published cases."""

from datetime import date
from fractions import Fraction

import pytest

from quotegen.trade import joints
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


@pytest.mark.parametrize(
    ("thickness", "spacing"),
    [("3", "7.5"), ("3.5", "8"), ("4", "10"), ("4.5", "10"), ("5", "12"), ("6", "12"), ("8", "12")],
)
def test_spacing_meets_both_rules(thickness: str, spacing: str) -> None:
    """The spacing is the lesser of the multiple of thickness and the table."""
    spacing_ft, _ = joints.governing_spacing(Fraction(thickness), RULES, ON)
    assert spacing_ft == Fraction(spacing)


def test_a_thin_slab_goes_by_the_multiple_alone() -> None:
    """Under 3 in the table says nothing: 30 times 2-1/2 in is 6-1/4 ft."""
    spacing_ft, rules = joints.governing_spacing(Fraction("2.5"), RULES, ON)
    assert spacing_ft == Fraction("6.25")
    assert rules == ("joint_spacing_multiplier",)


def test_both_rules_are_named_where_they_agree() -> None:
    """At 4 in the multiple and the table both give 10 ft."""
    _, rules = joints.governing_spacing(Fraction(4), RULES, ON)
    assert rules == ("joint_spacing_multiplier", "joint_spacing_by_thickness")
