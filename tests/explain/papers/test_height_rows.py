"""Heights: of the corners, along the edges, and what they count from."""

from pathlib import Path

from quotegen.explain.papers.height_rows import corner_rows, drop_rows, heights_from
from quotegen.explain.results import Results
from tests.pricing import shop


def _falling(folder: Path, **more: object) -> Results:
    shape = {"rectangle": "30 ft x 20 ft", "against_house": "top"}
    patio = {"id": "patio", "use": "patio", "add": [shape], "fall": "1/4 in per ft",
             "falls_toward": "bottom", **more}  # fmt: skip
    return shop.results(folder, shop.job(patio), rate_book=shop.book())


def test_a_fall_of_a_quarter_inch_a_foot(tmp_path):
    """Over 20 ft a quarter inch a foot is 5 in: two corners at the house, two that much lower."""
    results = _falling(tmp_path)
    heights = [row.height for row in corner_rows(results)]
    assert len(heights) == 4
    assert sorted(heights.count(height) for height in set(heights)) == [2, 2]
    assert {row.drop for row in drop_rows(results)} == {'5"'}


def test_corners_are_named_by_the_letters_of_their_edges(tmp_path):
    """Four edges A to D meet in four corners, each named once."""
    marks = [row.mark for row in corner_rows(_falling(tmp_path))]
    assert len(set(marks)) == len(marks) == 4
    assert all(" meets " in mark for mark in marks)


def test_without_a_fall_there_are_no_heights(tmp_path):
    """A job that types no fall has neither heights nor a mark that they count from."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    assert (corner_rows(results), drop_rows(results), heights_from(results)) == ((), (), "")


def test_what_they_count_from_is_said(tmp_path):
    """Without a mark of its own, from the highest point."""
    assert heights_from(_falling(tmp_path)) == "Heights of Patio count from its highest point."
