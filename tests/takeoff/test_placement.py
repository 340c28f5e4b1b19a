"""One placement, rounded as printed."""

from decimal import Decimal

import pytest

from quotegen.quantity import Units
from quotegen.reading.files.shapes import EdgeKind
from quotegen.working import Step
from tests.takeoff.plans import feet, placement, rounded_point, takeoff

POOL = {"rectangle": "20 ft x 10 ft", "at": feet((7, 3)), "is": "pool", "corner_radius": "5 ft"}
DECK = placement(
    {"rectangle": "34 ft x 16 ft", "against_house": "bottom"}, take_away=(POOL,), name="deck"
)


def _all(steps: tuple[Step, ...]) -> set[Decimal]:
    return {step.value for step in steps} | {
        value for step in steps for value in _all(step.inputs)}  # fmt: skip


def test_quantities_are_rounded_once():
    """Areas and edges are what the exact figures round to."""
    (deck,) = takeoff(DECK).placements
    assert deck.area_sqft == Decimal("365.5")  # 544 - 200 + 25 (4 - pi)
    assert deck.area_m2 == Decimal("33.95")
    assert deck.edges_ft[EdgeKind.POOL] == Decimal("51.4")  # 20 + 10 pi
    assert deck.edges_m[EdgeKind.POOL] == Decimal("15.67")
    assert deck.edges_ft[EdgeKind.FORMED] == Decimal("66.0")
    assert set(deck.edges_ft) == set(deck.edges_m) == set(EdgeKind)


def test_the_plan_has_every_ring():
    """The drawing gets the outer ring, the cut-out and the pool."""
    (deck,) = takeoff(DECK).placements
    corners = [rounded_point(point) for point in deck.outer_ft[0]]
    assert corners == [(0, 0), (34, 0), (34, 16), (0, 16)]
    assert len(deck.inner_ft) == len(deck.pools_ft) == 1
    assert len(deck.pools_ft[0]) > 20


@pytest.mark.parametrize("units", Units)
def test_every_quantity_stands_in_the_working(units: Units):
    """What a page may print in the units of the job was recorded where it was worked out."""
    (deck,) = takeoff(DECK, units=units).placements
    values = _all(deck.working)
    edges = deck.edges_m if units is Units.METRIC else deck.edges_ft
    area = deck.area_m2 if units is Units.METRIC else deck.area_sqft
    assert {area, deck.area_sqft, deck.volume_cuyd, deck.order_cuyd} <= values
    assert {length for length in edges.values() if length} <= values


def test_the_volume_follows_the_printed_area():
    """Volume is the printed area times the thickness, so a reader can redo it."""
    (deck,) = takeoff(DECK).placements
    assert deck.volume_cuyd == Decimal("365.5") * 4 / 324
