"""The cut-away: this slab's own layers to scale, and no figure that nobody typed."""

import re
from fractions import Fraction
from pathlib import Path

import pytest
from shapely import LineString, box

from quotegen.explain.pictures.cutaway import NOTHING_SAID, AtTheEdge, cutaway
from quotegen.quantity import Length
from tests.explain.drawn import lettering, parsed, texts
from tests.pricing import shop

THICK = {"along": "formed edge", "width": "8 in", "depth": "12 in", "taper": "4 in"}
EXAMPLES = sorted((Path(__file__).parents[3] / "example_jobs").glob("*/jobs/*.yaml"))


def _inches(inches: str) -> Length:
    return Length(Fraction(inches) / 12)


def _drawn(tmp_path, beside: AtTheEdge = NOTHING_SAID, **more: object):
    patio = {**shop.placement("30 ft x 20 ft"), **more}
    results = shop.results(tmp_path, shop.job(patio), rate_book=shop.book())
    return parsed(cutaway(results, results.job.placements[0], 680, "cut", beside))


def test_the_layers_are_named_with_the_depths_of_the_job(tmp_path):
    """4 in of concrete on 4 in of stone need a dig of 8 in; every figure stands on the drawing."""
    written = texts(_drawn(tmp_path))
    for words in ("Ground, dug 8 in below the finished top", "Crushed stone, 4 in, compacted",
                  "Concrete, 4 in, with fibers", "8 in dig"):  # fmt: skip
        assert words in written
    assert written.count("4 in") == 2


def test_depths_are_drawn_to_the_scale_that_is_named(tmp_path):
    """At 1-1/2 in = 1 ft (1 : 8) an inch is 12 px: the dimension of a 4 in slab is 48 px long."""
    svg = _drawn(tmp_path)
    assert "Cut face: 1-1/2 in = 1 ft. What runs back is drawn at half its length." in texts(svg)
    upright = [one for one in svg if one.tag.endswith("line") and one.get("x1") == one.get("x2")]
    long = sorted(abs(float(one.attrib["y1"]) - float(one.attrib["y2"])) for one in upright)
    assert long == pytest.approx([48, 48, 96], abs=0.2)


def test_what_nobody_typed_has_no_figure(tmp_path):
    """Board, lawn and sill have a height only where their owner gave one."""
    silent = texts(_drawn(tmp_path))
    assert "Form board, level with the top" in silent
    assert "Ground beside it" in silent
    assert not any("sill" in words for words in silent)
    beside = AtTheEdge(board=_inches("7/2"), above_lawn=_inches("1"), below_sill=_inches("4"))
    said = texts(_drawn(tmp_path, beside))
    assert {"Form board, 3-1/2 in high", "Lawn, 1 in lower", "sill, 4 in higher"} <= {*said}


def test_a_thickened_edge_is_part_of_the_cut(tmp_path):
    """8 in wide and 12 in deep, as typed, and named."""
    assert "Edge 8 in wide and 12 in deep" in texts(_drawn(tmp_path, thickened_edge=THICK))


@pytest.mark.parametrize("job_file", EXAMPLES, ids=lambda path: path.stem)
@pytest.mark.parametrize("width", [328, 680])
def test_every_example_is_drawn_small_and_legible(job_file: Path, width: int):
    """Under 60 KB, no word over another or off the paper, none smaller than 12 px."""
    results = shop.example(job_file).results
    assert results
    for placement in results.job.placements:
        drawing = cutaway(results, placement, width, "cut")
        svg = parsed(drawing)
        assert len(drawing.svg) < 60_000
        assert all(float(one.attrib["font-size"]) >= 12 for one in svg if one.get("font-size"))
        paper = box(0, 0, float(svg.attrib["width"]), float(svg.attrib["height"]))
        placed = lettering(svg)
        for index, (words, at) in enumerate(placed):
            assert paper.covers(at), words
            assert not any(at.intersects(other) for _, other in placed[index + 1 :]), words


@pytest.mark.parametrize("job_file", EXAMPLES, ids=lambda path: path.stem)
def test_no_line_of_a_flag_crosses_a_word(job_file: Path):
    """Its line goes up from what it names to its own words and meets no other."""
    results = shop.example(job_file).results
    assert results
    for placement in results.job.placements:
        svg = parsed(cutaway(results, placement, 680, "cut"))
        words = [at for _, at in lettering(svg)]
        flags = [line for line in _lines(svg) if _is_flag(line)]
        assert len(flags) >= 6
        assert not any(line.intersects(at) for line in flags for at in words)


def test_the_same_job_is_the_same_drawing(tmp_path):
    """What looks scattered comes from a fixed seed."""
    results = shop.results(tmp_path, shop.job(shop.placement("30 ft x 20 ft")),
                           rate_book=shop.book())  # fmt: skip
    first, second = (cutaway(results, results.job.placements[0], 680, "cut") for _ in range(2))
    assert first == second


def _lines(svg) -> list[LineString]:
    data = " ".join(one.get("d") or "" for one in svg if one.tag.endswith("path"))
    runs = re.findall(r"M[^M]+", data)
    points = [re.findall(r"(-?[\d.]+) (-?[\d.]+)", run) for run in runs]
    return [LineString([(float(x), float(y)) for x, y in run]) for run in points if len(run) > 1]


def _is_flag(line: LineString) -> bool:
    """Whether a line goes straight up and then 8 px to the right."""
    (x1, y1), (x2, y2) = list(line.coords)[-2:]
    return len(line.coords) == 4 and y1 == y2 and abs(x2 - x1 - 8) < 0.11
