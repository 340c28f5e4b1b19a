"""The chords that are tried to cut a part."""

from fractions import Fraction

import pytest

from quotegen.quantity import Length
from quotegen.takeoff.joints.candidates import candidates
from quotegen.takeoff.joints.judge import limits_of
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.plan_geometry import Ring
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
ELL: Ring = ((0, 0), (14, 0), (14, 6), (6, 6), (6, 14), (0, 14))


def test_an_inside_corner_is_where_chords_start_first():
    """The first chord that is proposed leaves the inside corner along one of its sides."""
    part = Part(ring=ELL, cut=(False,) * 6)
    start, end = next(candidates(part, (), LIMITS))
    assert start.point == (6, 6)
    assert end.point in {(0, 6), (6, 0)}


def test_a_plain_rectangle_is_divided_evenly():
    """Two panels of 20 x 10 ft meet in the middle: among the chords is that line."""
    ring: Ring = ((0, 0), (20, 0), (20, 10), (0, 10))
    chords = candidates(Part(ring=ring, cut=(False,) * 4), (), LIMITS)
    ends = [sorted((start.point, end.point)) for start, end in chords]
    assert [pytest.approx((10, 0)), pytest.approx((10, 10))] in ends


def test_a_curved_edge_is_left_square():
    """From a side that leans, chords leave at right angles."""
    ring: Ring = ((0, 0), (12, 0), (12, 4), (0, 10))
    chords = candidates(Part(ring=ring, cut=(True, True, False, True)), (), LIMITS)
    square = [
        (start.point, end.point)
        for start, end in chords
        if abs((end.point[0] - start.point[0]) * -12 + (end.point[1] - start.point[1]) * 6) < 1e-6
    ]
    assert len(square) > 3
