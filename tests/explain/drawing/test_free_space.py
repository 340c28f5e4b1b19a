"""Nothing that is to be read on a drawing is struck by a line, a ring or another text."""

from itertools import combinations
from pathlib import Path

import pytest

from quotegen.explain.drawing.scale import Viewport
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.joint_drawing import draw_joints
from quotegen.explain.pictures.plan import draw_plan
from quotegen.explain.pictures.reach_drawing import draw_reach
from quotegen.explain.results import Results
from quotegen.explain.sheets.plan_sheet import DOOR, FLAT, NARROW, SMALL, WIDE
from tests.explain.drawn import lettering, parsed, rings, strokes
from tests.pricing import shop

VIEWPORTS = {"small": SMALL, "wide": WIDE, "narrow": NARROW, "door": DOOR}
EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
EVERY_VIEWPORT = pytest.mark.parametrize("viewport", VIEWPORTS.values(), ids=VIEWPORTS)


def _struck(drawing: Drawing) -> list[tuple[str, str]]:
    """Return the texts that meet another text, a line, or the ring of a callout not their own."""
    svg = parsed(drawing)
    boxes = lettering(svg)
    found = [(a, b) for (a, one), (b, other) in combinations(boxes, 2) if one.intersects(other)]
    for name, where in boxes:
        found += [(name, f"line {line.wkt}") for line in strokes(svg) if line.intersects(where)]
        found += [
            (name, "ring")
            for ring in rings(svg)
            if ring.intersects(where) and not ring.contains(where.centroid)
        ]
    return found


def _joints(results: Results) -> Drawing:
    return draw_joints(results, FLAT, "joints").drawing


@EVERY_EXAMPLE
@EVERY_VIEWPORT
def test_no_lettering_of_a_plan_is_struck(job_file: Path, viewport: Viewport):
    """Dimensions, names, letters and the scale keep clear of all lines and of each other."""
    results = shop.example_results(job_file)
    assert _struck(draw_plan(results, viewport, "plan")) == []


@EVERY_EXAMPLE
def test_no_lettering_of_a_joint_plan_is_struck(job_file: Path):
    """The size of a panel stands between its joints, never over one."""
    assert _struck(_joints(shop.example_results(job_file))) == []


@EVERY_EXAMPLE
def test_no_lettering_of_a_reach_drawing_is_struck(job_file: Path):
    """Trucks, ways and what stands in the way are named clear of the lines."""
    drawn = draw_reach(shop.example_results(job_file), FLAT, "reach")
    assert drawn is None or _struck(drawn) == []


@EVERY_EXAMPLE
@EVERY_VIEWPORT
def test_dimension_lines_keep_apart(job_file: Path, viewport: Viewport):
    """No dimension line crosses another one, nor the outline of a slab beside it."""
    results = shop.example_results(job_file)
    svg = parsed(draw_plan(results, viewport, "plan"))
    inked = [line for line in strokes(svg) if line.length > 0]
    thin = [line for line in inked if len(line.coords) == 2]
    assert not [(a.wkt, b.wkt) for a, b in combinations(thin, 2) if a.crosses(b) and _far(a, b)]


def _far(a, b) -> bool:
    """Say whether two lines cross farther from their ends than a tick or a projection reaches."""
    at = a.intersection(b)
    ends = [end for line in (a, b) for end in line.boundary.geoms]
    return all(at.distance(end) > 8 for end in ends)
