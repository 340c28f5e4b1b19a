"""The sample board: all finishes of a quote, to the scale that it names."""

from pathlib import Path

import pytest
from shapely import box

from quotegen.explain.pictures.sample_board import sample_board
from tests.explain.drawn import lettering, parsed, texts
from tests.pricing import shop

EXAMPLES = sorted((Path(__file__).parents[3] / "example_jobs").glob("*/jobs/*.yaml"))


@pytest.mark.parametrize("job_file", EXAMPLES, ids=lambda path: path.stem)
@pytest.mark.parametrize("width", [328, 680])
def test_every_finish_has_its_sample(job_file: Path, width: int):
    """Each finish by name, no word over another, under 60 KB, on paper and on a phone."""
    results = shop.example(job_file).results
    assert results
    drawing = sample_board(results, width, "board")
    svg, said = parsed(drawing), " ".join(texts(parsed(drawing)))
    assert len(drawing.svg) < 60_000
    for finish in results.quote.finishes:
        assert results.job.rate_book.finishes[finish.id].name in said
    paper, placed = box(0, 0, width, float(svg.attrib["height"])), lettering(svg)
    for index, (words, at) in enumerate(placed):
        assert paper.covers(at), words
        assert not any(at.intersects(other) for _, other in placed[index + 1 :]), words


def test_the_bar_is_as_long_as_the_scale_says():
    """At 1 : 10 a foot is 1.2 in of paper, and 0.3 m are 30 mm (96 px are an inch of 25.4 mm)."""
    us, metric = (
        shop.example(next(one for one in EXAMPLES if name in one.stem)).results
        for name in ("tanager", "ferry")
    )
    for results, name, long in ((us, "12 in", 1.2 * 96), (metric, "300 mm", 30 / 25.4 * 96)):
        assert results
        drawing = sample_board(results, 680, "board")
        assert drawing.scale == "1 : 10"
        bar = next(at for words, at in lettering(parsed(drawing)) if words == name)
        assert bar.bounds[0] - 10 == pytest.approx(long, abs=1)
