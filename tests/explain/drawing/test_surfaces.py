"""Surfaces from above: on their rectangle, each kind its own, nothing repeated in a tile."""

from itertools import combinations

import pytest

from quotegen.explain.drawing.surfaces import surface_strokes
from quotegen.reading.files.rate_book import FinishKind, Pattern

LOOKS = [(kind, Pattern.CUT_STONE) for kind in FinishKind] + [
    (FinishKind.STAMPED_PATTERN, pattern) for pattern in (Pattern.BRICK, Pattern.PLANKS)
]


@pytest.mark.parametrize(("kind", "pattern"), LOOKS)
@pytest.mark.parametrize("size", [(12, 5), (22, 20)])
def test_no_stroke_leaves_the_surface(kind: FinishKind, pattern: Pattern, size: tuple[int, int]):
    """A sample stands in a frame, and a cut-away has no line beside its slab."""
    strokes = surface_strokes(kind, pattern, *size, 0.25)
    assert strokes
    for stroke in strokes:
        assert all(-0.02 <= x <= size[0] + 0.02 for x, _ in stroke.points)
        assert all(-0.02 <= y <= size[1] + 0.02 for _, y in stroke.points)


def test_looks_differ_in_black_and_white():
    """No two looks are the same strokes, and the same look is the same each time."""
    drawn = [surface_strokes(kind, pattern, 20, 20, 0.25) for kind, pattern in LOOKS]
    assert all(one != other for one, other in combinations(drawn, 2))
    assert drawn == [surface_strokes(kind, pattern, 20, 20, 0.25) for kind, pattern in LOOKS]


def test_planks_are_long_and_blocks_are_not():
    """Every line of planks across runs the whole width; a course of blocks has ends in it."""
    planks, blocks = (
        surface_strokes(FinishKind.STAMPED_PATTERN, pattern, 24, 18, 0.25)
        for pattern in (Pattern.PLANKS, Pattern.BRICK)
    )
    upright = [
        sum(one.points[0][0] == one.points[-1][0] and not one.closed for one in strokes)
        for strokes in (planks, blocks)
    ]
    assert upright[0] <= 2
    assert upright[1] >= 8


def test_lines_keep_apart_at_a_small_scale():
    """A broom's lines are never closer than the drawing can show."""
    lines = surface_strokes(FinishKind.BROOM, Pattern.CUT_STONE, 10, 10, 1)
    heights = sorted({round((one.points[0][1] + one.points[1][1]) / 2, 1) for one in lines})
    rows = [y for y, before in zip(heights[1:], heights, strict=False) if y - before > 0.3]
    assert len(rows) <= 9


@pytest.mark.parametrize("kind", FinishKind)
@pytest.mark.parametrize("size", [(0.5, 0.5), (1, 30)])
def test_a_sliver_is_drawn_without_fault(kind: FinishKind, size: tuple[float, float]):
    """A surface smaller than a stone may have none, and is no error."""
    surface_strokes(kind, Pattern.PLANKS, *size, 0.25)
