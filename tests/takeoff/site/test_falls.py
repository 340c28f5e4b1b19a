"""Heights of the finished top."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from quotegen.quantity import Length, rounded
from quotegen.reading.files.shapes import Side
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.site.falls import falls_of, inches_per_foot, surface_of
from tests.takeoff.plans import placement, takeoff
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


@pytest.mark.parametrize(
    ("toward", "low", "high"),
    [
        (Side.BOTTOM, {(0, 0), (24, 0)}, {(0, 16), (24, 16)}),
        (Side.TOP, {(0, 16), (24, 16)}, {(0, 0), (24, 0)}),
        (Side.LEFT, {(0, 0), (0, 16)}, {(24, 0), (24, 16)}),
        (Side.RIGHT, {(24, 0), (24, 16)}, {(0, 0), (0, 16)}),
    ],
)
def test_a_slab_is_lowest_on_the_side_it_falls_toward(
    toward: Side, low: set[Point], high: set[Point]
):
    """At 1/4 in per ft the near corners lie at zero, those toward the side the whole fall lower."""
    spec = _falling(toward)
    measured = takeoff(spec).placements[0]
    surface = surface_of(spec, measured)
    assert surface is not None
    corners = falls_of(spec, measured, surface).corners
    run_ft = 24 if toward in {Side.LEFT, Side.RIGHT} else 16
    assert {corner.at_ft for corner in corners if corner.height_ft == 0} == high
    at_the_bottom = -rounded(Fraction(run_ft, 48), 3)
    assert {corner.at_ft for corner in corners if corner.height_ft == at_the_bottom} == low


def test_water_runs_down_in_the_named_direction():
    """Along the direction of the fall the top drops by the fall; across it, not at all."""
    spec = _falling(Side.RIGHT)
    surface = surface_of(spec, takeoff(spec).placements[0])
    assert surface is not None
    assert inches_per_foot(surface.fall_along((12, 8), (1, 0))) == Fraction(1, 4)
    assert inches_per_foot(surface.fall_along((12, 8), (-1, 0))) == Fraction(-1, 4)
    assert inches_per_foot(surface.fall_along((12, 8), (0, 1))) == 0


def _falling(toward: Side) -> PlacementSpec:
    """A slab of 24 ft by 16 ft with a fall of 1/4 in per ft toward a side."""
    spec = placement({"rectangle": "24 ft x 16 ft"})
    fall = {"fall": Length(Fraction(1, 48)), "falls_toward": toward}
    return replace(spec, typed=spec.typed.model_copy(update=fall))
