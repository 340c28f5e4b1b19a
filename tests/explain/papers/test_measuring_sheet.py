"""The measuring sheet: what a tape should read, how we measured, and how sure that is."""

from pathlib import Path

from quotegen.explain.drawing.canvas import marked_edges
from quotegen.explain.papers.measuring_sheet import measuring_sheet
from tests.explain.examples import EVERY_EXAMPLE, example_measuring_sheet
from tests.pricing import shop

(KIDNEY,) = (path for path in shop.JOBS if "kidney" in path.name)


@EVERY_EXAMPLE
def test_the_table_is_the_takeoff(job_file: Path):
    """The table of edges gives every edge the length that a tape should read."""
    results = shop.example_results(job_file)
    rows = example_measuring_sheet(job_file).edges
    marked = marked_edges(results.takeoff)
    assert [row.mark for row in rows] == [one.mark for one in marked]
    for row, one in zip(rows, marked, strict=True):
        assert row.along == results.words.feet(one.edge.length_ft)
        if row.chord:
            assert row.chord == results.words.feet(one.edge.chord_ft)
            assert row.rise == results.words.feet(one.edge.rise_ft)


def test_an_oval_edge_is_curved(tmp_path):
    """The edge of an ellipse is called curved, though it has no one radius."""
    oval = {"rectangle": "30 ft x 20 ft"}, {"ellipse": "10 ft x 6 ft", "at": ["15 ft", "10 ft"]}
    deck = {**shop.placement("30 ft x 20 ft"), "add": [oval[0]], "take_away": [oval[1]]}
    results = shop.results(tmp_path, shop.job(deck), rate_book=shop.book())
    kinds = {row.kind for row in measuring_sheet(results).edges if "opening" in row.where}
    assert kinds == {results.words("edge_curved")}


@EVERY_EXAMPLE
def test_the_sizes_are_those_of_the_takeoff(job_file: Path):
    """Area, thickness and volume of each placement; of several, a row for all of them."""
    results = shop.example_results(job_file)
    words, takeoff = results.words, results.takeoff
    rows = example_measuring_sheet(job_file).sizes
    several = len(takeoff.placements) > 1
    assert len(rows) == len(takeoff.placements) + several
    for row, spec, measured in zip(rows, results.job.placements, takeoff.placements, strict=False):
        assert (row.name, row.area) == (spec.name, words.area(measured))
        assert row.thickness == words.depth(spec.thickness)
        assert row.volume == words.volume(measured.volume_cuyd)
    assert not several or rows[-1].volume == words.volume(takeoff.volume_cuyd)


def test_it_says_how_and_how_sure():
    """It names the way of measuring, the range, the money, and the step by the foot."""
    sheet = example_measuring_sheet(KIDNEY)
    (row,) = sheet.measured
    assert "A border around the pool" in row.text
    assert "Two tapes to each point from pins 32'-0\" apart" in row.text
    assert "95 times in 100" in sheet.sure[0]
    assert "$" in sheet.sure[1]
    assert [step.amount for step in sheet.steps] == ["6.5 ft"]
