"""How a part was measured: every reading one by one, as the tape read it."""

from pathlib import Path

import pytest

from quotegen.explain.papers.measuring_sheet import measuring_sheet
from tests.pricing import shop


def _row(tmp_path, **shape: object):
    deck = {**shop.placement("30 ft x 20 ft"), "add": [shape]}
    (row,) = measuring_sheet(
        shop.results(tmp_path, shop.job(deck), rate_book=shop.book())
    ).measured  # fmt: skip
    return row


def test_offsets_stand_by_their_station(tmp_path):
    """A far edge alone is one distance at each station; with a near edge it is two."""
    far = ["10 ft", '12 ft 6-1/8"', "11 ft"]
    alone = _row(tmp_path, offsets={"every": "5 ft", "far": far, "rule": "simpson"})
    assert alone.readings == ('0": 10\'-0"', "5'-0\": 12'-6 1/8\"", "10'-0\": 11'-0\"")
    both = {"every": "5 ft", "far": far, "near": ["0", "1 ft", "0"], "rule": "trapezoid"}
    assert _row(tmp_path, offsets=both).readings[1] == "5'-0\": 12'-6 1/8\" and 1'-0\""


def test_ties_stand_point_by_point():
    """The pool of a border is read by its points, in the order in which they were taped."""
    kidney = next(job for job in shop.JOBS if job.stem == "kestrel-court-kidney-deck")
    results = shop.example_results(kidney)
    (row,) = measuring_sheet(results).measured
    border = results.job.placements[0].add[0].border
    assert border is not None
    assert border.pool.ties is not None
    assert len(row.readings) == len(border.pool.ties.points)
    assert row.readings[5] == "30'-3\" and 20'-7 5/8\""
    assert not any(reading in row.text for reading in row.readings)


def test_a_plain_shape_says_its_readings_in_the_sentence(tmp_path):
    """Two lengths need no list."""
    row = _row(tmp_path, rectangle="30 ft x 20 ft")
    assert row.readings == ()
    assert "30'-0\"" in row.text


@pytest.mark.parametrize(("offsets", "said"), [
    ({"rule": "simpson"}, "Simpson’s rule."), ({}, "trapezoid rule."),
])  # fmt: skip
def test_the_rule_of_offsets_is_always_printed(tmp_path: Path, offsets: dict[str, str], said: str):
    """The measuring sheet and the working name the rule that made the area."""
    typed = {"every": "4 ft", "far": ["9 ft", "10 ft", "9 ft 6 in"], **offsets}
    job = shop.job({**shop.placement("1 ft x 1 ft"), "add": [{"offsets": typed}]})
    results = shop.results(tmp_path, job, rate_book=shop.book())
    assert said in measuring_sheet(results).measured[0].text
    formula = results.takeoff.placements[0].working[0].inputs[0].formula
    assert said.partition("’")[0].removesuffix(" rule.").lower() in formula.lower()
