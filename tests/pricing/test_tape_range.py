"""The money that the tape may miss, and steps that are no part of an area."""

from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.explain.sheets.plan_sheet import plan_sheet
from quotegen.pricing.quoted.adjustment import ends_of_range
from quotegen.pricing.quoted.finish import price_at
from quotegen.publish.data.figures import figures
from tests.pricing import shop
from tests.world import EXAMPLES

KIDNEY = EXAMPLES / "jobs" / "kestrel-court-kidney-deck.yaml"
EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)


@EVERY_EXAMPLE
def test_the_range_is_priced_again_by_the_core(job_file: Path):
    """Both ends are the whole job priced at the areas there, low first."""
    results = shop.example_results(job_file)
    low, high = results.quote.tape_range
    for end, measured in zip((low, high), ends_of_range(results.takeoff), strict=True):
        assert end.total == price_at(results.job, measured, results.job.finish).total
        assert end.difference == end.total - results.quote.chosen.total
    assert low.total <= results.quote.chosen.total <= high.total


@EVERY_EXAMPLE
def test_an_area_lies_in_its_range(job_file: Path):
    """The printed area is between the printed ends, and they are not the same."""
    for placement in shop.example_results(job_file).takeoff.placements:
        found = placement.area_range
        assert found.low_sqft < placement.area_sqft < found.high_sqft
        assert found.low_m2 < placement.area_m2 < found.high_m2


def test_a_machine_finds_the_range():
    """figures.json carries the deviation, both ends of the area, and both ends of the price."""
    results, owner = shop.example_results(KIDNEY), shop.example(KIDNEY).owner
    assert owner is not None
    found = figures(results, owner)
    assert found["placements"][0]["area_low_sqft"] == str(  # type: ignore[index]
        results.takeoff.placements[0].area_range.low_sqft
    )
    assert [row["end"] for row in found["tape_range"]] == ["low", "high"]  # type: ignore[attr-defined]


def test_the_plan_sheet_says_how_and_how_sure():
    """The plan sheet names the way of measuring, the range, the money, and the step by the foot."""
    sheet = plan_sheet(shop.example_results(KIDNEY))
    (row,) = sheet.measured
    assert "A border around the pool" in row.text
    assert "Two tapes to each point from pins 32'-0\" apart" in row.text
    assert "95 times in 100" in sheet.sure[0]
    assert "$" in sheet.sure[1]
    assert [step.amount for step in sheet.steps] == ["6.5 ft"]


@pytest.mark.parametrize(("price", "typed", "quantity", "unit"), [
    ("$265 each", "2", Decimal(2), "each"), ("$66 / ft", "6.5 ft", Decimal("6.5"), "ft"),
])  # fmt: skip
def test_steps_go_each_or_by_the_foot(
    tmp_path: Path, price: str, typed: str, quantity: Decimal, unit: str
):
    """A step is priced each or by the foot of its nosing, and the area stays what it was."""
    rates = {"step": shop.rate(price, "steps", applies="asked")}
    deck = shop.placement("20 ft x 10 ft", include={"step": typed})
    results = shop.results(tmp_path, shop.job(deck), rate_book=shop.book(rates))
    (line,) = results.lines_for("steps")
    assert (line.quantity, line.unit.value) == (quantity, unit)
    assert results.takeoff.placements[0].area_sqft == Decimal("200.0")


@pytest.mark.parametrize(("offsets", "said"), [
    ({"rule": "simpson"}, "Simpson’s rule."), ({}, "trapezoid rule."),
])  # fmt: skip
def test_the_rule_of_offsets_is_always_printed(tmp_path: Path, offsets: dict[str, str], said: str):
    """The plan sheet and the working name the rule that made the area."""
    typed = {"every": "4 ft", "far": ["9 ft", "10 ft", "9 ft 6 in"], **offsets}
    job = shop.job({**shop.placement("1 ft x 1 ft"), "add": [{"offsets": typed}]})
    results = shop.results(tmp_path, job, rate_book=shop.book())
    assert said in plan_sheet(results).measured[0].text
    formula = results.takeoff.placements[0].working[0].inputs[0].formula
    assert said.partition("’")[0].removesuffix(" rule.").lower() in formula.lower()
