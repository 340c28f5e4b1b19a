"""What is said of the owner's own joints, and of slabs with too many."""

from decimal import Decimal

import pytest

from quotegen.takeoff.joints.faults import line_faults, too_many_panels
from quotegen.takeoff.joints.records import PanelRule
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY, joints_of, line, placement, slab, warnings_of


def test_the_owners_lines_are_the_joints():
    """The owner's own lines are used as typed, and a good set is not commented on."""
    lines = (line((10, 0), (10, 16)), line((0, 8), (20, 8)))
    plan = joints_of({"rectangle": "20 ft x 16 ft"}, lines=lines)
    assert plan.is_owners
    assert plan.length_ft == Decimal("36.0")
    assert warnings_of({"rectangle": "20 ft x 16 ft"}, lines=lines) == ()


def test_an_owners_line_that_ends_3_in_short_is_meant_to_arrive():
    """A line typed to within 3 in of the edge divides the slab."""
    plan = joints_of({"rectangle": "20 ft x 10 ft"}, lines=(line((10, 0.2), (10, 9.8)),))
    assert len(plan.panels) == 2


def test_a_skew_line_leaves_sharp_corners():
    """A line across a corner is told by its angle."""
    plan = joints_of({"rectangle": "9 ft x 9 ft"}, lines=(line((2, 0), (9, 7)),))
    rules = {one.rule for panel in plan.panels for one in panel.broken}
    assert PanelRule.CORNER in rules


def test_a_line_near_an_edge_leaves_a_sliver():
    """A strip of a foot is told by its width."""
    plan = joints_of({"rectangle": "9 ft x 9 ft"}, lines=(line((1, 0), (1, 9)),))
    (panel,) = plan.exceptions
    (sliver,) = (one for one in panel.broken if one.rule is PanelRule.SLIVER)
    assert (sliver.found, sliver.allowed) == (Decimal("1.00"), Decimal("1.50"))


def test_a_line_beside_the_slab_is_told():
    """A line that does not cross the slab is a slip of the finger."""
    spec = placement({"rectangle": "20 ft x 10 ft"}, lines=(line((10, 12), (10, 20)),))
    (fault,) = line_faults(spec.typed.joints or (), slab({"rectangle": "20 ft x 10 ft"}))
    assert (fault.code, fault.path) == ("joint-off-slab", ("joints", 0))


def test_a_line_that_stops_inside_a_panel_is_told():
    """Half of a line across divides nothing: a crack will carry it on."""
    (problem,) = warnings_of({"rectangle": "9 ft x 9 ft"}, lines=(line((4, 0), (4, 5)),))
    assert problem.code == "joint-stops-short"
    assert "5'-0\" of it divides nothing" in problem.message


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
