"""A small job of two finishes and a look of two colors, figured once for the tests of pictures."""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from quotegen.explain.results import Results
from tests.pricing import shop

RATES = {
    **shop.RINSE_AND_FILM,
    "sand": shop.rate("$1 / sq ft", "finish", applies="with color", color="integral",
                      shade="#d3bd94"),
    "nut": shop.rate("$1 / sq ft", "finish", applies="with color", color="release",
                     shade="#6b4a32"),
}  # fmt: skip
FINISHES = {"plain": shop.PLAIN, "fancy": {**shop.FANCY, "colors": ["sand", "nut"]}}


@cache
def two_finishes() -> Results:
    """Plain is quoted, fancy is offered beside it in sand with nut."""
    job = shop.job(compare=["fancy"], colors=[{"base": "sand", "second": "nut"}])
    with TemporaryDirectory() as folder:
        return shop.results(Path(folder), job, rate_book=shop.book(RATES, FINISHES))
