"""The running contract: adjustment, changes, payments, balance."""

from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from quotegen.money import total
from quotegen.pricing.contract.records import Contract
from tests.pricing import shop

RATES = {
    "base": shop.rate("$2.00 / sq ft"),
    "edge": shop.rate("$5.00 / ft", "forms", of="formed edge"),
    "trip": shop.rate("$50 / visit", "travel"),
    "step": shop.rate("$200 each", "steps", applies="asked"),
    "lawn": shop.rate("$100 lump", "protection", basis="allowance"),
}
BOOK = shop.book(RATES)
# 200 sq ft: base 400 + finish 200; edge 60 ft 300; trips 2 x 50; lawn 100.
QUOTED = "1100.00"


def contract(folder: Path, **more: Any) -> Contract:
    """Return the contract of a patio of 20 ft x 10 ft."""
    return shop.results(folder, shop.job(**more), rate_book=BOOK).contract


def measured(area: str, **edges: str) -> dict[str, Any]:
    """Return a remeasure of the patio."""
    named = {name.replace("_", " "): length for name, length in edges.items()}
    placement = {"area": f"{area} sq ft", **({"edges": named} if named else {})}
    return {"date": "2026-06-09", "placements": {"patio": placement}}


class TestRemeasure:
    """ "Rates hold; fixed lines do not move; it works both ways.\""""

    def test_only_measured_lines_move(self, tmp_path):
        """Ten more square feet move base and finish by $3.00 each, and no trip and no allowance."""
        adjusted = contract(tmp_path, measured=measured("210")).remeasure
        assert adjusted is not None
        moved = {line.id: str(line.change) for line in adjusted.lines}
        assert moved == {"base.patio": "20.00", "edge.patio": "0.00", "plain.patio": "10.00"}
        assert str(adjusted.unmoved) == "200.00"
        assert (str(adjusted.previous_total), str(adjusted.revised_total)) == (QUOTED, "1130.00")

    def test_an_edge_moves_with_its_own_length(self, tmp_path):
        """An edge that was taped in the forms is priced at its rate; one not typed stays."""
        adjusted = contract(tmp_path, measured=measured("200", formed_edge="62 ft")).remeasure
        assert adjusted is not None
        assert {line.id: str(line.change) for line in adjusted.lines}["edge.patio"] == "10.00"

    def test_shapes_measured_again(self, tmp_path):
        """Shapes in the forms are taken off like the quote's, edges included."""
        again = {"patio": {"add": [{"rectangle": "21 ft x 10 ft"}]}}
        adjusted = contract(
            tmp_path, measured={"date": "2026-06-09", "placements": again}
        ).remeasure
        assert adjusted is not None
        assert [str(line.difference) for line in adjusted.lines] == ["10.0", "2.0", "10.0"]
        assert str(adjusted.change) == "40.00"

    def test_the_estimate_changes_nothing(self, tmp_path):
        """Measuring what was quoted leaves the total and every payment as it was."""
        adjusted = contract(tmp_path, measured=measured("200")).remeasure
        assert adjusted is not None
        assert str(adjusted.change) == "0.00"
        assert all(payment.before == payment.after for payment in adjusted.payments)
        assert not adjusted.needs_signatures

    @pytest.mark.parametrize(("area", "needs"), [("236.6", False), ("236.7", True), ("150", False)])
    def test_when_both_must_sign(self, tmp_path, area: str, *, needs: bool):
        """10 % of $1,100 is $110: 36.6 sq ft at $3 is under it, 36.7 over; a fall needs none."""
        adjusted = contract(tmp_path, measured=measured(area)).remeasure
        assert adjusted is not None
        assert adjusted.needs_signatures is needs

    @settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=15)
    @given(area=st.decimals(min_value=20, max_value=2_000, places=1))
    def test_payments_always_add_up(self, tmp_path, area: Decimal):
        """Whatever is measured, the revised payments are the revised total."""
        adjusted = contract(tmp_path, measured=measured(str(area))).remeasure
        assert adjusted is not None
        assert total(tuple(p.after for p in adjusted.payments)) == adjusted.revised_total


class TestPayments:
    """ "What is already paid stays paid; a deposit is not raised.\""""

    def test_paid_stays_paid(self, tmp_path):
        """A payment that came in keeps its sum, even where it is not what was asked."""
        made = contract(
            tmp_path,
            paid=[{"payment": "deposit", "date": "2026-05-20", "amount": "$125.00"}],
            measured=measured("300"),
        )
        assert made.remeasure is not None
        first = made.remeasure.payments[0]
        assert (str(first.after), str(first.paid)) == ("125.00", "125.00")
        assert (str(made.paid), str(made.balance)) == ("125.00", "1275.00")

    def test_a_deposit_is_not_raised(self, tmp_path):
        """The total rises by $300; the unpaid deposit stays at its $110.00."""
        adjusted = contract(tmp_path, measured=measured("300")).remeasure
        assert adjusted is not None
        assert str(adjusted.payments[0].after) == "110.00"

    def test_a_deposit_may_fall(self, tmp_path):
        """A smaller job asks for a smaller deposit."""
        adjusted = contract(tmp_path, measured=measured("100")).remeasure
        assert adjusted is not None
        assert str(adjusted.payments[0].after) == "80.00"


class TestChanges:
    """Numbered changes run the total on, each from where the one before left it."""

    def test_running_total(self, tmp_path):
        """A rate of the book, a sum, and a sum taken off: 1,100 + 400 + 75.50 - 50."""
        made = contract(
            tmp_path,
            accepted={"date": "2026-05-20"},
            changes=[
                change(1, rate="step", quantity="2"),
                change(2, amount="$75.50", days="1"),
                change(3, amount="-$50"),
            ],
        )
        assert [str(c.amount) for c in made.changes] == ["400.00", "75.50", "-50.00"]
        assert [str(c.previous_total) for c in made.changes] == [QUOTED, "1500.00", "1575.50"]
        assert (str(made.total), made.extra_days) == ("1525.50", 1)
        for one in made.changes:
            assert total(tuple(p.after for p in one.payments)) == one.revised_total

    def test_after_measuring(self, tmp_path):
        """Changes start from the measured total."""
        made = contract(
            tmp_path,
            accepted={"date": "2026-05-20"},
            measured=measured("210"),
            changes=[change(1, amount="$70")],
        )
        assert str(made.total) == "1200.00"

    def test_accepted_with_another_finish_and_an_extra(self, tmp_path):
        """The contract is on what was accepted, not on what the quote put first."""
        book = shop.book(RATES | shop.RINSE_AND_FILM, {"plain": shop.PLAIN, "fancy": shop.FANCY})
        job = shop.job(
            compare=["fancy"],
            extras={"step": "1"},
            accepted={"date": "2026-05-20", "finish": "fancy", "extras": ["step"]},
        )
        results = shop.results(tmp_path, job, rate_book=book)
        fancy = results.quote.finishes[1]
        assert results.contract.quoted_total == fancy.total + Decimal(200)


def change(number: int, **more: str) -> dict[str, str]:
    """Return one change order as typed."""
    base = {"number": str(number), "date": "2026-06-10", "what": "a change", "asked_by": "you"}
    return base | more
