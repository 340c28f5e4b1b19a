"""The takeoff repeated on the set forms."""

from decimal import Decimal
from typing import Any

from quotegen.reading.files.after_signing import Measured
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.files.site_parts import DeepEdge
from quotegen.takeoff.records import PlacementTakeoff
from quotegen.takeoff.remeasure import remeasure
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import feet, job, placement
from tests.world import retyped

DECK = placement({"rectangle": "24 ft x 16 ft"}, name="deck")
POOL = {"circle": {"radius": "4 ft"}, "at": feet((12, 8)), "is": "pool"}


def _measured(**deck: Any) -> Measured:
    return Measured.model_validate({"date": "2026-06-09", "placements": {"deck": deck}})


def _deck(**typed: Any) -> PlacementTakeoff:
    takeoff, problems = remeasure(job(DECK), _measured(**typed), load_rules())
    assert problems == ()
    assert takeoff is not None
    return takeoff.placement("deck")


def test_shapes_measured_again_take_the_place_of_the_quoted_ones():
    """The forms stand 6 in wider: 24-1/2 by 16 ft, with all that follows from it."""
    deck = _deck(add=[{"rectangle": "24 ft 6 in x 16 ft"}])
    assert deck.area_sqft == Decimal("392.0")
    assert deck.edges_ft[EdgeKind.OUTER] == Decimal("81.0")
    assert deck.volume_cuyd == Decimal("392.0") * 4 / 324


def test_an_area_worked_out_on_site_is_rounded_once():
    """390.04 sq ft count as 390.0, and the volume follows; edges that are not typed stay."""
    deck = _deck(area="390.04 sq ft", edges={"formed edge": "81 ft"})
    assert deck.area_sqft == Decimal("390.0")
    assert deck.edges_ft[EdgeKind.FORMED] == Decimal("81.0")
    assert deck.edges_ft[EdgeKind.OUTER] == Decimal("80.0")
    assert abs(deck.volume_cuyd - Decimal("390.0") * 4 / 324) < Decimal("1e-20")
    names = [step.name for step in deck.working]
    assert names == ["Area of Deck, worked out on site", "Volume", "Concrete to order"]


def test_the_order_follows_what_was_measured():
    """390 sq ft at 4 in are 4.815 cu yd and with 7 % 5.15: 5.25 for the slab and for the job."""
    takeoff, _ = remeasure(job(DECK), _measured(area="390 sq ft"), load_rules())
    assert takeoff is not None
    assert takeoff.order_cuyd == takeoff.placement("deck").order_cuyd == Decimal("5.25")
    assert abs(takeoff.volume_cuyd - Decimal(390) * 4 / 324) < Decimal("1e-20")


def test_a_deep_edge_stays_where_an_area_is_typed():
    """384 sq ft quoted with an edge 1 ft wide and 8 in deeper: the measured volume has it too."""
    edge = {"along": "outer edge", "width": "1 ft", "depth": "12 in"}
    deep = retyped(DECK, thickened_edge=DeepEdge.model_validate(edge))
    takeoff, _ = remeasure(job(deep), _measured(area="390 sq ft"), load_rules())
    assert takeoff is not None
    strip = 24 * 16 - 22 * 14
    assert abs(takeoff.volume_cuyd - Decimal(390 * 4 + strip * 8) / 324) < Decimal("1e-6")


def test_a_fault_of_the_forms_names_their_place():
    """A pool larger than the measured deck is told under `measured`."""
    again = _measured(add=[{"rectangle": "14 ft x 10 ft"}], take_away=[POOL])
    takeoff, problems = remeasure(job(DECK), again, load_rules())
    assert takeoff is None
    assert [problem.path for problem in problems] == ["measured.placements.deck.take_away[0]"]
