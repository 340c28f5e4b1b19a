"""Prices by size: the whole quantity at its band's rate, or each slice at its own."""

from decimal import Decimal

import pytest

from tests.pricing import shop

SLICES = {"name": "Slab", "covers": ["slab"], "by_slice": [
    {"to": "400 sq ft", "rate": "$9.50 / sq ft", "cost": "$6.00 / sq ft"},
    {"from": "400 sq ft", "to": "1000 sq ft", "rate": "$9.00 / sq ft", "cost": "$5.50 / sq ft"},
    {"from": "1000 sq ft", "rate": "$8.00 / sq ft"},
]}  # fmt: skip
FREE = {"plain": {**shop.PLAIN, "rate": "$0.00 / sq ft"}}
SIZES = {"name": "Slab", "covers": ["slab"], "by_size": [
    {"to": "400 sq ft", "rate": "$9.00 / sq ft"},
    {"from": "400 sq ft", "rate": "$9.50 / sq ft"},
]}  # fmt: skip


@pytest.mark.parametrize(
    ("area", "total"),
    [
        ("399.9", "3799.05"),
        ("400", "3800.00"),
        ("400.1", "3800.90"),  # a tenth of a foot at the next rate
        ("1000", "9200.00"),  # 400 x 9.50 + 600 x 9.00
        ("1500", "13200.00"),  # and 500 x 8.00
    ],
)
def test_each_slice_at_its_own_rate(tmp_path, area: str, total: str):
    """At each border and either side of it, no larger job is cheaper."""
    job = shop.job(shop.placement(f"{Decimal(area) / 10} ft x 10 ft"))
    priced = shop.quote(tmp_path, job, rate_book=shop.book({"slab": SLICES}, FREE))
    assert str(priced.chosen.total) == total
    assert sum(line.quantity for line in priced.chosen.lines if line.rate_id == "slab") == Decimal(
        area
    )


def test_only_the_last_slice_moves_with_the_area(tmp_path):
    """One foot more costs the rate of the last slice, and is said so."""
    job = shop.job(shop.placement("60 ft x 10 ft"))
    priced = shop.quote(tmp_path, job, rate_book=shop.book({"slab": SLICES}, FREE))
    assert set(shop.by_id(priced.chosen)) == {"slab.patio.1", "slab.patio.2"}
    assert priced.chosen.area_price[0].rate == Decimal("9.00")


@pytest.mark.parametrize(("area", "total"), [("399.9", "3599.10"), ("400", "3800.00")])
def test_the_whole_at_the_rate_of_its_band(tmp_path, area: str, total: str):
    """By size all of it takes one rate; the border belongs to the band above."""
    job = shop.job(shop.placement(f"{Decimal(area) / 10} ft x 10 ft"))
    priced = shop.quote(tmp_path, job, rate_book=shop.book({"slab": SIZES}, FREE))
    assert str(priced.chosen.total) == total


@pytest.mark.parametrize(
    ("measured", "total"),
    [("410", "3690.00"), ("399.9", "3599.10"), ("390", "3510.00")],
    ids=["up", "same", "down"],
)
def test_the_quoted_band_holds_when_measured(tmp_path, measured: str, total: str):
    """399.9 sq ft were quoted at $9.00; measured over 400, each foot still costs $9.00."""
    job = shop.job(
        shop.placement("399.9 ft x 1 ft"),
        accepted={"date": "2026-05-20"},
        measured={"date": "2026-06-09", "placements": {"patio": {"area": f"{measured} sq ft"}}},
    )
    contract = shop.results(tmp_path, job, rate_book=shop.book({"slab": SIZES}, FREE)).contract
    assert contract.remeasure is not None
    assert str(contract.total) == total
    assert {str(line.rate) for line in contract.remeasure.lines if line.id == "slab.patio"} == {
        "9.00"
    }


def test_worked_figures_keep_the_quoted_band(tmp_path):
    """The table at +10 % shows what the final measurement would say: 439.9 sq ft at $9.00."""
    job = shop.job(shop.placement("399.9 ft x 1 ft"))
    priced = shop.quote(tmp_path, job, rate_book=shop.book({"slab": SIZES}, FREE))
    assert [str(row.total) for row in priced.adjustment][-1] == "3959.10"


def test_a_metric_job_has_its_borders_in_meters(tmp_path):
    """400 sq ft are 37.16 m2, and the two slices make the whole area."""
    job = shop.job(shop.placement("10 m x 10 m"), units="metric")
    lines = shop.by_id(
        shop.quote(tmp_path, job, rate_book=shop.book({"slab": SLICES}, FREE)).chosen
    )
    assert [str(lines[f"slab.patio.{n}"].quantity) for n in (1, 2, 3)] == ["37.16", "55.74", "7.10"]


def test_each_slice_costs_what_its_band_says(tmp_path):
    """The owner's sheet takes the cost of the same band as the price."""
    job = shop.job(shop.placement("60 ft x 10 ft"))
    made = shop.figured(tmp_path, job, rate_book=shop.book({"slab": SLICES}, FREE))
    assert made.owner is not None
    costs = {line.line: line.cost for line in made.owner.chosen.lines}
    assert (costs["slab.patio.1"], costs["slab.patio.2"]) == (Decimal(2400), Decimal(1100))


def test_cutting_is_bought_beyond_the_measure(tmp_path):
    """200 sq ft and 10 % are 220, and one foot more moves the price by 1.1 rates."""
    rates = {"stone": shop.rate("$5.00 / sq ft", cutting="10 %")}
    priced = shop.quote(tmp_path, shop.job(), rate_book=shop.book(rates, FREE))
    assert shop.by_id(priced.chosen)["stone.patio"].amount == 220 * 5
    assert priced.chosen.area_price[0].rate == Decimal("5.50")
