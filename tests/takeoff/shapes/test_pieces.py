"""Pieces as measured one by one."""

import math
from typing import Any

import pytest

from quotegen.takeoff.shapes.path import loop_length_ft
from tests.takeoff.plans import faults, slab

ROOT = math.sqrt

# Typed, area in sq ft, edge in ft, bounds in ft: each from the definition of the figure.
PIECES: dict[str, tuple[dict[str, Any], float, float, tuple[float, float, float, float]]] = {
    "rectangle": ({"rectangle": "24 ft x 16 ft"}, 24 * 16, 2 * (24 + 16), (0, 0, 24, 16)),
    "rounded": (
        {"rectangle": "24 ft x 16 ft", "corner_radius": "3 ft"},
        24 * 16 - 9 * (4 - math.pi), 2 * (24 + 16) - 6 * (4 - math.pi), (0, 0, 24, 16),
    ),
    "round ends": (
        {"rectangle": "24 ft x 16 ft", "corner_radius": "8 ft"},
        8 * 16 + 64 * math.pi, 16 + 16 * math.pi, (0, 0, 24, 16),
    ),
    "all round": (
        {"rectangle": "10 ft x 10 ft", "corner_radius": "5 ft"},
        25 * math.pi, 10 * math.pi, (0, 0, 10, 10),
    ),
    "right triangle": ({"right_triangle": "3 ft x 4 ft"}, 6, 12, (0, 0, 3, 4)),
    "triangle": ({"triangle": {"base": "6 ft", "height": "4 ft"}}, 12, 16, (0, 0, 6, 4)),
    "triangle with its peak beyond": (
        {"triangle": {"base": "6 ft", "height": "4 ft", "peak_at": "9 ft"}},
        12, 6 + 5 + ROOT(97), (0, 0, 9, 4),
    ),
    "trapezoid": (
        {"trapezoid": {"bottom": "9 ft", "top": "3 ft", "height": "4 ft", "offset": "3 ft"}},
        24, 9 + 5 + 3 + 5, (0, 0, 9, 4),
    ),
    "trapezoid from the left": (
        {"trapezoid": {"bottom": "9 ft", "top": "6 ft", "height": "4 ft"}},
        30, 9 + 5 + 6 + 4, (0, 0, 9, 4),
    ),
    "circle": ({"circle": {"radius": "5 ft"}}, 25 * math.pi, 10 * math.pi, (-5, -5, 5, 5)),
    "circle by diameter": (
        {"circle": {"diameter": "10 ft"}}, 25 * math.pi, 10 * math.pi, (-5, -5, 5, 5),
    ),
    "half circle": (
        {"half_circle": {"radius": "5 ft"}}, 12.5 * math.pi, 10 + 5 * math.pi, (-5, 0, 5, 5),
    ),
    "quarter circle": (
        {"quarter_circle": {"radius": "4 ft"}}, 4 * math.pi, 8 + 2 * math.pi, (0, 0, 4, 4),
    ),
    "ellipse": ({"ellipse": "20 ft x 12 ft"}, 60 * math.pi, 51.053997721, (-10, -6, 10, 6)),
    "round ellipse": (
        {"ellipse": "10 ft x 10 ft"}, 25 * math.pi, 10 * math.pi, (-5, -5, 5, 5),
    ),
    "ring": (
        {"ring": {"outer_radius": "14 ft", "width": "4 ft", "sweep": "90 deg"}},
        24 * math.pi, 8 + 12 * math.pi, (0, 0, 14, 14),
    ),
    "ring by its arc": (
        {"ring": {"outer_arc": f"{7 * math.pi:.9f} ft", "width": "4 ft", "sweep": "90 deg"}},
        24 * math.pi, 8 + 12 * math.pi, (0, 0, 14, 14),
    ),
    "whole ring": (
        {"ring": {"outer_radius": "14 ft", "width": "4 ft", "sweep": "360 deg"}},
        96 * math.pi, 48 * math.pi, (-14, -14, 14, 14),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", PIECES)
def test_area_edge_and_place(name: str):
    """Each piece has the area and edge of its definition, and lies where it says."""
    typed, area_sqft, edge_ft, bounds = PIECES[name]
    measured = slab(typed)
    rings = (*measured.boundary.outer, *measured.boundary.inner)
    assert measured.area_sqft == pytest.approx(area_sqft)
    assert sum(loop_length_ft(ring) for ring in rings) == pytest.approx(edge_ft)
    assert measured.region.bounds == pytest.approx(bounds, abs=1e-5)


@pytest.mark.parametrize("name", PIECES)
def test_the_checking_polygon_agrees(name: str):
    """The polygon of many short sides has nearly the same area, by the geometry library."""
    measured = slab(PIECES[name][0])
    assert measured.region.area == pytest.approx(measured.area_sqft, rel=2e-5)


@pytest.mark.parametrize("name", PIECES)
def test_a_place_and_a_turn_change_no_size(name: str):
    """A piece that is moved and turned keeps its area and its edge."""
    typed, area_sqft, edge_ft, _ = PIECES[name]
    measured = slab({**typed, "at": ("31 ft 5 in", "-7 ft"), "turn": "37.5 deg"})
    rings = (*measured.boundary.outer, *measured.boundary.inner)
    assert measured.area_sqft == pytest.approx(area_sqft)
    assert sum(loop_length_ft(ring) for ring in rings) == pytest.approx(edge_ft)


def test_a_turn_is_about_the_place():
    """A quarter turn swings a rectangle about its lower left corner to the other side."""
    measured = slab({"rectangle": "6 ft x 2 ft", "at": ("10 ft", "1 ft"), "turn": "90 deg"})
    assert measured.region.bounds == pytest.approx((8, 1, 10, 7))


FAULTS: dict[str, tuple[dict[str, Any], str, tuple[str, ...], tuple[str, ...]]] = {
    "corner": (
        {"rectangle": "24 ft x 10 ft", "corner_radius": "5 ft 1 in"},
        "corner-radius", ("corner_radius",), ("5'-1\"", "24'-0\" x 10'-0\"", "5'-0\""),
    ),
    "ring width": (
        {"ring": {"outer_radius": "4 ft", "width": "4 ft", "sweep": "90 deg"}},
        "ring-width", ("ring", "width"), ("4'-0\" width", "outer radius of 4'-0\""),
    ),
    "no sweep": (
        {"ring": {"outer_radius": "4 ft", "width": "1 ft", "sweep": "0 deg"}},
        "ring-sweep", ("ring", "sweep"), ("0 deg", "360 deg"),
    ),
    "backward sweep": (
        {"ring": {"outer_arc": "4 ft", "width": "1 ft", "sweep": "-90 deg"}},
        "ring-sweep", ("ring", "sweep"), ("-90 deg",),
    ),
    "too much sweep": (
        {"ring": {"outer_radius": "4 ft", "width": "1 ft", "sweep": "361 deg"}},
        "ring-sweep", ("ring", "sweep"), ("361 deg",),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", FAULTS)
def test_each_fault_says_what_and_where(name: str):
    """Each fault of a piece has its code, its place in the file and the numbers that conflict."""
    typed, code, path, said = FAULTS[name]
    (fault,) = faults(typed)
    assert (fault.code, fault.path) == (code, ("add", 0, *path))
    for words in said:
        assert words in fault.message


def test_a_ring_closed_to_within_a_hair_is_closed():
    """A ring whose ends are nearer than a tape is read to has an outer and an inner edge only."""
    measured = slab({"ring": {"outer_radius": "14 ft", "width": "4 ft", "sweep": "359.99 deg"}})
    assert [len(ring) for ring in measured.boundary.outer] == [1]
    assert [len(ring) for ring in measured.boundary.inner] == [1]
