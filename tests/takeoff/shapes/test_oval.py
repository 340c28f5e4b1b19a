"""Ellipses."""

import math
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from quotegen.takeoff.shapes.oval import Oval, ellipse_perimeter_ft
from quotegen.takeoff.shapes.segments import Placing

OVAL = Oval(center=(3, -1), half_length_ft=10, half_width_ft=6, tilt_rad=0.3)
STRIPS = 200_000


def _walked_ft(half_length_ft: float, half_width_ft: float) -> float:
    """Length along very many straight steps, which is a little short."""
    angles = (2 * math.pi * n / STRIPS for n in range(STRIPS + 1))
    points = ((half_length_ft * math.cos(a), half_width_ft * math.sin(a)) for a in angles)
    return math.fsum(math.dist(p, q) for p, q in pairwise(points))


@pytest.mark.parametrize("half_width_ft", [0.1, 1, 6, 9.999, 10, 30])
def test_perimeter_agrees_with_a_walk_round(half_width_ft: float):
    """The closed form is what two hundred thousand small steps add up to."""
    walked = _walked_ft(10, half_width_ft)
    assert ellipse_perimeter_ft(10, half_width_ft) == pytest.approx(walked, rel=1e-8)


def test_a_round_oval_is_a_circle():
    """With equal axes the perimeter is 2 pi r."""
    assert ellipse_perimeter_ft(7, 7) == pytest.approx(14 * math.pi, rel=1e-15)


def test_parts_add_up_to_the_whole():
    """Lengths of parts, by strips, sum to the whole, by closed form."""
    parts = [OVAL.between(n / 5, (n + 1) / 5).length_ft for n in range(5)]
    assert math.fsum(parts) == pytest.approx(OVAL.length_ft, rel=1e-9)


def test_area_of_a_sector_and_its_rest():
    """Two parts of an oval, each closed by its chord, have the area of the whole together."""
    first, second = OVAL.between(0, 0.3), OVAL.between(0.3, 1)
    both = first.green_sqft + second.green_sqft
    assert both == pytest.approx(math.pi * 60)


def test_a_point_on_the_oval_is_found_again():
    """The place of a point on the oval is the share that it was made from."""
    for share in (0.1, 0.37, 0.8):
        assert OVAL.share_at(OVAL.point_at(share)) == pytest.approx(share)


def test_backwards_swaps_the_ends():
    """The other way round an oval keeps its points and turns its area's sign."""
    part = OVAL.between(0.1, 0.4)
    assert part.backwards().start == pytest.approx(part.end)
    assert OVAL.backwards().green_sqft == pytest.approx(-OVAL.green_sqft)


def test_turning_keeps_length_and_area():
    """A turned oval is as long and as large."""
    turned = OVAL.placed(Placing.of((5, 5), Fraction(77)))
    assert turned.length_ft == OVAL.length_ft
    assert turned.green_sqft == pytest.approx(OVAL.green_sqft)


def test_a_part_past_the_start():
    """A closed oval may be cut over its own start."""
    over = OVAL.between(0.9, 0.1)
    assert over.sweep_rad == pytest.approx(replace(OVAL, sweep_rad=0.4 * math.pi).sweep_rad)
