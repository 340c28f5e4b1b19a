"""Whether prepared ground is large enough for the deck and its margin."""

from decimal import Decimal
from pathlib import Path

from tests.takeoff.site_world import figured


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
