"""What the price covers, in a dozen words each."""

from pathlib import Path

from quotegen.explain.sheets.covers import SHORT_LIST, cover_rows
from tests.explain.examples import EVERY_EXAMPLE
from tests.pricing import shop

MOST_WORDS = 30


@EVERY_EXAMPLE
def test_each_row_is_of_an_item_that_the_price_covers(job_file: Path):
    """In the order of the short list, nothing twice, nothing empty, nothing long."""
    results = shop.example_results(job_file)
    scope, included = results.content.scope, results.scope_items()
    listed = [scope[item].front.title for item in SHORT_LIST if item in included]
    rows = list(cover_rows(results))
    names = [row.name for row in rows]
    assert names == [title for title in listed if title in names]
    assert all(0 < len(str(row.text).split()) <= MOST_WORDS for row in rows)


@EVERY_EXAMPLE
def test_no_money_is_in_it(job_file: Path):
    """What a part costs stands on sheet 4."""
    assert not any("$" in str(row.text) for row in cover_rows(shop.example_results(job_file)))


def test_depths_and_strength_are_this_jobs(tmp_path):
    """4 in of stone under 5 in of concrete."""
    rates = {"base": shop.rate("$2 / sq ft"), "slab": shop.rate("$4 / sq ft", "slab")}
    job = shop.job(shop.placement("20 ft x 10 ft", thickness="5 in"))
    results = shop.results(tmp_path, job, rate_book=shop.book(rates))
    rows = {row.name: row.text for row in cover_rows(results)}
    assert rows["Base"] == "4 in of crushed stone, compacted"
    assert rows["Slab"] == "5 in thick, 4,500 psi, 6 % air"
