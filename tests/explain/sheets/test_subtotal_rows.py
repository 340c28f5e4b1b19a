"""How much of a price is shown: lines, groups or one price, and what is shown of it always."""

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.explain.papers.final_measurement import final_measurement_view
from quotegen.explain.results import Results
from quotegen.explain.sheets.change_sheet import change_sheet
from quotegen.explain.sheets.customer import customer_view
from quotegen.pricing.quoted.no_work import NO_WORK
from quotegen.reading.files.company import Show
from tests.pricing import shop

PATIO = next(path for path in shop.JOBS if path.stem == "tanager-lane-patio")
LARCH = shop.ALL_IN / "larch-row-patio.yaml"


def _shown(job_file: Path, show: Show) -> Results:
    results = shop.example_results(job_file)
    company = results.job.company.model_copy(update={"show": show})
    return replace(results, job=replace(results.job, company=company))


def _line_amounts(results: Results) -> set[str]:
    """What each line comes to."""
    lines = (one for one in results.quote.chosen.lines if NO_WORK.isdisjoint(one.scope))
    return {results.words.money(one.amount) for one in lines}


def test_in_one_price_no_line_is_told_anywhere():
    """Neither the sheets nor the data of the page carries the amount of a line."""
    amounts = _line_amounts(shop.example_results(LARCH))
    assert amounts == {"$4,495.72", "$580.00", "$160.00"}
    lines, one = (str(customer_view(_shown(LARCH, show))) for show in (Show.LINES, Show.ONE_PRICE))
    assert [amount for amount in amounts if amount not in lines] == []
    assert [amount for amount in amounts if amount in one] == []


def test_in_groups_no_line_is_told():
    """The sheet on the money has the sums of groups and parts, and no line."""
    amounts = _line_amounts(shop.example_results(PATIO))
    sheet = change_sheet(_shown(PATIO, Show.GROUPS))
    assert (sheet.measured, sheet.fixed) == ((), ())
    told = {row.amount for row in (*sheet.by_scope, *sheet.by_placement)}
    assert told & amounts == set()


@pytest.mark.parametrize("show", Show)
def test_the_rate_by_area_and_the_total_always_are(show: Show):
    """What one foot more costs, and the price of the whole, stand in all three."""
    sheet, whole = (change_sheet(_shown(PATIO, one)) for one in (show, Show.LINES))
    assert (sheet.area_prices, sheet.total) == (whole.area_prices, whole.total)
    assert sheet.area_prices


def test_groups_add_up_to_the_total():
    """Ground, concrete, surface and site are all there is of an itemized price."""
    rows = change_sheet(_shown(PATIO, Show.GROUPS)).by_scope
    assert [row.name for row in rows] == [
        "The ground", "The concrete", "The surface", "Coming, protecting and cleaning up",
    ]  # fmt: skip
    amounts = sum(Decimal(row.amount.replace("$", "").replace(",", "")) for row in rows)
    assert amounts == shop.example_results(PATIO).quote.chosen.total


def test_a_price_of_all_in_one_stands_under_all_it_pays_for():
    """The all-in line is no sum of the surface alone; step, trip and rounding follow it."""
    first, *others = change_sheet(_shown(LARCH, Show.GROUPS)).by_scope
    every = "The ground, the concrete, the surface, and coming, protecting and cleaning up"
    assert (first.name, first.amount) == (every, "$4,495.72")
    assert [row.amount for row in others] == ["$580.00", "$160.00", "$4.28"]


def test_a_measurement_joins_what_goes_by_one_area():
    """In one price the patio has one row by area; the sums are the same."""
    adjusted = shop.example_results(PATIO).contract.remeasure
    assert adjusted is not None
    whole, one = (
        final_measurement_view(_shown(PATIO, show), adjusted)
        for show in (Show.LINES, Show.ONE_PRICE)
    )
    assert (one.revised_total, one.change) == (whole.revised_total, whole.change)
    patio = next(part for part in one.parts if part.place == "Patio")
    (by_area,) = (line for line in patio.lines if line.rate.endswith("sq ft"))
    assert by_area.rate == f"${shop.example_results(PATIO).quote.chosen.area_price[0].rate} / sq ft"
