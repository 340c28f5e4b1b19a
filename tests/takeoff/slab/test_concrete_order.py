"""What to order, with its working."""

from decimal import Decimal

import pytest

from tests.takeoff.plans import placement, takeoff

SLAB = {"rectangle": "30 ft x 20 ft"}


@pytest.mark.parametrize(
    ("allowance", "ordered"), [("4 %", "7.75"), ("7 %", "8.00"), ("10 %", "8.25"), ("0 %", "7.50")]
)
def test_the_allowance_is_added_and_rounded_up_once(allowance: str, ordered: str):
    """600 sq ft at 4 in is 7.407 cu yd; each allowance rounds up to its own quarter."""
    found = takeoff(placement(SLAB), allowance=allowance)
    assert found.order_cuyd == Decimal(ordered)


def test_the_working_names_its_rules():
    """Volume and order say which trade rules they rest on."""
    volume, order = takeoff(placement(SLAB)).placements[0].working[-2:]
    assert volume.rules == ("sqft_inches_per_cubic_yard",)
    assert order.rules == ("concrete_order_allowance", "concrete_order_increment")
    assert [step.name for step in volume.inputs] == ["Area of Deck", "Thickness", "One cubic yard"]
    assert [str(step.value) for step in order.inputs[1:]] == ["7.00", "0.25"]


def test_the_volume_can_be_done_again_from_its_inputs():
    """Area as printed times thickness over 324 is the volume."""
    volume = takeoff(placement({"circle": {"diameter": "12 ft"}})).placements[0].working[-2]
    area, thickness, fills = (step.value for step in volume.inputs)
    assert volume.value == area * thickness / fills
    assert area == Decimal("113.1")
