"""The plan to be looked at: figures stand free, and what is drawn was typed."""

from dataclasses import replace
from itertools import combinations
from pathlib import Path

import pytest
from shapely import box

from quotegen.explain.pictures.plan import FRAMED, draw_plan
from quotegen.explain.pictures.plan_garden import DRAIN_DASH
from quotegen.explain.sheets.sizes import NARROW, PLAN
from tests.explain.drawn import arrows, dashed, lettering, parsed, texts
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
    """The pool edge of Orchard Bend is drained, that of Kiln Hill is not."""
    drained, not_drained = _plan("orchard-bend"), _plan("kiln-hill")
    assert dashed(drained, DRAIN_DASH)
    assert "drain" in texts(drained)
    assert not dashed(not_drained, DRAIN_DASH)
    assert "drain" not in texts(not_drained)


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
