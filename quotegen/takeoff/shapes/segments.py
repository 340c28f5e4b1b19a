"""Straight sides and arcs, with their lengths and areas in closed form.

A segment has a direction: on a closed loop the slab lies on its left. A place on a segment is a
share of its length, from zero at the start to one at the end.
"""

import math
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Self

from quotegen.quantity import Length
from quotegen.takeoff.plan_geometry import Against, Point

FULL_TURN_RAD = 2 * math.pi
SAME_ANGLE_RAD = 1e-9
_QUARTER_TURNS = {0: (1.0, 0.0), 90: (0.0, 1.0), 180: (-1.0, 0.0), 270: (0.0, -1.0)}
_FULL_TURN_DEG = 360
_SHARE_OF_STEP = 1e-3  # a step that ends this close to the end of an arc is left out


def point_ft(point: tuple[Length, Length]) -> Point:
    """Return a typed point in feet."""
    return point[0].ft, point[1].ft


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """How a shape is turned around its own origin and then moved to its place."""

    at: Point
    turn_rad: float
    cos: float
    sin: float

    @classmethod
    def of(cls, at: Point, turn_deg: Fraction) -> Self:
        """Return the placing; quarter turns are exact."""
        turn_rad = math.radians(turn_deg)
        exact = (math.cos(turn_rad), math.sin(turn_rad))
        turned = turn_deg % _FULL_TURN_DEG
        cos, sin = _QUARTER_TURNS.get(int(turned), exact) if turned.denominator == 1 else exact
        return cls(at=at, turn_rad=turn_rad, cos=cos, sin=sin)

    def point(self, point: Point) -> Point:
        """Return where a point of the shape ends up on the plan."""
        x, y = point
        return (
            self.at[0] + x * self.cos - y * self.sin,
            self.at[1] + x * self.sin + y * self.cos,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A straight side."""

    start: Point
    end: Point
    against: Against = Against.OPEN

    @property
    def is_closed(self) -> bool:
        return False

    @property
    def length_ft(self) -> float:
        return math.dist(self.start, self.end)

    @property
    def green_sqft(self) -> float:
        """The part of half the integral of x dy less y dx, which sums to the area of a loop."""
        return (self.start[0] * self.end[1] - self.end[0] * self.start[1]) / 2

    def point_at(self, share: float) -> Point:
        """Return the point at a share of the length."""
        (x0, y0), (x1, y1) = self.start, self.end
        return x0 + (x1 - x0) * share, y0 + (y1 - y0) * share

    def share_at(self, point: Point) -> float:
        """Return the share of the nearest place to a point."""
        (x0, y0), (x1, y1) = self.start, self.end
        along = (point[0] - x0) * (x1 - x0) + (point[1] - y0) * (y1 - y0)
        return min(1.0, max(0.0, along / self.length_ft**2))

    def between(self, first: float, last: float) -> "Line":
        """Return the part from one share to another."""
        return replace(self, start=self.point_at(first), end=self.point_at(last))

    def backwards(self) -> "Line":
        """Return the same side in the other direction."""
        return replace(self, start=self.end, end=self.start)

    def placed(self, placing: Placing) -> "Line":
        """Return the side turned and moved."""
        return replace(self, start=placing.point(self.start), end=placing.point(self.end))

    def corners(self, step_rad: float) -> tuple[Point, ...]:  # noqa: ARG002
        """Return the points to draw the side by, without the last."""
        return (self.start,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Swept:
    """Part of a round curve about a center; a sweep above zero goes counter-clockwise."""

    center: Point
    start_rad: float
    sweep_rad: float
    against: Against = Against.OPEN

    @property
    def start(self) -> Point:
        return self.point_at(0)

    @property
    def end(self) -> Point:
        return self.point_at(1)

    @property
    def is_closed(self) -> bool:
        return abs(self.sweep_rad) >= FULL_TURN_RAD - SAME_ANGLE_RAD

    def point_at(self, share: float) -> Point:
        """Return the point at a share of the sweep."""
        raise NotImplementedError

    def between(self, first: float, last: float) -> Self:
        """Return the part from one share to another; a closed curve may pass its own start."""
        if self.is_closed and last <= first:
            last += 1
        return replace(
            self,
            start_rad=self.start_rad + self.sweep_rad * first,
            sweep_rad=self.sweep_rad * (last - first),
        )

    def backwards(self) -> Self:
        """Return the same curve in the other direction."""
        end_rad = self.start_rad + self.sweep_rad
        return replace(self, start_rad=end_rad, sweep_rad=-self.sweep_rad)

    def corners(self, step_rad: float) -> tuple[Point, ...]:
        """Return the points to draw the curve by, without the last.

        They are at whole steps of direction, so that two arcs of one circle share them.
        """
        shares = shares_at_steps(self.start_rad, self.sweep_rad, step_rad)
        return tuple(self.point_at(share) for share in shares)


@dataclass(frozen=True, slots=True, kw_only=True)
class Arc(Swept):
    """Part of a circle."""

    radius_ft: float

    @property
    def length_ft(self) -> float:
        return self.radius_ft * abs(self.sweep_rad)

    @property
    def green_sqft(self) -> float:
        """The part of half the integral of x dy less y dx, which sums to the area of a loop."""
        (x0, y0), (x1, y1) = self.start, self.end
        about_center = self.radius_ft**2 * self.sweep_rad
        return (about_center + self.center[0] * (y1 - y0) - self.center[1] * (x1 - x0)) / 2

    @property
    def bulge_sqft(self) -> float:
        """The area between arc and chord: half of angle minus sine, times radius squared."""
        return self.radius_ft**2 * (self.sweep_rad - math.sin(self.sweep_rad)) / 2

    def point_at(self, share: float) -> Point:
        """Return the point at a share of the length."""
        angle = self.start_rad + self.sweep_rad * share
        return (
            self.center[0] + self.radius_ft * math.cos(angle),
            self.center[1] + self.radius_ft * math.sin(angle),
        )

    def share_at(self, point: Point) -> float:
        """Return the share of the nearest place to a point."""
        angle = math.atan2(point[1] - self.center[1], point[0] - self.center[0])
        return share_of_sweep(angle, self.start_rad, self.sweep_rad)

    def placed(self, placing: Placing) -> "Arc":
        """Return the arc turned and moved."""
        return replace(
            self,
            center=placing.point(self.center),
            start_rad=self.start_rad + placing.turn_rad,
        )


def share_of_sweep(angle_rad: float, start_rad: float, sweep_rad: float) -> float:
    """Return the share of a sweep at an angle; an angle past an end counts as that end."""
    direction = math.copysign(1, sweep_rad)
    turned = (angle_rad - start_rad) * direction % FULL_TURN_RAD
    whole = abs(sweep_rad)
    if turned <= whole:
        return turned / whole
    return 1.0 if turned - whole < FULL_TURN_RAD - turned else 0.0


def shares_at_steps(start_rad: float, sweep_rad: float, step_rad: float) -> tuple[float, ...]:
    """Return zero, and the shares of a sweep where its angle is a whole number of steps."""
    first, last = sorted((start_rad, start_rad + sweep_rad))
    spare = step_rad * _SHARE_OF_STEP
    steps = range(math.ceil((first + spare) / step_rad), math.floor((last - spare) / step_rad) + 1)
    shares = sorted((step * step_rad - start_rad) / sweep_rad for step in steps)
    return (0.0, *shares)
