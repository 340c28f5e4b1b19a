"""Steps from the side: what was typed of them, and no more."""

from itertools import combinations
from typing import Any

import pytest

from quotegen.explain.drawing.pens import Pen
from quotegen.explain.drawing.svg import INK
from quotegen.explain.pictures.steps_drawing import steps_drawing
from quotegen.explain.sheets.sizes import STEPS_PX
from tests.explain.drawn import lettering, parsed, pen_lines, texts
from tests.pricing import shop


def _drawn(tmp_path, width_px: float = 328, **steps: Any):
    patio = {**shop.placement("30 ft x 20 ft"), **({"steps": steps} if steps else {})}
    results = shop.results(tmp_path, shop.job(patio), rate_book=shop.book())
    return steps_drawing(results, results.job.placements[0], width_px, "steps")


def test_every_rise_and_all_together(tmp_path):
    """Steps of 6, 6-1/4 and 6 in rise 18-1/4 in together."""
    said = texts(parsed(_drawn(tmp_path, risers=["6 in", "6-1/4 in", "6 in"])))
    assert "18-1/4 in" in said
    assert "Heights from the bottom up: 6 in, 6-1/4 in, and 6 in." in " ".join(said)


@pytest.mark.parametrize("count", [1, 2, 3, 4])
def test_the_steps_can_be_seen(tmp_path, count: int):
    """At the size of the sheet the heavy line climbs step by step, each as high as it was typed."""
    svg = parsed(_drawn(tmp_path, STEPS_PX, risers=["7 in"] * count, width="4 ft", tread="11 in"))
    (line,) = pen_lines(svg, INK, round(Pen.HEAVY.px, 1))
    heights = [y for _, y in line.coords]
    assert heights[0] - heights[-1] >= 40
    rises = [before - after for before, after in zip(heights[::2], heights[1::2], strict=False)]
    assert rises == pytest.approx([rises[0]] * count, abs=0.2)


def test_heights_without_room_are_said_below(tmp_path):
    """On a phone a long flight is drawn small, and its heights stand in a sentence."""
    said = " ".join(
        texts(parsed(_drawn(tmp_path, risers=["6 in"] * 8, width="4 ft", tread="12 in")))
    )
    assert f"Heights from the bottom up: {7 * '6 in, '}and 6 in." in said


def test_what_was_not_typed_is_not_said(tmp_path):
    """Without `tread` no depth stands there and the drawing says so; without `poured` no word."""
    silent = " ".join(texts(parsed(_drawn(tmp_path, risers=["6 in", "6 in"]))))
    assert "not drawn to scale" in silent
    assert "poured" not in silent
    sizes: dict[str, Any] = {"risers": ["6 in", "6 in"], "width": "4 ft", "tread": "14 in"}
    said = " ".join(texts(parsed(_drawn(tmp_path, **sizes, poured="the slab"))))
    assert "14 in" in said
    assert "not drawn to scale" not in said
    assert "poured as one piece" in said


def test_at_the_house_they_climb_from_the_slab(tmp_path):
    """They end at the wall, and no slab is drawn beside them."""
    sizes: dict[str, Any] = {"risers": ["6 in", "6 in"], "width": "4 ft", "tread": "14 in"}
    patio = {"id": "patio", "use": "patio", "fall": "1/4 in per ft", "falls_toward": "top",
             "add": [{"rectangle": "20 ft x 10 ft", "against_house": "bottom"}],
             "steps": {**sizes, "at": ["10 ft", "0"]}}  # fmt: skip
    results = shop.results(tmp_path, shop.job(patio), rate_book=shop.book())
    drawn = steps_drawing(results, results.job.placements[0], 400, "steps")
    assert drawn is not None
    said = " ".join(texts(parsed(drawn)))
    assert "on the slab, the house at the right" in said
    assert "the slab at the right" not in said


def test_a_job_without_steps_has_no_drawing(tmp_path):
    """Nothing typed, nothing drawn."""
    assert _drawn(tmp_path) is None


@pytest.mark.parametrize("count", [1, 2, 6, 14])
@pytest.mark.parametrize("width", [328, 680])
def test_words_stand_apart_on_any_flight(tmp_path, count: int, width: int):
    """From one step to fourteen, on a phone and on paper, no word stands over another."""
    svg = parsed(_drawn(tmp_path, width, risers=["7 in"] * count, width="4 ft", tread="11 in"))
    placed = [at for _, at in lettering(svg)]
    assert not any(one.intersects(other) for one, other in combinations(placed, 2))
