"""Typed lengths to feet."""

from fractions import Fraction

from quotegen.quantity import Length
from quotegen.takeoff.shapes.segments import point_ft


def test_a_point_in_feet():
    """A typed point is a pair of feet."""
    assert point_ft((Length(Fraction(49, 2)), Length(Fraction(-3)))) == (24.5, -3.0)
