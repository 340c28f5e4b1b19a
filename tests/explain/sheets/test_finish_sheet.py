"""The extras of sheet 4: how each comes about, in figures that a reader can follow."""

from quotegen.explain.sheets.finish_sheet import extras
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
    told = {row.name: (row.text.partition(". ")[2], row.amount) for row in extras(results)}
    assert told == {
        "Item at $46 / ft": ("10.0 ft × $46.00 / ft, and the tax on it", "+$460.00"),
        "Item at $120 lump": ("$120.00, and the tax on it", "+$132.00"),
        "Fuel": (
            "3% of all lines of work; it follows them, and the tax on it",
            "+$6.00",
        ),
    }  # fmt: skip
