"""Outlines as path data: arcs where the points lie on one, and straight sides elsewhere."""

import cmath
import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quotegen.explain.drawing.curves import STRAY_PX, path_data


def _on_circle(radius: float, first: float, last: float, sides: int) -> list[tuple[float, float]]:
    turns = [first + (last - first) * n / sides for n in range(sides + 1)]
    return [(100 + radius * math.cos(t), 100 + radius * math.sin(t)) for t in turns]


def test_a_rectangle_stays_straight():
    """Its four corners lie on a circle, but nobody means one."""
    ring = [(0.0, 0.0), (80.0, 0.0), (80.0, 40.0), (0.0, 40.0)]
    assert path_data(ring, closed=True) == "M0 0 L80 0 L80 40 L0 40 Z"


def test_a_quarter_circle_is_one_arc():
    """SVG 2, 9.3.8: radii, no tilt, the smaller arc, clockwise as seen, and where it ends."""
    quarter = _on_circle(60, 0, math.pi / 2, 12)
    assert path_data(quarter, closed=False) == "M160 100 A60 60 0 0 1 100 160"
    assert path_data(quarter[::-1], closed=False) == "M100 160 A60 60 0 0 0 160 100"


def test_a_whole_circle_closes():
    """It is written in parts that each are the smaller arc of the circle."""
    data = path_data(_on_circle(60, 0, 2 * math.pi, 72)[:-1], closed=True)
    assert data.count("A60 60 0 0 1") == 3
    assert data.endswith("160 100 Z")


@pytest.mark.parametrize("sides", [6, 8, 12])
def test_a_polygon_keeps_its_corners(sides: int):
    """A side that leaves the circle by more than the pencil's width is a side."""
    ring = _on_circle(90, 0, 2 * math.pi, sides)[:-1]
    assert "A" not in path_data(ring, closed=True)


def test_a_bend_the_other_way_is_another_arc():
    """An S has two arcs, one for each way round."""
    first = _on_circle(50, 0, math.pi / 2, 12)
    second = [(x, y + 110) for x, y in _on_circle(60, -math.pi / 2, -math.pi, 12)]
    data = path_data([*first, *second[1:]], closed=False)
    assert re.findall(r" 0 0 (\d)", data) == ["1", "0"]


@given(st.floats(8, 300), st.floats(0.5, 6), st.floats(0.05, 1), st.floats(0.4, 2.5), st.booleans())
def test_an_arc_keeps_to_the_points(
    radius: float, first: float, flat: float, sweep: float, back: bool
):
    """On any oval every point is within the stray, and the tenth that is written, of what is drawn.

    The circle of each arc is worked out from the path data alone, as SVG 2, B.2.4 does.
    """
    turns = [first + sweep * n / 60 for n in range(61)]
    run = [(400 + radius * math.cos(t), 400 + radius * flat * math.sin(t)) for t in turns]
    run = run[::-1] if back else run
    data = path_data(run, closed=False)
    assert all(_distance(data, point) < STRAY_PX + 0.2 for point in run)


def _distance(data: str, point: tuple[float, float]) -> float:
    """Return how far a point is from the nearest part of a path."""
    at, wanted, nearest = 0j, complex(*point), math.inf
    for command, numbers in re.findall(r"([MLA])([^MLA]*)", data):
        values = [float(value) for value in numbers.split()]
        end = complex(*values[-2:])
        if command == "L":
            nearest = min(nearest, _from_side(at, end, wanted))
        elif command == "A":
            nearest = min(nearest, _from_arc(at, end, values[0], values[4] == 1, wanted))
        at = end
    return nearest


def _from_side(start: complex, end: complex, wanted: complex) -> float:
    length = abs(end - start)
    if not length:
        return abs(wanted - start)
    along = ((wanted - start) * (end - start).conjugate()).real / length**2
    return abs(wanted - start - min(max(along, 0), 1) * (end - start))


def _from_arc(
    start: complex, end: complex, radius: float, clockwise: bool, wanted: complex
) -> float:
    half = (end - start) / 2
    radius = max(radius, abs(half))
    up = half / abs(half) * 1j * math.sqrt(radius**2 - abs(half) ** 2)
    center = start + half + (up if clockwise else -up)
    sweep = cmath.phase((end - center) / (start - center))
    turned = cmath.phase((wanted - center) / (start - center)) if wanted != center else 0
    within = 0 <= turned / sweep <= 1 if sweep else False
    off_circle = abs(abs(wanted - center) - radius)
    return off_circle if within else min(abs(wanted - start), abs(wanted - end))
