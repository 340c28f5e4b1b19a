"""What is printed under one another adds up to what stands below it, in both ways of pricing."""

import re
from decimal import Decimal
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given
from hypothesis import strategies as st

from quotegen.explain.results import Results
from quotegen.explain.sheets.customer import customer_view
from quotegen.publish.web.html import render
from quotegen.reading.files.company import Show
from quotegen.resources import themes_folder
from tests.pricing import shop
from tests.property.effort import one_in_as_found
from tests.publish.built import EVERY_PRINTED, built
from tests.publish.reading import pdf_text
from tests.world import EXAMPLES

SUM = re.compile(r"(?:(?<=[>\s+])|^)([−-]?)\$([\d,]+\.\d\d)")
TOGETHER = re.compile(r'<td class="num together">.*?</td>', re.DOTALL)
PARTS = ("base", "slab", "reinforcement", "joints", "curing", "sealing")
DIMES = st.integers(min_value=1, max_value=99).map(lambda n: Decimal(n) / 10)
"""Rates in whole dimes: times an area to a tenth of a foot they are whole cents, never rounded."""
SIDES = st.tuples(*[st.integers(min_value=50, max_value=400)] * 2)


def _sums(text: str) -> list[Decimal]:
    """Every sum of money in a text, those that are taken off below zero."""
    return [
        Decimal(amount.replace(",", "")) * (-1 if sign else 1) for sign, amount in SUM.findall(text)
    ]


def _tables(page: str) -> list[tuple[list[Decimal], Decimal]]:
    """The amounts of each table with a sum below it: the last cell of each row, and the sum.

    Where lines are in groups, the sums of the groups are a list of their own.
    """
    tables = []
    for table in re.findall(r"<table.*?</table>", page, re.DOTALL):
        body, _, foot = table.partition("<tfoot>")
        if foot:
            groups = [amount for cell in TOGETHER.findall(body) for amount in _sums(cell)]
            rows = re.findall(r"<tr.*?</tr>", TOGETHER.sub("", body), re.DOTALL)
            cells = [re.findall(r"<td.*?</td>", row, re.DOTALL) for row in rows]
            amounts = [amount for row in cells if row for amount in _sums(row[-1])]
            tables += [(one, _sums(foot)[-1]) for one in (amounts, groups) if one]
    return tables


def _book(rates: list[Decimal], *, all_in: bool) -> str:
    """A book with one price for six items and the finish, or with seven that come to the same."""
    first, *others = rates
    edge = {"edge": shop.rate("$12.50 / ft", "forms", of="outer edge")}
    if all_in:
        whole = {**shop.PLAIN, "rate": f"${sum(rates)} / sq ft", "covers": list(PARTS)}
        return shop.book(edge, {"plain": whole})
    items = {
        item: {**shop.rate(f"${rate} / sq ft", item), "name": item}
        for item, rate in zip(PARTS, others, strict=True)
    }
    return shop.book({**edge, **items}, {"plain": {**shop.PLAIN, "rate": f"${first} / sq ft"}})


@cache
def _company(show: Show, tax: str) -> str:
    text = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    taxed = {"tax": [{"id": "sales", "name": "Sales tax", "rate": tax, "covers": ["everything"],
                      "round": "each line"}]}  # fmt: skip
    return f"{text}show: {show.value}\n{shop.as_yaml(taxed) if tax else ''}"


def _results(sides: tuple[int, int], book: str, company: str) -> Results:
    length, width = (f"{side / 10} ft" for side in sides)
    with TemporaryDirectory() as folder:
        job = shop.job(shop.placement(f"{length} x {width}"))
        return shop.results(Path(folder), job, rate_book=book, company=company)


@one_in_as_found(12)
@given(
    SIDES, st.lists(DIMES, min_size=7, max_size=7), st.booleans(), st.sampled_from(Show),
    st.sampled_from(["", "8.875 %"]),
)  # fmt: skip
def test_every_list_of_the_page_adds_up(
    sides: tuple[int, int], rates: list[Decimal], all_in: bool, show: Show, tax: str
):
    """Lines, groups, payments: read back from the HTML, for made-up books of both kinds."""
    results = _results(sides, _book(rates, all_in=all_in), _company(show, tax))
    view = customer_view(results)
    page = render("quote.html.j2", view, results.words, themes_folder() / "shop")
    tables = _tables(page)
    assert len(tables) >= 2
    assert [(sum(rows), below) for rows, below in tables if sum(rows) != below] == []


@one_in_as_found(8)
@given(SIDES, st.lists(DIMES, min_size=7, max_size=7))
def test_an_all_in_book_and_its_twin_come_to_the_same(sides: tuple[int, int], rates: list[Decimal]):
    """Total, payments, worked changes and the rate by area do not tell how a price is typed."""
    one, other = (
        _results(sides, _book(rates, all_in=all_in), _company(Show.LINES, "")).quote
        for all_in in (True, False)
    )
    assert one.chosen.total == other.chosen.total
    assert one.payments == other.payments
    assert one.adjustment == other.adjustment
    assert one.chosen.area_price == other.chosen.area_price


@EVERY_PRINTED
def test_the_lines_in_print_are_those_of_the_price(job_file: Path):
    """The PDF has the lines of the price in their order, and the total below the last of them."""
    text = pdf_text(built(job_file)["customer/quote.pdf"])
    at = text.index(shop.example_results(job_file).words("ask_money"))
    money = customer_view(shop.example_results(job_file)).money
    for amount in (*(row.amount for group in money.groups for row in group.lines), money.total):
        at = text.index(amount, at) + len(amount)


def test_a_wrong_sum_is_noticed():
    """The reader of tables tells a list that does not add up."""
    page = (
        "<table><tbody><tr><td>$1.00</td></tr><tr><td>−$0.25</td></tr></tbody>"
        "<tfoot><tr><td>$0.80</td></tr></tfoot></table>"
    )
    assert _tables(page) == [([Decimal("1.00"), Decimal("-0.25")], Decimal("0.80"))]
