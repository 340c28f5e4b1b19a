"""An ellipse or part of one: exact area, and a length far closer than a tape can tell."""

import math
from dataclasses import dataclass, replace

from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.segments import (
    FULL_TURN_RAD,
    Placing,
    Swept,
    share_of_sweep,
)

_SAME_AXIS = 1e-14
_STRIPS_PER_TURN = 2_000  # even; the sum over strips is then good to about 1e-9 of the length


@dataclass(frozen=True, slots=True, kw_only=True)
class Oval(Swept):
    """Part of an ellipse; its angles start at the ellipse's own length.

    Attributes:
        half_length_ft: half the axis along its length.
        half_width_ft: half the axis across it.
        tilt_rad: how far the length is turned on the plan.
    """

    half_length_ft: float
    half_width_ft: float
    tilt_rad: float = 0.0
    start_rad: float = 0.0
    sweep_rad: float = FULL_TURN_RAD

    @property
    def length_ft(self) -> float:
        if self.is_closed:
            return ellipse_perimeter_ft(self.half_length_ft, self.half_width_ft)
        strips = 2 * math.ceil(_STRIPS_PER_TURN / 2 * abs(self.sweep_rad) / FULL_TURN_RAD)
        speeds = [self._speed(self.start_rad + self.sweep_rad * n / strips)
                  for n in range(strips + 1)]  # fmt: skip
        inner = 4 * sum(speeds[1::2]) + 2 * sum(speeds[2:-1:2])
        return abs(self.sweep_rad) / strips * (speeds[0] + inner + speeds[-1]) / 3

    @property
    def green_sqft(self) -> float:
        """The part of half the integral of x dy less y dx, which sums to the area of a loop."""
        (x0, y0), (x1, y1) = self.start, self.end
        about_center = self.half_length_ft * self.half_width_ft * self.sweep_rad
        return (about_center + self.center[0] * (y1 - y0) - self.center[1] * (x1 - x0)) / 2

    def point_at(self, share: float) -> Point:
        """Return the point at a share of the sweep."""
        angle = self.start_rad + self.sweep_rad * share
        x = self.half_length_ft * math.cos(angle)
        y = self.half_width_ft * math.sin(angle)
        cos, sin = math.cos(self.tilt_rad), math.sin(self.tilt_rad)
        return self.center[0] + x * cos - y * sin, self.center[1] + x * sin + y * cos

    def share_at(self, point: Point) -> float:
        """Return the share of the sweep at a point on the ellipse."""
        dx, dy = point[0] - self.center[0], point[1] - self.center[1]
        cos, sin = math.cos(self.tilt_rad), math.sin(self.tilt_rad)
        along, across = dx * cos + dy * sin, dy * cos - dx * sin
        angle = math.atan2(across / self.half_width_ft, along / self.half_length_ft)
        return share_of_sweep(angle, self.start_rad, self.sweep_rad)

    def placed(self, placing: Placing) -> "Oval":
        """Return the curve turned and moved."""
        return replace(
            self, center=placing.point(self.center), tilt_rad=self.tilt_rad + placing.turn_rad
        )

    def _speed(self, angle_rad: float) -> float:
        return math.hypot(
            self.half_length_ft * math.sin(angle_rad), self.half_width_ft * math.cos(angle_rad)
        )


def ellipse_perimeter_ft(half_length_ft: float, half_width_ft: float) -> float:
    """Return the perimeter of an ellipse by the arithmetic-geometric mean, to float precision.

    Perimeter = 2 pi (a^2 - sum of 2^(n-1) c_n^2) / M(a, b), where M is the mean of the two half
    axes and c_n^2 = a_n^2 - b_n^2 on the way to it.
    """
    larger, smaller = sorted((half_length_ft, half_width_ft), reverse=True)
    total, weight = larger**2, 0.5
    mean, geometric = larger, smaller
    gap_squared = mean**2 - geometric**2
    while True:
        total -= weight * gap_squared
        if abs(mean - geometric) <= _SAME_AXIS * mean:
            return FULL_TURN_RAD * total / mean
        half_gap = (mean - geometric) / 2
        mean, geometric = (mean + geometric) / 2, math.sqrt(mean * geometric)
        gap_squared, weight = half_gap**2, weight * 2
