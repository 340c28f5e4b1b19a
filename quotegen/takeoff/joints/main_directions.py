"""How a slab lies: its main directions, level and upright, and the axes of its mirror image.

Joints are laid out on it level, and then turned back.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Self

import shapely
from shapely.affinity import affine_transform

from quotegen.takeoff.joints.cutting import Segment, is_same_line
from quotegen.takeoff.joints.part import tight_box
from quotegen.takeoff.plan_geometry import Against, Point
from quotegen.takeoff.shapes.overlay import polygons
from quotegen.takeoff.shapes.path import Loop, drawn_ring, placed
from quotegen.takeoff.shapes.segments import Line, Placing

_STEPS = 10**6  # corners are held to a millionth of a foot, free of float noise
_QUARTER_RAD = math.pi / 2
_SAME_RAD = 1e-6
_SAME_SHARE = 1e-3  # of the area; what a curve drawn as few sides may be off its image
_SAME_IMAGE_FT = 0.01
_HOUSE = 2.0  # a side along the house counts for more


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """The turn and the shift that bring the main sides of a slab level and upright."""

    cos: float
    sin: float
    x_ft: float
    y_ft: float

    @classmethod
    def of(cls, region: shapely.Polygon, loops: Sequence[Loop]) -> Self:
        """Return the frame of a slab: by its straight sides, or else by its tightest box.

        Of the four quarter turns it takes the one that brings most of the slab to the lower left,
        so that a slab is laid out the same however it lies on the plan.
        """
        tilt = _tilt(region, loops)
        x, y = region.centroid.x, region.centroid.y
        turns = (cls._turned(tilt + _QUARTER_RAD * n, x, y) for n in range(4))
        return min(turns, key=lambda frame: frame.rank(region))

    @classmethod
    def _turned(cls, angle: float, x_ft: float, y_ft: float) -> Self:
        return cls(cos=math.cos(angle), sin=math.sin(angle), x_ft=x_ft, y_ft=y_ft)

    def level(self, point: Point) -> Point:
        """Return where a point on the plan lies in the frame."""
        x, y = point[0] - self.x_ft, point[1] - self.y_ft
        return _clean(x * self.cos + y * self.sin), _clean(y * self.cos - x * self.sin)

    def plan(self, point: Point) -> Point:
        """Return where a point in the frame lies on the plan."""
        x, y = point
        return (
            self.x_ft + x * self.cos - y * self.sin,
            self.y_ft + x * self.sin + y * self.cos,
        )

    def levelled(self, region: shapely.Polygon, loops: Sequence[Loop]) -> shapely.Polygon:
        """Return a region in the frame, with its curves drawn anew from its exact rings.

        That way a curve has the same corners however the slab lies on the plan.
        """
        placing = Placing(
            at=(
                -self.x_ft * self.cos - self.y_ft * self.sin,
                self.x_ft * self.sin - self.y_ft * self.cos,
            ),
            turn_rad=-math.atan2(self.sin, self.cos),
            cos=self.cos,
            sin=-self.sin,
        )

        def drawn(edge: shapely.LinearRing) -> list[Point]:
            loop = min(loops, key=lambda one: edge.distance(shapely.Point(one[0].point_at(1 / 2))))
            return [(_clean(x), _clean(y)) for x, y in drawn_ring(placed(loop, placing))]

        level = shapely.Polygon(drawn(region.exterior), [drawn(ring) for ring in region.interiors])
        return next(iter(polygons(level.normalize())))

    def back(self, line: tuple[Point, Point]) -> tuple[Point, Point]:
        """Return a line in the frame as a line on the plan."""
        return self.plan(line[0]), self.plan(line[1])

    def rank(self, region: shapely.Polygon) -> tuple[int, int, int]:
        """Rank a frame: wide before high, then by the side on which more of the slab lies."""
        corners = [(x - self.x_ft, y - self.y_ft) for x, y in region.exterior.coords]
        along = [x * self.cos + y * self.sin for x, y in corners]
        out = [y * self.cos - x * self.sin for x, y in corners]
        left, right = _clean(min(along)), _clean(max(along))
        bottom, top = _clean(min(out)), _clean(max(out))
        steps = 10**3
        return (
            0 if (right - left) > (top - bottom) - 1 / steps else 1,
            -math.floor((right + left) * steps + 1 / 2),
            -math.floor((top + bottom) * steps + 1 / 2),
        )


def _tilt(region: shapely.Polygon, loops: Sequence[Loop]) -> float:
    weights: dict[float, float] = {}
    for side in (side for loop in loops for side in loop if isinstance(side, Line)):
        angle = math.atan2(side.end[1] - side.start[1], side.end[0] - side.start[0])
        angle %= _QUARTER_RAD
        known = next((one for one in weights if _apart(one, angle) < _SAME_RAD), angle)
        worth = side.length_ft * (_HOUSE if side.against is Against.HOUSE else 1)
        weights[known] = weights.get(known, 0.0) + worth
    if weights:
        heaviest = max(weights.values())
        return next(one for one, weight in weights.items() if weight > heaviest - 1e-6)
    box = tight_box(tuple((x, y) for x, y in region.exterior.coords[:-1]))
    return math.atan2(box[1][1] - box[0][1], box[1][0] - box[0][0])


def _apart(one: float, other: float) -> float:
    off = abs(one - other)
    return min(off, _QUARTER_RAD - off)


def _clean(value: float) -> float:
    return math.floor(value * _STEPS + 1 / 2) / _STEPS


@dataclass(frozen=True, slots=True, kw_only=True)
class Axis:
    """A line that divides a slab into two mirror images, upright or level."""

    is_upright: bool
    at_ft: float

    def image(self, point: Point) -> Point:
        """Return the mirror image of a point."""
        x, y = point
        return (2 * self.at_ft - x, y) if self.is_upright else (x, 2 * self.at_ft - y)

    def off_ft(self, point: Point) -> float:
        """Return how far a point is from the axis, below zero to the right of it or above."""
        return self.at_ft - point[0 if self.is_upright else 1]

    def mirrors(self, joints: Sequence[Segment]) -> bool:
        """Whether a layout is its own mirror image."""
        return all(
            any(
                is_same_line((self.image(start), self.image(end)), other, _SAME_IMAGE_FT)
                for other in joints
            )
            for start, end in joints
        )


def axes_of(level: shapely.Polygon) -> tuple[Axis, ...]:
    """Return the axes of a level slab, the upright one first."""
    left, bottom, right, top = level.bounds
    found = (
        (Axis(is_upright=True, at_ft=(left + right) / 2), (-1, 0, 0, 1, left + right, 0)),
        (Axis(is_upright=False, at_ft=(bottom + top) / 2), (1, 0, 0, -1, 0, bottom + top)),
    )
    return tuple(
        axis
        for axis, turned in found
        if level.symmetric_difference(affine_transform(level, turned)).area
        < _SAME_SHARE * level.area
    )
