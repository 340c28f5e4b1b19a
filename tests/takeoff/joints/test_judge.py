"""Parts judged by the rules for panels of a slab 4 in thick."""

import math
from fractions import Fraction

import pytest

from quotegen.quantity import Length
from quotegen.takeoff.joints.judge import (
    breaches,
    inward_rad,
    limits_of,
    panels_wanted,
    passes,
    slivers,
    tiled,
)
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.joints.records import PanelRule
from quotegen.takeoff.plan_geometry import Ring
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)


def _box(wide: float, high: float) -> Ring:
    return (0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)


def _part(ring: Ring, joints: bool = True) -> Part:
    return Part(ring=ring, cut=(joints,) * len(ring))


@pytest.mark.parametrize(
    ("ring", "rules"),
    [
        (_box(10, 10), []),
        (_box(10.5, 10), [PanelRule.SPACING]),
        (_box(9, 6), []),
        (_box(9, 5), [PanelRule.RATIO]),
        (_box(1.4, 1.4), [PanelRule.SLIVER]),
        (((0, 0), (9, 0), (9, 6), (5, 6)), [PanelRule.CORNER]),
        (((0, 0), (9, 0), (9, 4), (4, 4), (4, 9), (0, 9)), [PanelRule.INSIDE_CORNER]),
    ],
)
def test_each_rule_is_found(ring: Ring, rules: list[PanelRule]):
    """10 ft at most, 1.5 to 1, 60 degrees, 18 in, and a joint at an inside corner."""
    part = _part(ring)
    assert [breach.rule for breach in breaches(part, LIMITS)] == rules
    assert passes(part, LIMITS) == (not rules)


def test_a_sharp_corner_without_a_joint_is_no_fault():
    """Where the slab itself is sharp no joint makes it so."""
    part = _part(((0, 0), (9, 0), (9, 6), (5, 6)), joints=False)
    assert passes(part, LIMITS)


def test_slivers_of_many_parts_at_once():
    """Narrow all along is a sliver; narrow at one end only is not."""
    wedge: Ring = ((0, 0), (20, 0), (20, 3))
    parts = [_part(ring) for ring in (_box(9, 9), _box(9, 1.4), wedge, _box(9, 1.6))]
    assert slivers(parts, LIMITS) == [False, True, False, False]


def test_turns_at_one_place_and_along_a_curve():
    """A quarter circle bitten out of a square turns 90 degrees inward, a little at each place."""
    angles = [math.pi * (3 / 2 - n / 32) for n in range(17)]
    arc = [(5 + 4 * math.cos(angle), 5 + 4 * math.sin(angle)) for angle in angles]
    bitten: Ring = ((0, 0), (5, 0), *arc, (0, 5))
    sharpest, longest = inward_rad(_part(bitten, joints=False), bend_ft=0.5)
    assert math.degrees(longest) == pytest.approx(84.4, abs=0.1)
    assert sharpest < longest / 2
    assert inward_rad(_part(_box(9, 9)), 0.5) == (0, 0)


@pytest.mark.parametrize(
    ("size", "tiles"),
    [((36, 20), (4, 2)), ((10, 10), (1, 1)), ((60, 4), (10, 1)), ((21, 12), (3, 2))],
)
def test_how_many_panels_a_rectangle_takes(size: tuple[float, float], tiles: tuple[int, int]):
    """Along and across, none over 10 ft and none over 1.5 to 1."""
    assert tiled(*size, LIMITS) == tiles
    assert panels_wanted(_part(_box(*size)), LIMITS) == tiles[0] * tiles[1]


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
