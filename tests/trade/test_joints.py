"""Joint layout beyond the published cases."""

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
    assert joints.joint_spacing_ft(Fraction(thickness), RULES, ON) == Fraction(spacing)


def test_a_thin_slab_has_no_spacing() -> None:
    """Under 3 in the table says nothing, and so does the function."""
    with pytest.raises(LookupError, match="joint_spacing_by_thickness starts at 3"):
        joints.joint_spacing_ft(Fraction("2.5"), RULES, ON)


def test_a_side_of_just_the_spacing_needs_no_joint() -> None:
    """A side as long as the spacing is one panel; a hair over makes two."""
    assert joints.panels_needed(Fraction(10), Fraction(10)) == 1
    assert joints.panels_needed(Fraction(10) + Fraction(1, 1000), Fraction(10)) == 2


def test_the_order_of_the_sides_does_not_matter() -> None:
    """A panel turned by a quarter is the same panel."""
    assert joints.panel_ratio_fits(Fraction(15), Fraction(10), RULES, ON)
    assert not joints.panel_ratio_fits(Fraction(16), Fraction(10), RULES, ON)


def test_saw_window_runs_forward() -> None:
    """The window for sawing opens before it closes."""
    window = joints.saw_window_hours(RULES, ON)
    assert window.least < window.most
