"""The plan to be looked at: figures stand free, and what is drawn was typed."""

from dataclasses import replace
from itertools import combinations
from pathlib import Path

import pytest
from shapely import Point, box

from quotegen.explain.drawing.svg import INK, PAPER, THIN
from quotegen.explain.pictures.plan import DRAIN_PX, FRAMED, draw_plan
from quotegen.explain.pictures.plan_garden import DRAIN_DASH
from quotegen.explain.sheets.sizes import NARROW, PLAN
from quotegen.reading.files.shapes import EdgeKind
from tests.explain.drawn import (
    arrows,
    bar_px_per_ft,
    dashed,
    lettering,
    outlines,
    parsed,
    pen_lines,
    strokes,
    texts,
)
from tests.pricing import shop

EXAMPLES = sorted((Path(__file__).parents[3] / "example_jobs").glob("*/jobs/*.yaml"))
LOOK = replace(FRAMED, ring="2")


def _plan(name: str, viewport=PLAN):
    found = next(one for one in EXAMPLES if name in one.stem)
    results = shop.example(found).results
    assert results
    return parsed(draw_plan(results, viewport, "plan", LOOK))


@pytest.mark.parametrize("name", [one.stem for one in EXAMPLES])
@pytest.mark.parametrize("viewport", [PLAN, NARROW], ids=["paper", "phone"])
def test_words_stand_free_and_large_enough(name: str, viewport):
    """No word over another or off the paper; none under 12 px; no letters of a table."""
    svg = _plan(name, viewport)
    paper = box(0, 0, float(svg.attrib["width"]), float(svg.attrib["height"]))
    placed = lettering(svg)
    for (words, at), (other, there) in combinations(placed, 2):
        assert not at.intersects(there), (words, other)
    assert all(paper.covers(at) for _, at in placed)
    assert all(float(one.attrib["font-size"]) >= 12 for one in svg if one.get("font-size"))
    assert not {"A", "B", "C"} & {*texts(svg)}


def test_a_drain_is_drawn_where_one_is_typed():
    """Orchard Bend has a double line of 16 ft where its drain is typed, Kiln Hill has none."""
    drained, not_drained = _plan("orchard-bend"), _plan("kiln-hill")
    (line,) = pen_lines(drained, INK, DRAIN_PX)
    assert line.length == pytest.approx(16 * bar_px_per_ft(drained), abs=1)
    (between,) = pen_lines(drained, PAPER, DRAIN_PX - 2 * THIN)
    assert between == line
    below_px = 3.75 * bar_px_per_ft(drained)  # 3' 9" from the house, as typed
    house_y = max(outline.bounds[3] for outline in outlines(drained))
    assert [y for _, y in line.coords] == pytest.approx([house_y - below_px] * 2, abs=1)
    assert texts(drained).count("drain") == 1
    assert not pen_lines(not_drained, INK, DRAIN_PX)
    assert "drain" not in texts(not_drained)


@pytest.mark.parametrize("typed", [(EdgeKind.POOL,), ()], ids=["drained", "not"])
def test_a_drained_edge_has_its_drain_along_it(typed: tuple[EdgeKind, ...]):
    """It lies beside the cast edge of a pool, all around it, and is named once."""
    results = shop.example(next(one for one in EXAMPLES if "kiln-hill" in one.stem)).results
    assert results
    (spec,) = results.job.placements
    deck = replace(spec, typed=spec.typed.model_copy(update={"drained_edges": typed}))
    job = replace(results.job, placements=(deck,))
    svg = parsed(draw_plan(replace(results, job=job), PLAN, "plan", LOOK))
    assert len(dashed(svg, DRAIN_DASH)) == len(typed)
    assert texts(svg).count("drain") == len(typed)
    if typed:
        (drain,) = strokes(svg, DRAIN_DASH)
        pool = min(outlines(svg), key=lambda ring: ring.area)
        assert all(3 < pool.distance(Point(at)) < 8 for at in drain.coords)


def test_water_runs_as_typed():
    """Toward the top everywhere, or away from the pool on all sides."""
    up = arrows(_plan("larch-row"))
    assert len(up) >= 2
    assert all(tip.y < start.y and tip.x == pytest.approx(start.x, abs=0.2) for start, tip in up)
    away = [(tip.x - start.x, tip.y - start.y) for start, tip in arrows(_plan("kiln-hill"))]
    assert {(x > 5, x < -5, y > 5, y < -5) for x, y in away} >= {
        (True, False, False, False), (False, True, False, False),
        (False, False, True, False), (False, False, False, True),
    }  # fmt: skip


def test_a_job_without_a_fall_or_a_pool_has_neither():
    """The walk of three keys: its sides, its name, its area."""
    svg = _plan("mill-lane")
    assert not arrows(svg)
    assert "pool" not in texts(svg)
    assert texts(svg).count("44'-0\"") == 1


def test_a_ring_names_the_sheet_that_cuts_the_slab():
    """Once, beside an open edge; without a number there is none."""
    assert texts(_plan("kestrel")).count("2") == 1
    results = shop.example(next(one for one in EXAMPLES if "kestrel" in one.stem)).results
    assert results
    assert "2" not in texts(parsed(draw_plan(results, PLAN, "plan", FRAMED)))
