"""Laws of the joint plan that hold for every slab."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon

from quotegen.takeoff.joints.records import JointPlan
from tests.property import strategies as made
from tests.property.effort import one_in_as_found
from tests.takeoff.plans import Typed, feet, joints_of, slab

HAIR_FT = 0.02
POOLS: tuple[Typed, ...] = (
    {"ellipse": "6 ft x 4 ft", "is": "pool"},
    {"rectangle": "6 ft x 4 ft", "at": feet((-3, -2)), "is": "pool"},
    {"circle": {"radius": "3 ft"}, "is": "pool"},
)
DECKS: tuple[tuple[tuple[Typed, ...], tuple[Typed, ...]], ...] = (
    (({"rectangle": "36 ft x 20 ft"},), ()),
    (({"rectangle": "22 ft x 11 ft", "at": feet((0, 7))}, {"rectangle": "14 ft x 7 ft"}), ()),
    (
        ({"rectangle": "34 ft x 24 ft"},),
        ({"rectangle": "20 ft x 10 ft", "at": feet((6, 8)), "corner_radius": "5 ft"},),
    ),
    (({"ring": {"outer_radius": "14 ft", "width": "4 ft", "sweep": "70 deg"}},), ()),
)


def _sizes(plan: JointPlan) -> list[tuple[float, float]]:
    """Sides of every panel to a tenth of a foot, in order of size: free of the numbering."""
    return sorted((float(panel.long_ft), float(panel.short_ft)) for panel in plan.panels)


def _moved(shape: Typed, turn_deg: int, shift: tuple[float, float]) -> Typed:
    """A shape turned about its corner and moved."""
    angle = math.radians(turn_deg)
    along, out = (float(str(v).removesuffix(" ft")) for v in shape.get("at", ("0", "0")))
    at = (
        shift[0] + along * math.cos(angle) - out * math.sin(angle),
        shift[1] + along * math.sin(angle) + out * math.cos(angle),
    )
    return {**shape, "at": feet(at), "turn": f"{turn_deg} deg"}


class TestPanelsTileTheSlab:
    """Every piece of the slab is in one panel, and every joint lies on the slab."""

    @one_in_as_found(15)
    @given(made.corners(), st.sampled_from((None, *POOLS)))
    def test_areas_add_up_and_joints_lie_on_it(self, corners: made.Corners, pool: Typed | None):
        """Panels sum to the area of the slab; no joint leaves it."""
        typed = made.as_outline(corners)
        away = () if pool is None else (pool,)
        region = slab(typed, take_away=away).region
        plan = joints_of(typed, take_away=away)
        rounding = 0.05 * len(plan.panels) + 0.1
        total = sum(float(panel.area_sqft) for panel in plan.panels)
        assert total == pytest.approx(region.area, abs=rounding)
        grown = region.buffer(HAIR_FT)
        for joint in plan.joints:
            assert grown.covers(LineString((joint.start_ft, joint.end_ft)))
        assert float(plan.length_ft) == pytest.approx(
            sum(float(joint.length_ft) for joint in plan.joints),
            abs=0.05 + 0.005 * len(plan.joints),
        )

    def test_no_two_panels_overlap(self):
        """On a deck round a pool no panel lies over another."""
        add, away = DECKS[2]
        panels = [Polygon(p.outline_ft) for p in joints_of(*add, take_away=away).panels]
        for n, one in enumerate(panels):
            for other in panels[n + 1 :]:
                assert one.intersection(other).area < HAIR_FT * one.length


class TestAPlanIsTheSameWhereverItLies:
    """Turning or shifting a slab changes nothing about its joints."""

    @one_in_as_found(20)
    @given(st.integers(min_value=-359, max_value=359), made.SHIFTS_FT)
    @pytest.mark.parametrize(("add", "away"), DECKS)
    def test_turn_and_shift(
        self,
        add: tuple[Typed, ...],
        away: tuple[Typed, ...],
        turn: int,
        shift: tuple[float, float],
    ):
        """A slab that is turned and moved has the same panels, whatever their numbers."""
        here = joints_of(*add, take_away=away)
        there = joints_of(
            *(_moved(one, turn, shift) for one in add),
            take_away=tuple(_moved(one, turn, shift) for one in away),
        )
        assert len(there.panels) == len(here.panels)
        for one, other in zip(_sizes(here), _sizes(there), strict=True):
            assert one == pytest.approx(other, abs=HAIR_FT)
        assert float(there.length_ft) == pytest.approx(float(here.length_ft), abs=0.2)

    def test_twice_the_same(self):
        """The same slab gives the same plan, to the last figure."""
        add, away = DECKS[2]
        assert joints_of(*add, take_away=away) == joints_of(*add, take_away=away)
