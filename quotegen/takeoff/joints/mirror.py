"""A slab that is its own mirror image: one half is laid out and mirrored."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shapely import Polygon, box
from shapely.affinity import affine_transform

from quotegen.takeoff.joints.cutting import Segment, is_same_line
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.overlay import polygons

_SAME_SHARE = 1e-3  # of the area; what a curve drawn as few sides may be off its image
_SAME_FT = 0.01


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
        """Return how far a point is from the axis, above zero in the half that is laid out."""
        return self.at_ft - point[0 if self.is_upright else 1]

    def half(self, level: Polygon) -> tuple[Polygon, ...]:
        """Return the half of a slab that is laid out."""
        left, bottom, right, top = level.bounds
        right, top = (self.at_ft, top) if self.is_upright else (right, self.at_ft)
        return tuple(polygons(level.intersection(box(left, bottom, right, top))))

    def image_of(self, part: Part) -> Part:
        """Return the mirror image of a part, counter-clockwise again."""
        count = len(part.ring)
        return Part(
            ring=tuple(self.image(point) for point in reversed(part.ring)),
            cut=tuple(part.cut[(count - 2 - n) % count] for n in range(count)),
        )

    def lines_of_half(self, lines: Sequence[Segment], limits: Limits) -> Iterator[Segment]:
        """Yield the lines in the half, far enough from the axis for a panel beside it."""
        for line in lines:
            if min(self.off_ft(end) for end in line) > limits.most_ft / 2:
                yield line

    def mirrors(self, joints: Sequence[Segment]) -> bool:
        """Whether a layout is its own mirror image."""
        return all(
            any(
                is_same_line((self.image(start), self.image(end)), other, _SAME_FT)
                for other in joints
            )
            for start, end in joints
        )


def axes_of(level: Polygon) -> tuple[Axis, ...]:
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
