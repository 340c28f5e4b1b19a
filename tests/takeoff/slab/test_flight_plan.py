"""Where steps lie on the plan: worked by hand from the edge that was named."""

import pytest

from quotegen.takeoff.plan_geometry import FlightPlan
from tests.pricing import shop

STEPS = {"risers": ["6 in", "6 in"], "width": "4 ft", "tread": "12 in"}


def _laid(tmp_path, at: list[str], against: str = "against_house") -> FlightPlan | None:
    patio = {"id": "patio", "use": "patio", "fall": "1/4 in per ft", "falls_toward": "top",
             "add": [{"rectangle": "20 ft x 10 ft", against: "bottom"}],
             "steps": {**STEPS, **({"at": at} if at else {})}}  # fmt: skip
    results = shop.results(tmp_path, shop.job(patio), rate_book=shop.book())
    return results.takeoff.placements[0].flight


def test_at_the_house_they_stand_on_the_slab(tmp_path):
    """Two treads of 12 in, 4 ft wide, from the wall out to 2 ft on the slab."""
    flight = _laid(tmp_path, ["10 ft", "0"])
    assert flight is not None
    assert flight.at_house
    corners = [corner for ring in flight.treads_ft for corner in ring]
    assert {round(x, 6) for x, _ in corners} == {8, 12}
    assert [sorted({round(y, 6) for _, y in ring}) for ring in flight.treads_ft] == [[0, 1], [1, 2]]


def test_at_an_open_edge_they_lie_beside_the_slab(tmp_path):
    """At the far side, 10 ft out, they run on to 12 ft."""
    flight = _laid(tmp_path, ["10 ft", "10 ft"])
    assert flight is not None
    assert not flight.at_house
    assert {round(y, 6) for ring in flight.treads_ft for _, y in ring} == {10, 11, 12}


def test_nobody_said_where(tmp_path):
    """Without a place they are on no plan."""
    assert _laid(tmp_path, []) is None


def test_how_far_the_place_was_from_the_edge(tmp_path):
    """4 in over the edge is a slip of the tape, and is told."""
    flight = _laid(tmp_path, ["10 ft", "4 in"])
    assert flight is not None
    assert flight.off_edge_ft == pytest.approx(1 / 3)
