"""Sheet 3: each finish priced for the whole job, and how each extra comes about."""

from decimal import Decimal
from pathlib import Path

from quotegen.explain.sheets.finish_sheet import extra_rows
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop

RATES = {
    "drain": shop.rate("$46 / ft", "drain", applies="asked"),
    "lawn": shop.rate("$120 lump", "protection", applies="asked"),
    "card": shop.share("3 %", "everything", applies="asked"),
}


def test_a_length_a_sum_and_a_share(tmp_path):
    """10 ft at $46; a sum of $120; 3 % of the 200 sq ft at $1 that the quote has without it."""
    job = shop.job(extras={"drain": "10 ft", "lawn": "yes", "card": "yes"})
    company = shop.company(round_total_to="$1", tax=[shop.tax("10 %", "protection")])
    results = shop.results(tmp_path, job, rate_book=shop.book(RATES), company=company)
    ends = {
        "Item at $46 / ft": ("10.0 ft × $46.00 / ft, and the tax on it", "+$460.00"),
        "Item at $120 lump": ("lump sum, and the tax on it", "+$132.00"),
        "Fuel": ("3% of all lines of work; it follows them, and the tax on it", "+$6.00"),
    }
    rows = {row.name: row for row in extra_rows(results)}
    assert {name: row.amount for name, row in rows.items()} == {
        name: amount for name, (_, amount) in ends.items()
    }
    assert [name for name, (end, _) in ends.items() if not rows[name].text.endswith(end)] == []


@EVERY_EXAMPLE
def test_the_finishes_side_by_side(job_file: Path):
    """Each finish has its own total, and what it costs more or less than the chosen one."""
    results = shop.example_results(job_file)
    first, *others = example_view(job_file).finishes.columns
    assert (first.chosen, first.difference) == (True, "")
    for column, finish in zip(others, results.quote.finishes[1:], strict=True):
        assert not column.chosen
        assert column.total == results.words.money(finish.total)
        moved = Decimal(finish.total) - results.quote.chosen.total
        assert column.difference == results.words.signed_money(moved)


@EVERY_EXAMPLE
def test_each_finish_tells_its_drawbacks(job_file: Path):
    """Work, grip, heat, repair and how to judge it stand under every finish."""
    for column in example_view(job_file).finishes.columns:
        assert all((column.work, column.grip, column.heat, column.repair, column.judge))
