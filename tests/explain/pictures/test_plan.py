"""The plan: what it says is what the takeoff measured."""

import re
import xml.etree.ElementTree as ET
from itertools import pairwise
from pathlib import Path

import pytest

from quotegen.explain.drawing.canvas import marked_edges
from quotegen.explain.pictures.plan import FRAMED, MEASURED, draw_plan
from quotegen.explain.results import Results
from quotegen.explain.sheets.sizes import PLAN
from quotegen.takeoff.plan_geometry import SpanOf
from tests.explain.drawn import (
    SVG,
    arrows,
    bar_px_per_ft,
    filled,
    in_feet,
    lettering,
    outlines,
    parsed,
    texts,
    thin_lines,
)
from tests.explain.examples import (
    EVERY_EXAMPLE,
    EVERY_VIEWPORT,
    VIEWPORTS,
    example_plan,
    example_view,
)
from tests.pricing import shop

DIMENSION = re.compile(r"(?:([A-Z]{1,2})  )?((?:\d+'-)?\d+(?: \d/\d)?\"|\d+\.\d\d m)")


def _drawn(results: Results) -> ET.Element:
    return parsed(draw_plan(results, PLAN, "plan"))


def _dimensions(svg: ET.Element) -> list[tuple[str, str]]:
    """Return the dimensions of a plan: the letter, if any, and the length."""
    found = (DIMENSION.fullmatch(text) for text in texts(svg))
    return [(match[1] or "", match[2]) for match in found if match]


@EVERY_EXAMPLE
@EVERY_VIEWPORT
class TestEveryPlan:
    """Every example on every size of paper."""

    def test_each_dimension_is_that_of_the_takeoff(self, job_file: Path, viewport: str):
        """A lettered dimension is its edge's length; one without a letter is a measured span."""
        results = shop.example_results(job_file)
        words, takeoff = results.words, results.takeoff
        edges = {one.mark: words.feet(one.edge.length_ft) for one in marked_edges(takeoff)}
        spans = {words.feet(span.length_ft) for p in takeoff.placements for span in p.spans}
        dimensions = _dimensions(example_plan(job_file, viewport))
        assert dimensions
        for letter, length in dimensions:
            assert (edges[letter] == length) if letter else (length in spans), (letter, length)

    def test_each_edge_has_its_letter_once(self, job_file: Path, viewport: str):
        """Every edge is on the plan, by its dimension or its mark, and none is there twice."""
        results = shop.example_results(job_file)
        svg = example_plan(job_file, viewport)
        letters = [letter for letter, _ in _dimensions(svg) if letter]
        letters += _ringed(svg)
        wanted = [one.mark for one in marked_edges(results.takeoff)]
        assert sorted(letters) == sorted(wanted)
        assert len(set(wanted)) == len(wanted)

    def test_it_is_well_formed_and_has_a_title(self, job_file: Path, viewport: str):
        """The drawing is XML whose first child is its title, which names it for who cannot see."""
        results = shop.example_results(job_file)
        svg = example_plan(job_file, viewport)
        assert svg.tag == f"{SVG}svg"
        assert svg[0].tag == f"{SVG}title"
        assert results.job.site.address in (svg[0].text or "")
        assert svg.get("role") == "img"
        assert svg.get("aria-labelledby") == svg[0].get("id")

    def test_it_stays_on_its_paper(self, job_file: Path, viewport: str):
        """Every text begins on the paper, and the paper is no wider than the room."""
        svg = example_plan(job_file, viewport)
        left, top, width, height = (float(n) for n in (svg.get("viewBox") or "").split())
        assert width <= VIEWPORTS[viewport].width_px
        for text in svg.iter(f"{SVG}text"):
            assert left <= float(text.get("x") or 0) <= left + width, text.text
            assert top <= float(text.get("y") or 0) <= top + height, text.text

    def test_areas_are_as_priced(self, job_file: Path, viewport: str):
        """Each placement is named, with its area as it is priced."""
        results = shop.example_results(job_file)
        written = texts(example_plan(job_file, viewport))
        for spec, measured in zip(results.job.placements, results.takeoff.placements, strict=True):
            assert spec.name in written
            assert results.words.area(measured) in written


def _ringed(svg: ET.Element) -> list[str]:
    """Return the letters in rings: a circle and the text that follows it."""
    parts = list(svg)
    return [
        following.text or ""
        for part, following in pairwise(parts)
        if part.tag == f"{SVG}circle" and following.tag == f"{SVG}text"
    ]


@EVERY_EXAMPLE
def test_ids_do_not_clash_on_the_page(job_file: Path):
    """All drawings of the sheets stand on one page, so no id is there twice."""
    view = example_view(job_file)
    joints = [view.slab.joints] if view.slab.joints else []
    pairs = [view.price.plan, *view.slab.cut_open, *joints]
    drawings = [one for pair in pairs for one in (pair.wide, pair.narrow)]
    drawings += [column.swatch for column in view.finishes.columns]
    ids = [i for one in drawings for i in re.findall(r'\bid="([^"]+)"', str(one.svg))]
    assert len(ids) == len(set(ids))
    for one in drawings:
        used = set(re.findall(r"url\(#([^)]+)\)", str(one.svg)))
        assert used <= set(re.findall(r'\bid="([^"]+)"', str(one.svg)))


def test_letters_go_on_after_z(tmp_path):
    """The twenty-seventh edge is AA, and no letter is used twice."""
    steps = [{"id": f"s{n}", "use": "patio", "add": [
        {"rectangle": "4 ft x 4 ft", "at": [f"{6 * n} ft", "0"]}]} for n in range(7)]  # fmt: skip
    results = shop.results(tmp_path, shop.job(*steps), rate_book=shop.book())
    marks = [one.mark for one in marked_edges(results.takeoff)]
    assert marks[0] == "A"
    assert marks[25:] == ["Z", "AA", "AB"]


@pytest.mark.parametrize("name", ["A & B <c>", '"Quoted"', "Café Peña"])
def test_any_name_is_text(tmp_path, name: str):
    """A name with signs that mean something in XML is drawn as text."""
    deck = {**shop.placement("30 ft x 20 ft"), "name": name}
    results = shop.results(tmp_path, shop.job(deck), rate_book=shop.book())
    assert name in texts(_drawn(results))


OPPOSITE = {"top": "bottom", "bottom": "top", "left": "right", "right": "left"}
ON_PAPER = {"top": (0, -1), "bottom": (0, 1), "left": (-1, 0), "right": (1, 0)}
"""Across and down the paper, for each side as the plan is typed."""


def _falling(folder: Path, **falls: object) -> ET.Element:
    """Draw a patio with the house at the side that it does not fall toward."""
    away = OPPOSITE.get(str(falls.get("falls_toward")), "bottom")
    shape = {"rectangle": "30 ft x 20 ft", "against_house": away}
    patio = {"id": "patio", "use": "patio", "add": [shape], "fall": "1/4 in per ft", **falls}
    job = shop.job(patio)
    return _drawn(shop.results(folder, job, rate_book=shop.book()))


@pytest.mark.parametrize("toward", OPPOSITE)
def test_the_arrow_points_where_water_runs(tmp_path: Path, toward: str):
    """It points straight to the side that the slab falls toward, and its slope is written."""
    svg = _falling(tmp_path, falls_toward=toward)
    ((start, tip),) = arrows(svg)
    across, down = tip.x - start.x, tip.y - start.y
    long = start.distance(tip)
    assert long > 30
    assert (across / long, down / long) == pytest.approx(ON_PAPER[toward], abs=0.01)
    assert "1/4 in per ft" in texts(svg)


@pytest.mark.parametrize("toward", OPPOSITE)
def test_the_arrow_points_away_from_the_house(tmp_path: Path, toward: str):
    """The wall is drawn behind the start of the arrow, whatever way the plan is turned."""
    svg = _falling(tmp_path, falls_toward=toward)
    ((start, tip),) = arrows(svg)
    (wall,) = filled(svg, "url(#plan-wall)")
    assert wall.distance(tip) > wall.distance(start) + 30
    (slab,) = outlines(svg)
    assert slab.contains(start)
    assert slab.contains(tip)


def test_a_slab_that_falls_away_from_a_wall_has_no_one_arrow(tmp_path: Path):
    """Water that leaves an edge on all its sides has no one direction; heights tell it."""
    assert arrows(_falling(tmp_path, falls_away_from="house")) == []


@EVERY_EXAMPLE
@EVERY_VIEWPORT
def test_a_dimension_line_is_as_long_as_it_says(job_file: Path, viewport: str):
    """The line beside each dimension, held to the scale bar, is the length that is written."""
    svg = example_plan(job_file, viewport)
    per_ft, lines = bar_px_per_ft(svg), thin_lines(svg)
    found = [(DIMENSION.fullmatch(text), box) for text, box in lettering(svg)]
    dimensions = [(match[2], box) for match, box in found if match]
    assert dimensions
    for length, box in dimensions:
        wanted = in_feet(length) * per_ft
        near = [line for line in lines if line.distance(box) < 8]
        assert min(abs(line.length - wanted) for line in near) < 0.01 * wanted + 0.3, length


@EVERY_VIEWPORT
@pytest.mark.parametrize("name", ["orchard-bend-pool-deck", "kiln-hill-pool-deck"])
def test_a_pool_has_its_sizes_and_the_deck_beside_it(name: str, viewport: str):
    """Length and width of the pool, and the deck above and below its middle."""
    (job_file,) = [one for one in shop.JOBS if one.stem == name]
    results = shop.example_results(job_file)
    said = texts(parsed(draw_plan(results, VIEWPORTS[viewport], "plan", FRAMED)))
    spans = [span for p in results.takeoff.placements for span in p.spans]
    upright = [span for span in spans if span.start_ft[0] == span.end_ft[0]]
    wanted = [span for span in upright if span.of is not SpanOf.OVERALL]
    wanted += [span for span in spans if span.of is SpanOf.POOL]
    assert len(wanted) >= 4
    assert {results.words.feet(span.length_ft) for span in wanted} <= set(said)


@EVERY_VIEWPORT
def test_steps_are_drawn_where_the_job_puts_them(viewport: str):
    """The patio at Larch Row has its two treads at the door, and their name beside them."""
    (job_file,) = [one for one in shop.JOBS if one.stem == "larch-row-patio"]
    results = shop.example_results(job_file)
    (measured,) = results.takeoff.placements
    assert measured.flight is not None
    assert len(measured.flight.treads_ft) == 2
    for look in (FRAMED, MEASURED):
        said = texts(parsed(draw_plan(results, VIEWPORTS[viewport], "plan", look)))
        assert results.words("plan_flight") in said
