"""The remeasure: rates hold, fixed lines do not move, and it works both ways."""

from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from quotegen.money import total
from quotegen.pricing.contract.records import Remeasure
from tests.pricing import shop
from tests.pricing.signed import BOOK, QUOTED, RATES, contract, measured


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


FOLLOWING = {**RATES, "fuel": shop.share("2 %", "everything"), "way": shop.share("10 %", "travel")}
# 1100 of work: fuel 22.00, way 10.00; 3 % of 1132 off is 33.96; 10 % tax 109.80; 1207.84.


def _following(tmp_path, area: str, **more) -> Remeasure:
    company = shop.company(tax=[shop.tax("10 %", "everything")], **more)
    job = shop.job(discount={"name": "Neighbors", "share": "3 %"}, measured=measured(area))
    made = shop.results(tmp_path, job, rate_book=shop.book(FOLLOWING), company=company).contract
    assert made.remeasure is not None
    return made.remeasure


def test_what_follows_other_lines_follows_the_measure(tmp_path):
    """10 sq ft more are $30: 2 % fuel 0.60, less 3 % 0.92, and 10 % tax on 29.68."""
    adjusted = _following(tmp_path, "210")
    moved = {line.id: str(line.change) for line in adjusted.lines}
    assert moved == {
        "base.patio": "20.00", "edge.patio": "0.00", "plain.patio": "10.00",
        "fuel": "0.60", "discount": "-0.92", "tax.s": "2.97",
    }  # fmt: skip
    assert (str(adjusted.unmoved), str(adjusted.previous_total)) == ("210.00", "1207.84")
    assert str(adjusted.revised_total) == "1240.49"


def test_the_new_total_is_rounded_by_the_same_rule(tmp_path):
    """1207.84 is quoted as 1210, 1240.49 becomes 1240: the rounding goes from 2.16 to -0.49."""
    adjusted = _following(tmp_path, "210", round_total_to="$10")
    assert (str(adjusted.previous_total), str(adjusted.revised_total)) == ("1210.00", "1240.00")
    (line,) = (line for line in adjusted.lines if line.id == "rounding")
    assert (str(line.before), str(line.after)) == ("2.16", "-0.49")
    assert adjusted.unmoved + sum(line.after for line in adjusted.lines) == 1240


def test_a_rounding_that_appears_only_after_measuring(tmp_path):
    """1100 is round as quoted; with 1130.25 the new line takes the quarter off."""
    made = shop.results(tmp_path, shop.job(measured=measured("210.1")), rate_book=BOOK,
                        company=shop.company(round_total_to="$10")).contract  # fmt: skip
    assert made.remeasure is not None
    assert str(made.remeasure.lines[-1].change) == "-0.30"  # 210.1 sq ft at $3 are 630.30
    assert str(made.remeasure.revised_total) == "1130.00"


def test_a_discount_as_a_sum_stays(tmp_path):
    """$100 off stay $100 off, among what does not move: trips 100, lawn 100, less 100."""
    made = contract(tmp_path, measured=measured("210"),
                    discount={"name": "Neighbors", "amount": "$100"}).remeasure  # fmt: skip
    assert made is not None
    assert (str(made.unmoved), str(made.revised_total)) == ("100.00", "1030.00")


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=15)
@given(area=st.decimals(min_value=20, max_value=2_000, places=1))
def test_payments_always_add_up(tmp_path, area: Decimal):
    """Whatever is measured, the revised payments are the revised total."""
    adjusted = contract(tmp_path, measured=measured(str(area))).remeasure
    assert adjusted is not None
    assert total(tuple(p.after for p in adjusted.payments)) == adjusted.revised_total
