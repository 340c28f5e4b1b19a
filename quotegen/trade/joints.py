"""Where joints go and how deep they are cut."""

from datetime import date
from fractions import Fraction

from quotegen.quantity import INCHES_PER_FOOT
from quotegen.trade.book import RuleBook


def governing_spacing(
    thickness_in: Fraction, rules: RuleBook, on: date
) -> tuple[Fraction, tuple[str, ...]]:
    """Return the longest space between contraction joints in feet, and the ids of its rules.

    The lesser of a multiple of the thickness (30, PCA Building Movements and Joints) and a table
    by thickness (a ready-mixed trade guide, Joints), so that both are met; below the first
    thickness of the table, 3 in, the multiple alone. Does not apply to shrinkage-compensating
    concrete, nor to slabs whose steel is designed to hold cracks closed. Fibers do not widen it.

    Args:
        thickness_in: slab thickness in inches.
        rules: the rule book.
        on: the quote date.
    """
    by_multiple = rules.exact("joint_spacing_multiplier", on) * thickness_in / INCHES_PER_FOOT
    by_rule = {"joint_spacing_multiplier": by_multiple}
    try:
        by_table = rules.step("joint_spacing_by_thickness", thickness_in, on)
        by_rule["joint_spacing_by_thickness"] = by_table
    except LookupError:
        pass
    least = min(by_rule.values())
    return least, tuple(rule for rule, feet in by_rule.items() if feet == least)


def saw_depth_in(thickness_in: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the least depth of a contraction joint, in inches.

    A quarter of the thickness (ACI 302.1R-15), and at least 1 in (UFGS 03300N 3.8.3).
    Some local codes ask for a third. Early-entry dry saws follow their own rule.
    """
    share = rules.exact("joint_depth_share", on) * thickness_in
    return max(share, rules.exact("joint_depth_min", on))


def saw_latest_days(rules: RuleBook, on: date) -> int:
    """Return the days after a pour by which its joints are cut. Common practice, mild weather."""
    return int(rules.number("saw_latest", on))
