"""Runs of edge and their sums."""

from decimal import Decimal

import pytest

from quotegen.takeoff.plan_geometry import Against
from quotegen.takeoff.slab.edges import edge_runs, mark_of
from tests.takeoff.plans import feet, outline, rounded_point, slab


def _deck():
    arc = {"to": feet((24, 0)), "rise": "3 ft"}
    house = {"to": feet((0, 16)), "against_house": "yes"}
    pool = {"rectangle": "8 ft x 6 ft", "at": feet((8, 5)), "is": "pool"}
    tree = {"ellipse": "2 ft x 1 ft", "at": feet((3, 8))}
    return slab(outline((0, 0), arc, (24, 16), house), take_away=(pool, tree))


def test_runs_are_lettered_outer_first():
    """Letters go round the outside first, then round each cut-out."""
    runs = edge_runs(_deck().boundary)
    assert [run.mark for run in runs] == list("ABCDEFGHI")
    assert [run.inner for run in runs] == [False] * 4 + [True] * 5
    assert [run.against for run in runs][2:5] == [Against.HOUSE, Against.OPEN, Against.POOL]


def test_a_run_says_how_to_set_it_out():
    """An arc of chord 24 and rise 3 has a radius of 25.5 ft and is 24.99 ft long."""
    arc = edge_runs(_deck().boundary)[0]
    assert (arc.chord_ft, arc.rise_ft, arc.radius_ft) == (
        Decimal("24.00"), Decimal("3.00"), Decimal("25.50"))  # fmt: skip
    assert arc.length_ft == Decimal("24.99")
    assert arc.is_curved
    assert len(arc.points_ft) > 2


def test_a_straight_run_has_two_points():
    """A straight run is drawn from end to end, rises by nothing and has no radius."""
    side = edge_runs(_deck().boundary)[1]
    assert [rounded_point(point) for point in side.points_ft] == [(24, 0), (24, 16)]
    assert side.rise_ft == 0
    assert side.radius_ft is None
    assert not side.is_curved


def test_an_oval_run_is_curved_without_a_radius():
    """An ellipse has no one radius, and is curved edge all the same."""
    oval = edge_runs(_deck().boundary)[-1]
    assert (oval.radius_ft, oval.is_oval, oval.is_curved) == (None, True, True)


@pytest.mark.parametrize(
    ("number", "mark"), [(0, "A"), (25, "Z"), (26, "AA"), (51, "AZ"), (52, "BA"), (702, "AAA")]
)
def test_marks_go_on_past_z(number: int, mark: str):
    """After Z come AA, AB and so on."""
    assert mark_of(number) == mark
