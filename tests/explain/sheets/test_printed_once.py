"""Each sum of money stands on the six printed sheets once, and what is summed adds up."""

import re
from collections import Counter
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.explain.results import Results
from quotegen.explain.sheets.views import CustomerView
from quotegen.publish.web.html import render
from quotegen.quantity import Unit
from quotegen.resources import themes_folder
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.golden.numbers import dollars
from tests.pricing import shop
from tests.publish.page_tree import page_tree, seen

AMOUNT = re.compile(r"[+−]?\$[\d,]+(?:\.\d+)?")
SHEETS = ("price", "slab", "finishes", "money", "days", "agreement")
TOTAL_STANDS = {
    "price": 1,  # the price itself
    "finishes": 1,  # the quoted finish beside the others
    "money": 2,  # under the lines, and as the worked price of no change
    "days": 1,  # under the payments
    "agreement": 1,  # what is signed
}
"""How often each sheet has the total: the only sum that stands more than once."""


def _sheets(job_file: Path) -> dict[str, str]:
    """What a reader of each printed sheet reads."""
    view, words = example_view(job_file), shop.example_results(job_file).words
    page = render("quote.html.j2", view, words, themes_folder() / "shop", on_paper=True)
    found = {one.get("id", ""): seen(one) for one in page_tree(page).iter("section")}
    return {sheet: found[sheet] for sheet in SHEETS}


def _facts(results: Results, view: CustomerView) -> Iterator[str]:
    """Yield every sum that the sheets have to say, the total apart, as pricing worked it out."""
    words, quote = results.words, results.quote
    rows: dict[tuple[str, str, Unit, Decimal], Decimal] = {}
    for line in quote.chosen.lines:
        key = (line.rate_id, line.name, line.unit, line.rate)
        rows[key] = rows.get(key, Decimal(0)) + line.amount
    for (_, _, unit, rate), amount in rows.items():
        yield f"{words.money(amount)} {'' if unit is Unit.LUMP else words.price(rate)}"
    yield from (group.together for group in view.money.groups)
    yield from (words.money(payment.amount) for payment in quote.payments)
    yield from (f"{row.difference} {row.total}" for row in view.money.worked if not row.is_quote)
    yield from (words.rate(unit.rate, unit.unit) for unit in quote.unit_prices)
    yield from (words.price(area.rate) for area in quote.chosen.area_price)
    for finish in quote.finishes[1:]:
        yield f"{words.money(finish.total)} {words.signed_money(quote.difference(finish))}"
    yield from (column.upkeep for column in view.finishes.columns)
    yield from _options(results)
    yield from _typed(results)


def _options(results: Results) -> Iterator[str]:
    words, quote = results.words, results.quote
    for extra in quote.extras:
        yield words.signed_money(extra.amount)
        yield from (
            words.price(line.rate)
            for line in extra.lines
            if line.pays_for_work and line.unit is not Unit.LUMP
        )
    for look in quote.color_choices:
        yield words.signed_money(look.amount)
    for other in quote.alternates:
        yield f"{words.money(other.total)} {words.signed_money(other.amount)}"


def _typed(results: Results) -> Iterator[str]:
    """Sums that the company typed: what it is insured for, and to what it rounds."""
    company = results.job.company
    yield company.insurance.covers if company.insurance else ""
    yield results.words.money(company.round_total_to) if company.round_total_to else ""


@EVERY_EXAMPLE
def test_each_sum_stands_where_it_belongs_and_nowhere_else(job_file: Path):
    """The sums of the six sheets are those that pricing worked out, each as often as it is one."""
    results, view = shop.example_results(job_file), example_view(job_file)
    printed = Counter(AMOUNT.findall(" ".join(_sheets(job_file).values())))
    wanted = Counter(AMOUNT.findall(" ".join(_facts(results, view))))
    wanted[view.price.total] += sum(TOTAL_STANDS.values())
    assert printed - wanted == Counter(), "printed more often than it is a fact"
    assert wanted - printed == Counter(), "a fact that no sheet says"


@EVERY_EXAMPLE
def test_the_total_stands_where_it_is_listed(job_file: Path):
    """Once on each sheet that needs it, twice on the money, and not on the sheet of the slab."""
    total = example_view(job_file).price.total
    stands = {sheet: AMOUNT.findall(text).count(total) for sheet, text in _sheets(job_file).items()}
    assert {sheet: times for sheet, times in stands.items() if times} == TOTAL_STANDS


@EVERY_EXAMPLE
def test_every_list_of_sums_adds_up(job_file: Path):
    """Lines to their group, groups to the total, payments to it, differences of finishes."""
    view = example_view(job_file)
    total = dollars(view.price.total)
    groups = view.money.groups
    for group in groups:
        lines = sum(dollars(line.amount) for line in group.lines)
        assert lines == dollars(group.together or view.money.total), group.name
    assert sum(dollars(group.together or view.money.total) for group in groups) == total
    paid = [part for row in view.days.rows for part in row.amount.split(" + ") if part]
    assert sum(map(dollars, paid)) == dollars(view.days.total) == total
    for column in view.finishes.columns:
        assert dollars(column.total) - dollars(column.difference or "$0") == total, column.name
    for row in view.money.worked:
        off = total + dollars(row.difference or "$0") - dollars(row.total)
        assert abs(off) <= 10, row.change  # both are to the ten dollars


@pytest.mark.parametrize("once_more", ["$1,124.55", "$20,126.13"])
def test_a_sum_that_is_printed_twice_is_noticed(once_more: str):
    """One more of a line, or of the total, is more than the facts have."""
    (deck,) = (path for path in shop.JOBS if path.stem == "orchard-bend-pool-deck")
    results, view = shop.example_results(deck), example_view(deck)
    texts = [*_sheets(deck).values(), f"again {once_more}"]
    wanted = Counter(AMOUNT.findall(" ".join(_facts(results, view))))
    wanted[view.price.total] += sum(TOTAL_STANDS.values())
    assert Counter(AMOUNT.findall(" ".join(texts))) - wanted == Counter({once_more: 1})
