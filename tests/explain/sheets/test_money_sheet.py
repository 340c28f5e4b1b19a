"""Sheet 4: what each line says beside its figures, and how much of a price is shown."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.explain.papers.final_measurement import final_measurement_view
from quotegen.explain.results import Results
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.money_sheet import FEW_LINES, money_sheet, rounding_sentence
from quotegen.explain.sheets.price_sheet import area_sentence
from quotegen.explain.sheets.views import CustomerView, MoneySheet, PricedRow
from quotegen.pricing.quoted.no_work import NO_WORK
from quotegen.reading.files.company import Show
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.golden.numbers import dollars
from tests.pricing import shop

PATIO = next(path for path in shop.JOBS if path.stem == "tanager-lane-patio")
CAPPED = "if it costs more, we pay the difference; if less, you pay less, by the bills"
LARCH = shop.ALL_IN / "larch-row-patio.yaml"


def _rows(sheet: MoneySheet) -> Iterator[PricedRow]:
    for group in sheet.groups:
        yield from group.lines


def _shown(job_file: Path, show: Show) -> Results:
    results = shop.example_results(job_file)
    company = results.job.company.model_copy(update={"show": show})
    return replace(results, job=replace(results.job, company=company))


def _line_amounts(results: Results) -> set[str]:
    """What each line comes to."""
    lines = (one for one in results.quote.chosen.lines if NO_WORK.isdisjoint(one.scope))
    return {results.words.money(one.amount) for one in lines}


@EVERY_EXAMPLE
class TestEveryExample:
    """Each line of the price stands on the sheet once, and nothing else does."""

    def test_the_lines_are_those_of_the_price(self, job_file: Path):
        """A row is a line, or those at one rate on several placements; sums are the lines'."""
        results = shop.example_results(job_file)
        by_name: dict[tuple[str, Decimal], Decimal] = {}
        for line in results.quote.chosen.lines:
            key = (line.rate_id + line.name + line.unit.value, line.rate)
            by_name[key] = by_name.get(key, Decimal(0)) + line.amount
        rows = list(_rows(example_view(job_file).money))
        assert sorted(dollars(row.amount) for row in rows) == sorted(by_name.values())

    def test_the_groups_and_the_lines_add_up(self, job_file: Path):
        """The lines of a group are its sum, and all lines are the total."""
        sheet = example_view(job_file).money
        for group in sheet.groups:
            together = sum(dollars(row.amount) for row in group.lines)
            assert group.together == "" or dollars(group.together) == together
        assert sum(dollars(row.amount) for row in _rows(sheet)) == dollars(sheet.total)

    def test_each_line_says_what_it_pays_for(self, job_file: Path):
        """What a homeowner pays for stands in words, beside the first line of each scope item."""
        said = set[str]()
        for row in _rows(example_view(job_file).money):
            assert row.pays_for or (row.items and said.issuperset(row.items)), row.name
            said.update(row.items)

    def test_the_worked_prices_are_differences_of_the_total(self, job_file: Path):
        """To the ten dollars, and said so by having no cents."""
        sheet = example_view(job_file).money
        less, quoted, more = sheet.worked
        assert (quoted.is_quote, quoted.difference, quoted.total) == (True, "", sheet.total)
        for row in (less, more):
            moved = dollars(sheet.total) + dollars(row.difference)
            assert abs(moved - dollars(row.total)) <= 10
        assert dollars(less.difference) <= 0 <= dollars(more.difference)

    def test_each_item_of_a_line_has_its_page(self, job_file: Path):
        """What a line unfolds to is a page of the guide."""
        view = example_view(job_file)
        pages = {item.id for item in view.guide.items}
        assert {item for row in _rows(view.money) for item in row.items} <= pages


def test_few_lines_have_no_groups_and_many_have():
    """Six lines are read at a glance; twenty are in groups of the work."""
    for job_file in shop.JOBS:
        sheet = example_view(job_file).money
        grouped = len(sheet.groups) > 1
        assert grouped == (len(shop.example_results(job_file).quote.chosen.lines) > FEW_LINES)
        assert all(bool(group.name and group.together) == grouped for group in sheet.groups)


def test_each_line_says_what_its_figures_do_not(winter_view: CustomerView):
    """Season, slices, the free miles and what becomes of an allowance stand beside the lines."""
    said = " ".join(row.pays_for for row in _rows(winter_view.money))
    for note in (
        "Applies to work that begins from November 15 to March 15.",
        "To your site and back, on each visit. The first 10 miles are free.",
        "The first 150.0 sq ft.",
        "The part above 150.0 sq ft.",
        CAPPED,
    ):
        assert said.count(note) == 1, note


def test_the_tax_is_a_line_of_its_own(winter_view: CustomerView):
    """The lines are 557 and the tax 8.875 % of it."""
    (tax,) = [row for row in _rows(winter_view.money) if row.name == "Sales tax"]
    # 200 plain, 100 cold, 2 x 4 x 2 miles x $2, 150 + 25 hand work, 50 lawn
    assert tax.pays_for == "8.875% of $557.00, rounded once on the sum."
    assert (tax.amount, winter_view.money.total) == ("$49.43", "$606.43")


def test_what_follows_other_lines_says_of_what(followed_view: CustomerView):
    """430 of base and 170 of travel bear the fuel; the discount is of 1697; the total is round."""
    rows = {row.name: row for row in _rows(followed_view.money)}
    assert rows["Fuel"].amount == "$27.00"
    assert rows["Fuel"].pays_for.endswith("4.5% of the lines for travel and base; it follows them.")
    discount = rows["Neighbors pour together"]
    assert (discount.amount, discount.pays_for) == (
        "−$50.91", "3% of the price, taken off before tax; it follows the price.",
    )  # fmt: skip
    # 1646.09 and 8.875 % of it, 146.09, are 1792.18
    assert (rows["Rounding"].amount, followed_view.money.total) == ("−$2.18", "$1,790.00")
    assert rows["Rounding"].pays_for.startswith("To the nearest $10.00, up from the half.")


def test_lines_that_follow_add_up_too(followed_view: CustomerView):
    """Tax, discount and rounding included, the lines are the total."""
    amounts = [dollars(row.amount) for row in _rows(followed_view.money)]
    assert sum(amounts) == dollars(followed_view.money.total)


def test_how_it_is_rounded_is_said(tmp_path):
    """Lines, a tax by line, the total and the payments each have their sentence."""
    company = shop.company(round_total_to="$10", tax=[shop.tax("8 %", "slab", rounded="each line")])
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(), company=company)
    said = rounding_sentence(results)
    assert "Each line is rounded once" in said
    assert "Tax is worked out and rounded line by line" in said
    assert "rounded to the nearest $10.00" in said
    assert "Each payment is rounded down" in said


def test_in_one_price_no_line_is_told_anywhere():
    """Neither the sheets nor the data of the page carries the amount of a line."""
    amounts = _line_amounts(shop.example_results(LARCH))
    assert amounts == {"$4,495.72", "$580.00", "$160.00"}
    lines, one = (str(customer_view(_shown(LARCH, show))) for show in (Show.LINES, Show.ONE_PRICE))
    assert [amount for amount in amounts if amount not in lines] == []
    assert [amount for amount in amounts if amount in one] == []


def test_in_groups_no_line_is_told():
    """The sheet on the money has the sums of groups, and no line."""
    amounts = _line_amounts(shop.example_results(PATIO))
    told = {row.amount for row in _rows(money_sheet(_shown(PATIO, Show.GROUPS)))}
    assert told & amounts == set()


@pytest.mark.parametrize("show", Show)
def test_the_rate_by_area_and_the_total_always_are(show: Show):
    """What one foot more costs, and the price of the whole, stand in all three."""
    one, whole = _shown(PATIO, show), _shown(PATIO, Show.LINES)
    assert money_sheet(one).total == money_sheet(whole).total
    assert area_sentence(one) == area_sentence(whole)
    assert "$14.75 (Patio)" in area_sentence(one)


def test_groups_add_up_to_the_total():
    """Ground, concrete, surface and site are all there is of an itemized price."""
    (group,) = money_sheet(_shown(PATIO, Show.GROUPS)).groups
    assert [row.name for row in group.lines] == [
        "The ground", "The concrete", "The surface", "The site",
    ]  # fmt: skip
    amounts = sum(dollars(row.amount) for row in group.lines)
    assert amounts == shop.example_results(PATIO).quote.chosen.total


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
