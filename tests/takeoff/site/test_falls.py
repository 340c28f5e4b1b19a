"""Heights of the finished top."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from quotegen.quantity import Length, rounded
from quotegen.reading.files.shapes import EdgeKind, Side
from quotegen.reading.files.site_parts import Drain, FallsFrom
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.site.falls import drop_of, falls_of, inches_per_foot, surface_of
from quotegen.takeoff.slab.edges import runs_along
from tests.takeoff.plans import placement, takeoff
from tests.takeoff.site_world import HEAD, figured

DRAINED = "    drained_edges: [house edge]\n"
AWAY = "    fall: 1/2 in per ft\n    falls_away_from: pool\n"


def test_heights_of_a_plane(tmp_path: Path):
    """30 ft at 1/4 in per ft fall 7-1/2 in, counted from a stated height."""
    found = figured(
        tmp_path,
        "    stated_height: {at: [0, 0], height: -6 in, of: the door sill}\n",
        head=HEAD.replace(", is: pool", ""),
        falls="    fall: 1/4 in per ft\n    falls_toward: top\n",
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
    found = figured(tmp_path, DRAINED, falls=AWAY)
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
    fall = {"fall": Length(Fraction(1, 48)), "falls_toward": (toward,)}
    return replace(spec, typed=spec.typed.model_copy(update=fall))


def test_two_planes_meet_at_a_drain_between_pool_and_house(tmp_path: Path):
    """Pool and house are level and equally high; half way, 4 ft from both, it is 1 in lower."""
    results = figured(tmp_path).results
    assert results is not None
    surface = surface_of(results.job.placements[0], results.takeoff.placements[0])
    assert surface is not None
    for at, height_in in (((20, 0), 0), ((20, 8), 0), ((20, 4), -1), ((20, 30), -2)):
        assert rounded(surface.height_ft(at) * 12, 6) == height_in
    measured = results.takeoff.placements[0]
    level = (
        *runs_along(measured.edges, EdgeKind.POOL),
        *runs_along(measured.edges, EdgeKind.HOUSE),
    )
    assert {drop_of(run, surface).drop_ft for run in level} == {Decimal("0.000")}


def test_a_drain_nearer_to_the_house_sets_the_house_lower():
    """A drain 2 ft from house and 6 ft from pool: at 1/4 in per ft the house is 1 in lower."""
    spec = placement(
        {"rectangle": "44 ft x 30 ft", "against_house": "bottom"},
        take_away=({"rectangle": "28 ft x 14 ft", "at": ["8 ft", "8 ft"], "is": "pool"},),
    )
    drain = {"from": ["8 ft", "2 ft"], "to": ["36 ft", "2 ft"]}
    typed = {
        "fall": Length(Fraction(1, 48)),
        "falls_away_from": (FallsFrom.POOL, FallsFrom.HOUSE),
        "drains": (Drain.model_validate(drain),),
    }
    spec = replace(spec, typed=spec.typed.model_copy(update=typed))
    surface = surface_of(spec, takeoff(spec).placements[0])
    assert surface is not None
    assert rounded(surface.height_ft((20, 8)) * 12, 6) == 0
    assert rounded(surface.height_ft((20, 2)) * 12, 6) == Decimal("-1.5")
    assert rounded(surface.height_ft((20, 0)) * 12, 6) == -1


@pytest.mark.parametrize(
    ("sides", "at", "height_in"),
    [
        ((Side.LEFT, Side.RIGHT), (12, 5), 0),  # the ridge, half way along 24 ft
        ((Side.LEFT, Side.RIGHT), (0, 5), -3),
        ((Side.LEFT, Side.RIGHT), (24, 5), -3),
        ((Side.TOP, Side.RIGHT), (0, 0), 0),
        ((Side.TOP, Side.RIGHT), (24, 16), -10),  # 24 ft and 16 ft at 1/4 in per ft
    ],
)
def test_a_slab_falls_to_two_sides(sides: tuple[Side, ...], at: Point, height_in: int):
    """Two opposite sides have a ridge half way; two that meet, one plane that falls both ways."""
    spec = placement({"rectangle": "24 ft x 16 ft"})
    fall = {"fall": Length(Fraction(1, 48)), "falls_toward": sides}
    spec = replace(spec, typed=spec.typed.model_copy(update=fall))
    surface = surface_of(spec, takeoff(spec).placements[0])
    assert surface is not None
    assert rounded(surface.height_ft(at) * 12, 6) == height_in
