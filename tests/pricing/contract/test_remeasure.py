"""The remeasure: rates hold, fixed lines do not move, and it works both ways."""

from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from quotegen.money import total
from tests.pricing.signed import QUOTED, contract, measured


def test_only_measured_lines_move(tmp_path):
    """Ten more square feet move base and finish by $3.00 each, and no trip and no allowance."""
    adjusted = contract(tmp_path, measured=measured("210")).remeasure
    assert adjusted is not None
    moved = {line.id: str(line.change) for line in adjusted.lines}
    assert moved == {"base.patio": "20.00", "edge.patio": "0.00", "plain.patio": "10.00"}
    assert str(adjusted.unmoved) == "200.00"
    assert (str(adjusted.previous_total), str(adjusted.revised_total)) == (QUOTED, "1130.00")


def test_an_edge_moves_with_its_own_length(tmp_path):
    """An edge that was taped in the forms is priced at its rate; one not typed stays."""
    adjusted = contract(tmp_path, measured=measured("200", formed_edge="62 ft")).remeasure
    assert adjusted is not None
    assert {line.id: str(line.change) for line in adjusted.lines}["edge.patio"] == "10.00"


def test_shapes_measured_again(tmp_path):
    """Shapes in the forms are taken off like the quote's, edges included."""
    again = {"patio": {"add": [{"rectangle": "21 ft x 10 ft"}]}}
    adjusted = contract(tmp_path, measured={"date": "2026-06-09", "placements": again}).remeasure
    assert adjusted is not None
    assert [str(line.difference) for line in adjusted.lines] == ["10.0", "2.0", "10.0"]
    assert str(adjusted.change) == "40.00"


def test_the_estimate_changes_nothing(tmp_path):
    """Measuring what was quoted leaves the total and every payment as it was."""
    adjusted = contract(tmp_path, measured=measured("200")).remeasure
    assert adjusted is not None
    assert str(adjusted.change) == "0.00"
    assert all(payment.before == payment.after for payment in adjusted.payments)
    assert not adjusted.needs_signatures


@pytest.mark.parametrize(("area", "needs"), [("236.6", False), ("236.7", True), ("150", False)])
def test_when_both_must_sign(tmp_path, area: str, *, needs: bool):
    """10 % of $1,100 is $110: 36.6 sq ft at $3 is under it, 36.7 over; a fall needs none."""
    adjusted = contract(tmp_path, measured=measured(area)).remeasure
    assert adjusted is not None
    assert adjusted.needs_signatures is needs


@pytest.mark.parametrize(
    ("edge", "needs"), [("69 ft 11 in", False), ("70 ft", False), ("70 ft 3 in", True)]
)
def test_a_rise_by_just_the_promised_share_needs_no_signature(tmp_path, edge: str, *, needs: bool):
    """20 sq ft at $3 and 10 ft at $5 are $110, just 10 % of $1,100: only above it both sign."""
    adjusted = contract(tmp_path, measured=measured("220", formed_edge=edge)).remeasure
    assert adjusted is not None
    assert (adjusted.change > 110, adjusted.needs_signatures) == (needs, needs)


@pytest.mark.parametrize(
    ("area", "outside"),
    [("230.0", "0.00"), ("230.1", "0.10"), ("250", "20.00"), ("200", "0.00"),
     ("170.0", "0.00"), ("169.9", "0.10"), ("150", "20.00")],
)  # fmt: skip
def test_the_area_outside_the_band(tmp_path, area: str, outside: str):
    """15 % of 200 sq ft is 30: outside it lies what is over 230, and what is under 170."""
    adjusted = contract(tmp_path, measured=measured(area)).remeasure
    assert adjusted is not None
    assert [str(one.outside) for one in adjusted.areas] == [outside]


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=15)
@given(area=st.decimals(min_value=20, max_value=2_000, places=1))
def test_payments_always_add_up(tmp_path, area: Decimal):
    """Whatever is measured, the revised payments are the revised total."""
    adjusted = contract(tmp_path, measured=measured(str(area))).remeasure
    assert adjusted is not None
    assert total(tuple(p.after for p in adjusted.payments)) == adjusted.revised_total
