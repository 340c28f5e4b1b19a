"""The takeoff as it is handed on: the area of the whole job."""

from tests.pricing import shop


def test_placements_are_rounded_one_by_one(tmp_path):
    """The area of the job is the sum of the areas as priced, not the sum rounded again."""
    parts = (shop.placement("10.04 ft x 1 ft", "one"),
             shop.placement("10.04 ft x 1 ft", "two", at="30 ft"))  # fmt: skip
    results = shop.results(tmp_path, shop.job(*parts), rate_book=shop.book())
    assert str(results.takeoff.area(results.job.units)) == "20.0"  # 20.08 in one piece
