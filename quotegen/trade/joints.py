"""Where joints go and how deep they are cut."""

from datetime import date
from fractions import Fraction
from math import ceil

from quotegen.quantity import INCHES_PER_FOOT
from quotegen.trade.book import Range, RuleBook


def joint_spacing_ft(thickness_in: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Longest space between contraction joints, in feet.

    The lesser of a multiple of the thickness (30, PCA Building Movements and Joints) and a
    table by thickness (a ready-mixed trade guide, Joints), so that both are met.
    Stops applying to slabs under 3 in, to shrinkage-compensating concrete, and to slabs whose
    steel is designed to hold cracks closed. Fibers do not widen it.

    Args:
        thickness_in: slab thickness in inches.
        rules: the rule book.
        on: the quote date.

    Raises:
        LookupError: the slab is thinner than the table goes.
    """
    by_multiple = rules.exact("joint_spacing_multiplier", on) * thickness_in / INCHES_PER_FOOT
    return min(by_multiple, rules.step("joint_spacing_by_thickness", thickness_in, on))


def governing_spacing(
    thickness_in: Fraction, rules: RuleBook, on: date
) -> tuple[Fraction, tuple[str, ...]]:
    """Longest space between contraction joints, in feet, and the ids of the rules that give it.

    As `joint_spacing_ft`, for a plan that names its rule. A slab thinner than the table goes has
    the multiple of its thickness alone.
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


def accepted_spacing_ft(
    thickness_in: Fraction, rules: RuleBook, on: date
) -> tuple[Fraction, Fraction]:
    """Range of joint spacings that is generally held acceptable, in feet, with its cap.

    24 to 36 times the thickness and not over 18 ft (ACI 302.1R-96). For judging a spacing that
    somebody else proposes; our own is `joint_spacing_ft`. For slabs without steel.
    """
    times = rules.range("joint_spacing_range", on)
    cap = rules.exact("joint_spacing_cap", on)
    least = Fraction(times.least) * thickness_in / INCHES_PER_FOOT
    most = Fraction(times.most) * thickness_in / INCHES_PER_FOOT
    return min(least, cap), min(most, cap)


def panels_needed(side_ft: Fraction, spacing_ft: Fraction) -> int:
    """Least number of equal panels along a side such that none is longer than the spacing."""
    return ceil(side_ft / spacing_ft)


def panel_ratio_fits(one_ft: Fraction, other_ft: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether a panel is near enough to a square.

    Long side at most 1.5 times the short side (ACI 302.1R-80 2.3.2). Says nothing on panels
    with curved sides or inside corners, which want a joint at the corner besides.
    """
    short, long = sorted((one_ft, other_ft))
    return long <= short * rules.exact("panel_ratio_max", on)


def saw_depth_in(thickness_in: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Least depth of a contraction joint, in inches.

    A quarter of the thickness (ACI 302.1R-15), and at least 1 in (UFGS 03300N 3.8.3).
    Some local codes ask for a third. Early-entry dry saws follow their own rule.
    """
    share = rules.exact("joint_depth_share", on) * thickness_in
    return max(share, rules.exact("joint_depth_min", on))


def saw_window_hours(rules: RuleBook, on: date) -> Range:
    """Hours after placing within which joints are commonly sawn (ACI 302.1R-15).

    A guide only: heat brings it forward and cold puts it off, up to days. The crew saws when
    the edge of a cut ravels only slightly.
    """
    return rules.range("saw_window", on)


def early_entry_depth_in(thickness_in: Fraction, rules: RuleBook, on: date) -> Fraction | None:
    """Depth of a dry early-entry cut in inches: 1 in, for slabs up to 9 in (trade paper).

    None for a thicker slab, of which it says nothing.
    """
    if thickness_in > rules.exact("early_entry_thickest", on):
        return None
    return rules.exact("early_entry_depth", on)
