"""The scale of a plan: feet on the ground to pixels on paper, where it can be a ruler's."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import hypot

from quotegen.explain.drawing.curves import Pixel
from quotegen.quantity import FEET_PER_METER, Units
from quotegen.takeoff.plan_geometry import Point, Ring

PX_PER_INCH = 96.0
SCALES_US = (
    ("1/4 in = 1 ft", 24.0), ("3/16 in = 1 ft", 18.0), ("1/8 in = 1 ft", 12.0),
    ("3/32 in = 1 ft", 9.0), ("1/16 in = 1 ft", 6.0), ("1/32 in = 1 ft", 3.0),
)  # fmt: skip
"""Architects' scales: their name and pixels for one foot."""

SCALES_METRIC = (50, 75, 100, 150, 200, 250, 500)
"""Metric scales of drawings: 1 to so much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanScale:
    """How the ground is drawn: how large, and where on its paper.

    Attributes:
        px_per_ft: pixels for one foot, across and up alike.
        name: as a ruler has it, empty where it is none of a ruler's.
        left_ft, top_ft: the point of the ground at the upper left of the drawn part.
        inset_px: left of that point and above it, for dimensions.
        width_px, height_px: of the whole drawing.
    """

    px_per_ft: float
    name: str
    left_ft: float
    top_ft: float
    inset_px: Pixel
    width_px: float
    height_px: float

    def px(self, point: Point) -> Pixel:
        """The pixel that a point of the ground is drawn at."""
        return (
            self.inset_px[0] + (point[0] - self.left_ft) * self.px_per_ft,
            self.inset_px[1] + (self.top_ft - point[1]) * self.px_per_ft,
        )

    def ground(self, pixel: Pixel) -> Point:
        """The point of the ground that is drawn at a pixel."""
        return (
            self.left_ft + (pixel[0] - self.inset_px[0]) / self.px_per_ft,
            self.top_ft - (pixel[1] - self.inset_px[1]) / self.px_per_ft,
        )

    def ring(self, ring: Iterable[Point]) -> list[Pixel]:
        """The pixels of a ring, or of a line, on the ground."""
        return [self.px(point) for point in ring]


@dataclass(frozen=True, slots=True, kw_only=True)
class Viewport:
    """The part of a sheet that a drawing has, and in it the margins for dimensions.

    Attributes:
        height_px: at most; a flat slab takes less.
        to_scale: whether to draw at a scale of a ruler.
    """

    width_px: float
    height_px: float
    left_px: float
    right_px: float
    top_px: float
    bottom_px: float
    to_scale: bool


def scale_for(points: Iterable[Point], viewport: Viewport, units: Units) -> PlanScale:
    """The largest scale at which some points fit into a viewport, a ruler's if it asks for one."""
    points = tuple(points)
    left, right = min(p[0] for p in points), max(p[0] for p in points)
    bottom, top = min(p[1] for p in points), max(p[1] for p in points)
    free_width = viewport.width_px - viewport.left_px - viewport.right_px
    free_height = viewport.height_px - viewport.top_px - viewport.bottom_px
    most = min(free_width / (right - left), free_height / (top - bottom))
    name, px_per_ft = "", most
    if viewport.to_scale:
        fitting = [named for named in _scales(units) if named[1] <= most]
        name, px_per_ft = fitting[0] if fitting else ("", most)
    spare = free_width - (right - left) * px_per_ft
    return PlanScale(
        px_per_ft=px_per_ft,
        name=name,
        left_ft=left,
        top_ft=top,
        inset_px=(viewport.left_px + spare / 2, viewport.top_px),
        width_px=viewport.width_px,
        height_px=viewport.top_px + (top - bottom) * px_per_ft + viewport.bottom_px,
    )


def _scales(units: Units) -> tuple[tuple[str, float], ...]:
    if units is Units.US:
        return SCALES_US
    px_per_meter = PX_PER_INCH / 0.0254
    return tuple(
        (
            f"1 : {ratio}",
            px_per_meter / ratio / FEET_PER_METER.numerator * FEET_PER_METER.denominator,
        )
        for ratio in SCALES_METRIC
    )


def inside(point: Point, rings: Iterable[Ring]) -> bool:
    """Whether a point is on the slab: it has an odd number of edges to its right."""
    crossings = 0
    for ring in rings:
        for start, end in zip(ring, (*ring[1:], ring[0]), strict=True):
            if (start[1] > point[1]) != (end[1] > point[1]):
                share = (point[1] - start[1]) / (end[1] - start[1])
                crossings += point[0] < start[0] + share * (end[0] - start[0])
    return crossings % 2 == 1


def outward(points: Ring, rings: Iterable[Ring]) -> Point:
    """The direction away from the slab at the middle of an edge, of length 1."""
    middle = len(points) // 2
    start, end = points[middle - 1], points[middle]
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    side = ((end[1] - start[1]) / length, -(end[0] - start[0]) / length)
    at = midpoint(points)
    probe = (at[0] + side[0] * 0.02, at[1] + side[1] * 0.02)
    return (-side[0], -side[1]) if inside(probe, rings) else side


def midpoint(points: Ring) -> Point:
    """The middle of the middle piece of a line."""
    middle = len(points) // 2
    start, end = points[middle - 1], points[middle]
    return ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
