"""The owner's floors, and the price that reaches all of them."""

from decimal import Decimal

import pytest

from quotegen.money import Money
from quotegen.pipeline import figure
from quotegen.pricing.costs.floors import floors_of
from quotegen.pricing.costs.records import Floor, FloorKind
from quotegen.reading.files.costs import Costs
from tests.pricing import shop
from tests.pricing.costed import COSTS, ORDER, RATES, owner
from tests.world import PATIO, write_world

FLOORS = {**COSTS, "floors": {"margin": "20 %", "crew_day": "$100", "sq_ft": "$2"}}
UNEVEN = Costs.model_validate(
    {**COSTS, "floors": {"margin": "30 %", "crew_day": "$33.33", "sq_ft": "$0.125"}}
)


def test_the_least_price(tmp_path):
    """1152.40 / 0.8, 1152.40 + 3 x 100, 1152.40 + 200 x 2: the largest is the line."""
    costs = owner(tmp_path, costs=FLOORS).chosen
    assert {f.kind: str(f.price) for f in costs.floors} == {
        FloorKind.MARGIN: "1440.50", FloorKind.CREW_DAY: "1452.40", FloorKind.SQ_FT: "1552.40",
    }  # fmt: skip
    assert str(costs.walk_away) == "1552.40"
    assert costs.holds


def test_without_floors_the_line_is_the_cost(tmp_path):
    """Below it the job loses money."""
    assert str(owner(tmp_path).chosen.walk_away) == "1152.40"


def _floors(price: Decimal, cost: Decimal) -> dict[FloorKind, Floor]:
    """Return the floors of a job of 3 days and 200.1 sq ft at a price before tax."""
    found = floors_of(UNEVEN, Money(price), Money(price - cost), 3, Decimal("200.1"))
    return {floor.kind: floor for floor in found}


@pytest.mark.parametrize("cost", ["100.00", "100.01", "1152.40", "7000.03"])
def test_the_least_price_reaches_its_floor_and_a_cent_less_does_not(cost: str):
    """100 / 0.7 is 142.857: $142.86 keeps 30 %, and $142.85 does not; so for each floor."""
    at_cost = Decimal(cost)
    for kind, floor in _floors(at_cost, at_cost).items():
        assert _floors(floor.price, at_cost)[kind].holds
        assert not _floors(floor.price - Decimal("0.01"), at_cost)[kind].holds


@pytest.mark.parametrize("why", [None, "it fills a gap in a quiet week"])
def test_a_price_under_a_floor(tmp_path, why: str | None):
    """A check warns either way; a package is refused unless the job says why."""
    said = f"under_floor: {why}\n" if why else ""
    book = (write_world(tmp_path).parent / "rate-book.yaml").read_text(encoding="utf-8")
    high = book.replace("floors: {margin: 12 %", "floors: {margin: 60 %")
    path = write_world(tmp_path, PATIO + said, rate_book=high)
    for to_package, severity in ((False, "warning"), (True, "warning" if why else "error")):
        problems = figure(path, shop.shared(), to_package=to_package).problems
        assert {(p.code, p.severity.value) for p in problems} == {("under-floor", severity)}
        assert len(problems) == 3  # one for each finish
        assert all((why or "floor") in p.message for p in problems)


@pytest.mark.parametrize(("off", "holds"), [("$4,647.60", True), ("$4,647.61", False)])
def test_a_discount_counts_against_the_floor(tmp_path, off: str, *, holds: bool):
    """6,200 of price and 1,552.40 at the floors: 4,647.60 may come off, and not a cent more."""
    job = shop.job(discount={"name": "Neighbors pour together", "amount": off})
    book = shop.book(RATES, order=ORDER, costs=FLOORS)
    path = write_world(tmp_path, job, rate_book=book)
    assert ("under-floor" not in {one.code for one in shop.faults(path)}) is holds
