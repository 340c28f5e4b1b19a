"""Nothing that is to be read on a drawing is struck by a line, a ring or another text."""

import xml.etree.ElementTree as ET
from itertools import combinations
from pathlib import Path

from quotegen.explain.pictures.reach_drawing import draw_reach
from quotegen.explain.private.crew_sheet import FLAT
from tests.explain.drawn import lettering, parsed, rings, strokes
from tests.explain.examples import (
    EVERY_EXAMPLE,
    EVERY_VIEWPORT,
    example_joints,
    example_plan,
)
from tests.pricing import shop


def _struck(svg: ET.Element) -> list[tuple[str, str]]:
    """Return the texts that meet another text, a line, or the ring of a callout not their own."""
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


@EVERY_EXAMPLE
@EVERY_VIEWPORT
def test_no_lettering_of_a_plan_is_struck(job_file: Path, viewport: str):
    """Dimensions, names, letters and the scale keep clear of all lines and of each other."""
    assert _struck(example_plan(job_file, viewport)) == []


@EVERY_EXAMPLE
def test_no_lettering_of_a_joint_plan_is_struck(job_file: Path):
    """The size of a panel stands between its joints, never over one."""
    assert _struck(example_joints(job_file)) == []


@EVERY_EXAMPLE
def test_no_lettering_of_a_reach_drawing_is_struck(job_file: Path):
    """Trucks, ways and what stands in the way are named clear of the lines."""
    drawn = draw_reach(shop.example_results(job_file), FLAT, "reach")
    assert drawn is None or _struck(parsed(drawn)) == []


@EVERY_EXAMPLE
@EVERY_VIEWPORT
def test_dimension_lines_keep_apart(job_file: Path, viewport: str):
    """No dimension line crosses another one, nor the outline of a slab beside it.

    A pool with round ends has its length and its width at its middle alone: there they may.
    """
    inked = [line for line in strokes(example_plan(job_file, viewport)) if line.length > 0]
    thin = [line for line in inked if len(line.coords) == 2]
    assert not [(a.wkt, b.wkt) for a, b in combinations(thin, 2) if a.crosses(b) and _wrongly(a, b)]


def _wrongly(a, b) -> bool:
    """Whether two lines cross off their middles, and farther from an end than a tick reaches."""
    at = a.intersection(b)
    if all(at.distance(line.interpolate(0.5, normalized=True)) < 0.5 for line in (a, b)):
        return False
    ends = [end for line in (a, b) for end in line.boundary.geoms]
    return all(at.distance(end) > 8 for end in ends)
