"""The rules for panels as numbers for geometry."""

import math
from fractions import Fraction

import pytest

from quotegen.quantity import Length
from quotegen.takeoff.joints.limits import limits_of, too_many_panels
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY, placement, slab


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


@pytest.mark.parametrize(
    ("sizes", "at"),
    [
        (["600 ft x 500 ft"], None),  # 60 by 50 panels of 10 ft
        (["600 ft x 501 ft"], 0),
        (["1490 ft x 2 ft"], None),  # panels of about 2 ft by 3 ft: half way round are 500
        (["1510 ft x 2 ft"], 0),
        (["600 ft x 250 ft"] * 2, None),
        (["600 ft x 250 ft", "600 ft x 250 ft", "10 ft x 10 ft"], 2),
    ],
)
def test_more_panels_than_can_be_laid_out(sizes: list[str], at: int | None):
    """At 4 in a joint stands each 10 ft, and a panel is 1.5 times as long as wide at most."""
    slabs = [
        (placement({"rectangle": size}, number=number), slab({"rectangle": size}))
        for number, size in enumerate(sizes)
    ]
    faults = too_many_panels(slabs, load_rules(), DAY)
    assert [fault.path for fault in faults] == ([] if at is None else [("placements", at, "add")])
