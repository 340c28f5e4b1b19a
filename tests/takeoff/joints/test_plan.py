"""The joint plan of one placement."""

from decimal import Decimal

import pytest

from quotegen.quantity import Units
from quotegen.reading.files.shapes import EdgeKind
from tests.takeoff.plans import feet, joints_of, placement, takeoff

POOL = {"rectangle": "28 ft x 14 ft", "at": feet((8, 9)), "is": "pool"}
DECK = {"rectangle": "45 ft x 30 ft", "against_house": "bottom"}


def test_a_thin_slab_goes_by_its_thickness_alone():
    """Under 3 in the table says nothing, and 30 times the thickness is left."""
    plan = joints_of({"rectangle": "20 ft x 20 ft"}, thickness_in="2")
    assert plan.spacing_ft == 5
    assert plan.spacing_rules == ("joint_spacing_multiplier",)


def test_isolation_is_along_house_and_pool():
    """Soft strips run along the house and round the pool."""
    assert joints_of(DECK, take_away=(POOL,)).isolation_ft == Decimal("129.0")  # 45 + 84


@pytest.mark.parametrize("units", Units)
def test_joint_length_is_a_quantity_with_its_working(units: Units):
    """A rate may be priced by the joint length, and its working says how it came about."""
    (deck,) = takeoff(placement({"rectangle": "36 ft x 20 ft"}), units=units).placements
    assert deck.edges_ft[EdgeKind.JOINT] == deck.joints.length_ft == Decimal("96.0")
    assert deck.edges_m[EdgeKind.JOINT] == deck.joints.length_m == Decimal("29.26")
    (step,) = (step for step in deck.working if step.name == "Joint length")
    assert len(step.inputs) == len(deck.joints.joints) == 4
    assert step.value in {deck.joints.length_ft, deck.joints.length_m}
