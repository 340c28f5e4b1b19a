"""How much of a price is shown: lines, groups or one price, and what is shown of it always."""

from dataclasses import replace
from decimal import Decimal

import pytest

from quotegen.explain.papers.final_measurement import final_measurement_view
from quotegen.explain.results import Results
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.views import CustomerView
from quotegen.pricing.quoted.tax import TAX
from quotegen.reading.files.company import Show
from tests.pricing import shop

PATIO = next(path for path in shop.JOBS if path.stem == "tanager-lane-patio")
LARCH = shop.ALL_IN / "larch-row-patio.yaml"


def _shown(results: Results, show: Show) -> Results:
    company = results.job.company.model_copy(update={"show": show})
    return replace(results, job=replace(results.job, company=company))


def _view(job_file, show: Show) -> CustomerView:
    return customer_view(_shown(shop.example_results(job_file), show))


def _line_amounts(results: Results) -> set[str]:
    """What each line comes to, without those that are the price of something else as well."""
    quote = results.quote
    said = {quote.chosen.total, *(extra.amount for extra in quote.extras)}
    lines = (one for one in quote.chosen.lines if TAX not in one.scope)
    return {results.words.money(one.amount) for one in lines if one.amount not in said}


@pytest.mark.parametrize("job_file", [PATIO, LARCH], ids=lambda path: path.stem)
@pytest.mark.parametrize("show", [Show.GROUPS, Show.ONE_PRICE])
def test_no_line_is_told(job_file, show: Show):
    """Neither sheet nor the data of the page carries the amount of a line."""
    view, results = _view(job_file, show), shop.example_results(job_file)
    text = f"{view.change.measured}{view.change.fixed}{view.included}{view.choice.combinations}"
    amounts = _line_amounts(results) - {row.amount for row in view.change.by_scope}
    assert [amount for amount in amounts if amount in text] == []
    assert [amount for amount in amounts if amount in str(_view(job_file, Show.LINES))]


@pytest.mark.parametrize("show", Show)
def test_the_rate_by_area_and_the_total_always_are(show: Show):
    """What one foot more costs, and the price of the whole, stand in all three."""
    view = _view(PATIO, show)
    assert view.change.area_prices == _view(PATIO, Show.LINES).change.area_prices
    assert view.price.total == _view(PATIO, Show.LINES).price.total


def test_groups_add_up_to_the_total():
    """Ground, concrete, surface and site are all there is of an itemized price."""
    rows = _view(PATIO, Show.GROUPS).change.by_scope
    assert [row.name for row in rows] == [
        "The ground", "The concrete", "The surface", "Coming, protecting and cleaning up",
    ]  # fmt: skip
    amounts = sum(Decimal(row.amount.replace("$", "").replace(",", "")) for row in rows)
    assert amounts == shop.example_results(PATIO).quote.chosen.total


def test_a_price_of_all_in_one_stands_under_all_it_pays_for():
    """The all-in line is no sum of the surface alone."""
    first, *others = _view(LARCH, Show.GROUPS).change.by_scope
    every = "The ground, the concrete, the surface, and coming, protecting and cleaning up"
    assert (first.name, first.amount) == (every, "$4,495.72")
    assert [row.amount for row in others] == ["$580.00", "$160.00"]


def test_a_measurement_joins_what_goes_by_one_area():
    """In one price the patio has one row by area; estimated, measured and the sums are the same."""
    results = shop.example_results(PATIO)
    adjusted = results.contract.remeasure
    assert adjusted is not None
    whole = final_measurement_view(_shown(results, Show.LINES), adjusted)
    one = final_measurement_view(_shown(results, Show.ONE_PRICE), adjusted)
    assert (one.revised_total, one.change, one.unmoved) == (
        whole.revised_total, whole.change, whole.unmoved)  # fmt: skip
    assert sum(len(part.lines) for part in one.parts) < sum(len(part.lines) for part in whole.parts)
    patio = next(part for part in one.parts if part.place == "Patio")
    by_area = [line for line in patio.lines if line.rate.endswith("sq ft")]
    assert len(by_area) == 1
    assert by_area[0].rate == f"{results.quote.chosen.area_price[0].rate:.2f}".join(
        ("$", " / sq ft")
    )
