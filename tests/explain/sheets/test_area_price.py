"""What a foot more or less moves the price by, and why a small job costs more a foot."""

from quotegen.explain.sheets.area_price import area_prices, small_job_sentences, total_area
from tests.explain.examples import EVERY_EXAMPLE
from tests.pricing import shop


@EVERY_EXAMPLE
def test_it_is_the_rate_of_each_placement(job_file):
    """One price for each placement that has its own, as pricing worked it out."""
    results = shop.example_results(job_file)
    rows = area_prices(results)
    assert [row.amount for row in rows] == [
        results.words.price(one.rate) for one in results.quote.chosen.area_price
    ]


@EVERY_EXAMPLE
def test_the_area_is_that_of_all_placements(job_file):
    """Every sheet that names the area names the one that is priced."""
    results = shop.example_results(job_file)
    row = next(one for one in results.quote.adjustment if one.change == 0)
    assert total_area(results) == results.words.quantity(row.area, results.quote.area_unit)


def test_at_the_minimum_no_foot_moves_it(tmp_path):
    """200 sq ft at $1 are filled up to $900: neither more nor less of it is a price by area."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(minimum="$900"))
    assert area_prices(results) == ()


def test_a_small_job_says_from_which_size_a_foot_costs_less(tmp_path):
    """At $2.00 a foot up to 400 sq ft and $1.00 from there, 200 sq ft are told why."""
    small = {**shop.PLAIN, "small_job": {"under": "400 sq ft", "rate": "$2.00 / sq ft"}}
    results = shop.warned(tmp_path, shop.job(), rate_book=shop.book(finishes={"plain": small}))
    (said,) = small_job_sentences(results)
    assert "from 400.0 sq ft up" in said
    plain = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    assert list(small_job_sentences(plain)) == []
