"""Joints, steel, concrete mix, slope and thickness against published sources.

Each test names its source and how sure we are: `published` was seen; `as reported` was seen in a
page that quotes the source, so the original should be read before it is quoted to a customer.
"""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.quantity import rounded
from quotegen.trade import joints, mix, reinforcement, slopes
from quotegen.trade.mix import Weathering
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


@pytest.mark.parametrize(
    ("thickness", "spacing"),
    [("3.5", "8.75"), ("4", "10"), ("5", "12.5"), ("6", "15")],
)
def test_thirty_times_the_thickness(thickness: str, spacing: str) -> None:
    """PCA Building Movements and Joints, 30 times for 3/4 in stone and up; as reported."""
    times = RULES.exact("joint_spacing_multiplier", ON)
    assert times * Fraction(thickness) / 12 == Fraction(spacing)


@pytest.mark.parametrize(("thickness", "feet"), [(3, 8), (4, 10), (5, 12), (6, 12)])
def test_longest_space_between_joints(thickness: int, feet: int) -> None:
    """A ready-mixed trade guide, table of the longest space between joints (C13); published."""
    assert RULES.step("joint_spacing_by_thickness", Fraction(thickness), ON) == feet


@pytest.mark.parametrize(
    ("thickness", "depth"), [("3.5", "1"), ("4", "1"), ("5", "1.25"), ("6", "1.5")]
)
def test_saw_depth(thickness: str, depth: str) -> None:
    """ACI 302.1R-15 a quarter, UFGS 03300N 3.8.3 at least 1 in (C14); published."""
    assert joints.saw_depth_in(Fraction(thickness), RULES, ON) == Fraction(depth)


@pytest.mark.parametrize(
    ("style", "area", "weight"),
    [
        ("6x6 W1.4", "0.028", "21"),
        ("6x6 W2.0", "0.040", "29"),
        ("6x6 W2.9", "0.058", "42"),
        ("6x6 W4.0", "0.080", "58"),
    ],
)
def test_wire_weight(style: str, area: str, weight: str) -> None:
    """Concrete Construction, October 1975, p. 454 (C15, C16), area and weight; published.

    The published weight is 7 to 11 % over bare wire at 3.4 lb per ft per sq in, both ways.
    """
    assert reinforcement.wire_weight_lb_per_100_sqft(style, RULES, ON) == Decimal(weight)
    bare = Decimal(area) * 2 * Decimal("3.4") * 100
    assert Decimal("1.06") < Decimal(weight) / bare < Decimal("1.11")


@pytest.mark.parametrize(("bar", "weight"), [("#3", "0.376"), ("#4", "0.668"), ("#5", "1.043")])
def test_bar_weight(bar: str, weight: str) -> None:
    """ASTM A615 Table 1, weight per foot of bar (C17); published."""
    assert reinforcement.bar_weight_lb(bar, Fraction(1), RULES, ON) == Fraction(weight)


@pytest.mark.parametrize(
    ("weathering", "psi"),
    [
        (Weathering.NEGLIGIBLE, "2500"),
        (Weathering.MODERATE, "3000"),
        (Weathering.SEVERE, "3500"),
    ],
)
def test_strength_by_weathering(weathering: Weathering, psi: str) -> None:
    """IRC Table R402.2, porches, steps and garage slabs (C28); as reported."""
    assert mix.strength_psi(weathering, deicers=False, rules=RULES, on=ON) == Decimal(psi)


@pytest.mark.parametrize(
    ("weathering", "air"),
    [(Weathering.NEGLIGIBLE, None), (Weathering.MODERATE, 5), (Weathering.SEVERE, 5)],
)
def test_air_where_frost_can_reach(weathering: Weathering, air: int | None) -> None:
    """IRC Table R402.2 asks 5 to 7 % under moderate and severe weathering; as reported."""
    assert mix.least_air(weathering, RULES, ON) == air


def test_salt_on_a_drive_by_edition() -> None:
    """ACI 332-20 class RF3 4,500 psi, ACI 332-14 4,000 psi (C29); published.

    Seen in a state association's advisory on scaling.
    """
    severe = Weathering.SEVERE
    before = date(2019, 12, 31)
    assert mix.strength_psi(severe, deicers=True, rules=RULES, on=before) == Decimal(4000)
    assert mix.strength_psi(severe, deicers=True, rules=RULES, on=ON) == Decimal(4500)


@pytest.mark.parametrize(
    ("slope", "per_cent"), [("1/8", "1.0417"), ("1/4", "2.0833"), ("1/2", "4.1667")]
)
def test_slope_conversions(slope: str, per_cent: str) -> None:
    """Inches per foot as a percentage (C33), to 0.0001; arithmetic, and 1/4 in is 1 : 48."""
    assert rounded(slopes.slope_share(Fraction(slope)) * 100, 4) == Decimal(per_cent)
    assert slopes.slope_share(Fraction(1, 4)) == Fraction(1, 48)


def test_slope_beside_a_shared() -> None:
    """IRC R401.3, 2 % within 10 ft (C33): 2.4 in; 1/8 in per ft fails it; as reported."""
    reach = RULES.exact("slope_house_reach", ON)
    assert RULES.exact("slope_by_house", ON) / 100 * reach * 12 == Fraction("2.4")
    assert slopes.drains_from_house(Fraction(1, 4), RULES, ON)
    assert not slopes.drains_from_house(Fraction(1, 8), RULES, ON)
