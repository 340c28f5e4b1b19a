"""The outside edge of a border, drawn and by formula."""

import math
from typing import Any

import pytest

from quotegen.reading.files.shapes import Border, Shape
from quotegen.takeoff.shapes.border import outside_area_sqft, outside_of
from quotegen.takeoff.shapes.faults import Fault
from quotegen.takeoff.shapes.loops import loops_of
from quotegen.takeoff.shapes.path import signed_area_sqft
from tests.takeoff import kidney
from tests.takeoff.plans import feet, outline, shape

L_SHAPE = outline((0, 0), (30, 0), (30, 12), (14, 12), (14, 26), (0, 26))
BAY = outline((0, 0), (30, 0), (30, 16), {"to": feet((0, 16)), "radius": "40 ft", "bows": "in"})
POOLS: dict[str, dict[str, Any]] = {
    "rectangle": {"pool": {"rectangle": "32 ft x 16 ft"}, "width": "4 ft", "left": "6 ft"},
    "rounded rectangle": {
        "pool": {"rectangle": "32 ft x 16 ft", "corner_radius": "4 ft"}, "width": "4 ft"},
    "round": {"pool": {"circle": {"radius": "9 ft"}}, "width": "4 ft"},
    "oval": {"pool": {"ellipse": "30 ft x 14 ft"}, "width": "4 ft"},
    "triangle": {"pool": {"right_triangle": "12 ft x 9 ft"}, "width": "4 ft"},
    "inside corner": {"pool": L_SHAPE, "width": "3 ft"},
    "bay": {"pool": BAY, "width": "3 ft"},
    "kidney": {"pool": {"ties": kidney.by_ties()["ties"]}, "width": "5 ft"},
}  # fmt: skip


def _border(**typed: Any) -> Border:
    found: Shape = shape(border=typed)
    assert found.border is not None
    return found.border


@pytest.mark.parametrize("corners", ["square", "rounded"])
@pytest.mark.parametrize("pool", POOLS)
def test_the_formula_is_the_area_of_the_drawn_edge(pool: str, corners: str):
    """Steiner's formula gives what the drawn outside edge encloses, to 0.001 sq ft."""
    border = _border(**POOLS[pool], corners=corners)
    (edge,), _ = loops_of(border.pool)
    drawn = outside_of(border, edge)
    assert not isinstance(drawn, Fault)
    assert outside_area_sqft(border, edge) == pytest.approx(signed_area_sqft(drawn), abs=1e-3)


def test_a_round_pool_by_hand():
    """Around a pool of 9 ft radius a border of 4 ft reaches out to 13 ft."""
    border = _border(**POOLS["round"])
    (edge,), _ = loops_of(border.pool)
    assert outside_area_sqft(border, edge) == pytest.approx(math.pi * 13**2)
