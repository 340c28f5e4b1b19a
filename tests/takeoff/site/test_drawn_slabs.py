"""Slabs as polygons again, from the rings of their records."""

import pytest

from quotegen.takeoff.site.drawn_slabs import region_of, regions_of, rings_of
from tests.takeoff.plans import feet, placement, takeoff

POOL = {"rectangle": "8 ft x 6 ft", "at": feet((4, 4)), "is": "pool"}
DECK = placement({"rectangle": "24 ft x 16 ft"}, take_away=(POOL,))
WALK = placement({"rectangle": "4 ft x 30 ft", "at": feet((24, 0))}, name="walk", number=1)


def test_a_slab_has_its_measured_area_again():
    """The pool is left out of it."""
    measured = takeoff(DECK).placements[0]
    assert region_of(measured).area == pytest.approx(24 * 16 - 8 * 6)
    assert len(rings_of(region_of(measured))) == 2


def test_all_slabs_of_a_job_are_one_region():
    """A walk beside the deck is joined to it."""
    regions = regions_of(takeoff(DECK, WALK))
    assert regions.area == pytest.approx(24 * 16 - 8 * 6 + 120)
    assert regions.geom_type == "Polygon"
