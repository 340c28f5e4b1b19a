"""Typed lengths to feet for geometry."""

from quotegen.quantity import Length
from quotegen.takeoff.records import Point


def point_ft(point: tuple[Length, Length]) -> Point:
    """Return a typed point in feet."""
    return point[0].ft, point[1].ft
