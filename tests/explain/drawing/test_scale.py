"""The scale of a plan: a ruler on the paper reads the size of the slab, across and up alike."""

import pytest
from shapely import MultiPolygon

from quotegen.explain.drawing.scale import SCALES_US, Viewport
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan import draw_plan
from quotegen.explain.results import Results
from quotegen.explain.sheets.sizes import DOOR, NARROW, PLAN
from tests.explain.drawn import bar_px_per_ft, outlines, parsed, px_per_ft
from tests.pricing import shop

FEET_PER_METER = 1 / 0.3048
SLABS = {
    "wide": ([{"rectangle": "40 ft x 12 ft"}], 40, 12),
    "tall": ([{"rectangle": "7 ft 6 in x 31 ft"}], 7.5, 31),
    "notched": ([{"rectangle": "30 ft x 20 ft"}, {"rectangle": "6 ft x 9 ft", "at": ["30 ft", 0]}],
                36, 20),
    "slanted": ([{"trapezoid": {"bottom": "30 ft", "top": "20 ft", "height": "15 ft"}}], 30, 15),
    "metric": ([{"rectangle": "9 m x 6.5 m"}], 9 * FEET_PER_METER, 6.5 * FEET_PER_METER),
}  # fmt: skip
"""Slabs as typed, with the feet that they measure across and up."""

EVERY_SLAB = pytest.mark.parametrize("slab", SLABS)


@pytest.fixture(scope="module")
def results(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Results]:
    """Each slab, figured once."""
    return {
        slab: shop.results(
            tmp_path_factory.mktemp(slab),
            shop.job(
                {"id": "patio", "use": "patio", "add": add},
                units="metric" if slab == "metric" else "us",
            ),
            rate_book=shop.book(),
        )
        for slab, (add, _, _) in SLABS.items()
    }


def _size_px(drawing: Drawing) -> tuple[float, float]:
    left, top, right, bottom = MultiPolygon(outlines(parsed(drawing))).bounds
    return right - left, bottom - top


@EVERY_SLAB
def test_a_ruler_reads_the_slab(results: dict[str, Results], slab: str):
    """At the scale that the drawing names both sides measure what the tape read."""
    drawing = draw_plan(results[slab], PLAN, "plan")
    assert drawing.scale
    _, across, up = SLABS[slab]
    per_ft = px_per_ft(drawing.scale)
    assert _size_px(drawing) == pytest.approx((across * per_ft, up * per_ft), abs=0.2)


@EVERY_SLAB
@pytest.mark.parametrize("viewport", [PLAN, DOOR, NARROW], ids=["wide", "door", "narrow"])
def test_the_scale_bar_reads_the_slab(results: dict[str, Results], slab: str, viewport: Viewport):
    """Laid along either side, the bar gives its length, also where no ruler's scale is named."""
    drawing = draw_plan(results[slab], viewport, "plan")
    _, across, up = SLABS[slab]
    per_ft = bar_px_per_ft(parsed(drawing))
    assert _size_px(drawing) == pytest.approx((across * per_ft, up * per_ft), rel=0.005)


@EVERY_SLAB
def test_it_is_the_largest_that_fits(results: dict[str, Results], slab: str):
    """On a phone one of the two sides fills what the margins leave, and neither runs over."""
    wide, high = _size_px(draw_plan(results[slab], NARROW, "plan"))
    spare = (NARROW.width_px - NARROW.left_px - NARROW.right_px - wide,
             NARROW.height_px - NARROW.top_px - NARROW.bottom_px - high)  # fmt: skip
    assert min(spare) == pytest.approx(0, abs=0.2)
    assert max(spare) >= 0


@pytest.mark.parametrize(("name", "per_ft"), SCALES_US)
def test_a_scale_is_what_its_name_says(name: str, per_ft: float):
    """An inch of paper has 96 px: at 1/4 in to the foot a foot has 24."""
    assert px_per_ft(name) == per_ft
