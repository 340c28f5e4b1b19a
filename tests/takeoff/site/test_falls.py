"""Heights of the finished top, and what is said of prepared ground."""

from decimal import Decimal
from pathlib import Path

from tests.takeoff.site_world import figured

DRAINED = "    drained_edges: [house edge, pool edge]\n"


def test_heights_of_a_plane(tmp_path: Path):
    """30 ft at 1/4 in per ft fall 7-1/2 in, counted from a stated height."""
    found = figured(
        tmp_path,
        "    fall: 1/4 in per ft\n    falls_toward: top\n"
        "    stated_height: {at: [0, 0], height: -6 in, of: the door sill}\n" + DRAINED,
    )
    assert found.results is not None
    assert found.problems == ()
    (falls,) = found.results.takeoff.falls
    assert falls.of == "the door sill"
    heights = sorted({corner.height_ft for corner in falls.corners})
    assert heights == [Decimal("-1.125"), Decimal("-0.500")]
    assert max(edge.drop_ft for edge in falls.edges) == Decimal("0.625")


def test_heights_away_from_a_pool(tmp_path: Path):
    """Water runs away on all sides: the pool's edge is level and highest, at zero."""
    found = figured(tmp_path, "    fall: 1/2 in per ft\n    falls_away_from: pool\n" + DRAINED)
    assert found.results is not None
    (falls,) = found.results.takeoff.falls
    at_pool = [e for e in falls.edges if e.highest_ft == 0]
    assert {e.drop_ft for e in at_pool} == {Decimal("0.000")}
    assert len(at_pool) == 4
    corner = min(corner.height_ft for corner in falls.corners)
    assert corner == Decimal("-0.471")  # 8 ft x root 2 at 1/2 in per ft


def test_prepared_ground_that_is_large_enough(tmp_path: Path):
    """Ground with the margin past the forms, and none at the house, says nothing."""
    ground = (
        "prepared_ground: {add: [{rectangle: 45 ft x 30 ft 6 in, at: [-6 in, 0]}], margin: 6 in}\n"
    )
    found = figured(tmp_path, ground)
    assert found.results is not None
    assert found.results.takeoff.prepared is not None
    assert found.results.takeoff.prepared.short_sqft == 0
    assert found.problems == ()


def test_prepared_ground_that_is_too_small(tmp_path: Path):
    """Ground that stops 1 ft short of the margin all along one side lacks that strip."""
    ground = (
        "prepared_ground: {add: [{rectangle: 44 ft x 30 ft 6 in, at: [-6 in, 0]}], margin: 6 in}\n"
    )
    found = figured(tmp_path, ground)
    assert found.results is not None
    assert found.results.takeoff.prepared is not None
    assert found.results.takeoff.prepared.short_sqft == Decimal("30.5")
    assert [p.code for p in found.problems] == ["ground-too-small"]
    assert "30.5 sq ft" in found.problems[0].message
