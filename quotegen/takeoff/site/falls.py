"""Falls: the height of the finished top anywhere, at each corner, and the drop of each edge."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

import shapely
from shapely.geometry.base import BaseGeometry

from quotegen.quantity import rounded
from quotegen.reading.files.shapes import EdgeKind, Side
from quotegen.reading.files.site_parts import FallsFrom
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import EdgeRun, Point
from quotegen.takeoff.records import CornerHeight, EdgeDrop, PlacementFalls, PlacementTakeoff
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.slab.edges import runs_along

HEIGHT_PLACES = 3  # 0.001 ft is finer than a laser level reads
_DOWN = {
    Side.BOTTOM: (0.0, -1.0), Side.TOP: (0.0, 1.0), Side.LEFT: (-1.0, 0.0), Side.RIGHT: (1.0, 0.0),
}  # fmt: skip
_STEPS = 200  # steps along an edge at which its height is worked out
BUILDING = (EdgeKind.HOUSE, EdgeKind.GARAGE)
"""The edges at a building: water runs away from each."""
_AWAY = {FallsFrom.POOL: (EdgeKind.POOL,), FallsFrom.HOUSE: BUILDING}


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """A fall in one direction, or, with a ridge, in that direction and the opposite one.

    Attributes:
        down: the direction water runs, of unit length.
        ridge_ft: how far along that direction the ridge stands.
    """

    down: Point
    ridge_ft: float | None = None

    def run_ft(self, at: Point) -> float:
        """Return how far downhill a point lies."""
        along = at[0] * self.down[0] + at[1] * self.down[1]
        return along if self.ridge_ft is None else abs(along - self.ridge_ft)


@dataclass(frozen=True, slots=True, kw_only=True)
class HighEdge:
    """A level edge that water runs away from, and how much higher it is than the first one."""

    line: BaseGeometry
    lift_ft: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """The finished top of a slab.

    Attributes:
        fall: the drop in one foot, in feet.
        slopes: the directions water runs; empty where it runs away from edges.
        edges: the level edges that water runs away from on all sides; where the falls from two
            of them meet there is a low line.
        lift_ft: what to add for the stated height to come out.
    """

    fall: float
    slopes: tuple[Slope, ...] = ()
    edges: tuple[HighEdge, ...] = ()
    lift_ft: float = 0.0

    def height_ft(self, at: Point) -> float:
        """Return the height of the finished top at a point."""
        if self.edges:
            spot = shapely.Point(at)
            return self.lift_ft + max(
                edge.lift_ft - self.fall * edge.line.distance(spot) for edge in self.edges
            )
        return self.lift_ft - self.fall * math.fsum(slope.run_ft(at) for slope in self.slopes)

    def fall_along(self, at: Point, direction: Point) -> float:
        """Return the fall from a point in a direction of unit length, over the first inch."""
        step = 1 / 12
        to = (at[0] + direction[0] * step, at[1] + direction[1] * step)
        return (self.height_ft(at) - self.height_ft(to)) / step


def surface_of(spec: PlacementSpec, measured: PlacementTakeoff) -> Surface | None:
    """Return the finished top of a placement; None where the job types no fall."""
    if spec.typed.fall is None:
        return None
    fall = spec.typed.fall.ft
    bare = Surface(
        fall=fall, slopes=_slopes(spec, measured), edges=_high_edges(spec, measured, fall)
    )
    if not bare.slopes and not bare.edges:
        return None
    return replace(bare, lift_ft=_lift(spec, measured, bare))


def _slopes(spec: PlacementSpec, measured: PlacementTakeoff) -> tuple[Slope, ...]:
    """A plane down to each side named; two opposite sides have a ridge half way between them."""
    downs = tuple(_DOWN[side] for side in spec.typed.falls_toward)
    if len(downs) == 2 and downs[0][0] * downs[1][0] + downs[0][1] * downs[1][1] < 0:
        down = downs[0]
        along = [x * down[0] + y * down[1] for ring in measured.outer_ft for x, y in ring]
        return (Slope(down=down, ridge_ft=(min(along) + max(along)) / 2),)
    return tuple(Slope(down=down) for down in downs)


def _high_edges(
    spec: PlacementSpec, measured: PlacementTakeoff, fall: float
) -> tuple[HighEdge, ...]:
    """The edges that water runs away from, so high that a drain drawn between is the low line."""
    lines = [
        shapely.union_all([shapely.LineString(run.points_ft) for run in runs])
        for away in spec.typed.falls_away_from
        if (runs := [r for edge in _AWAY[away] for r in runs_along(measured.edges, edge)])
    ]
    if len(lines) < 2 or not spec.typed.drains:
        return tuple(HighEdge(line=line) for line in lines)
    drain = spec.typed.drains[0]
    middle = shapely.LineString([point_ft(drain.from_), point_ft(drain.to)]).centroid
    first_ft, second_ft = (line.distance(middle) for line in lines)
    lift_ft = fall * (second_ft - first_ft)
    return (HighEdge(line=lines[0]), HighEdge(line=lines[1], lift_ft=lift_ft))


def _lift(spec: PlacementSpec, measured: PlacementTakeoff, bare: Surface) -> float:
    """The highest point of the slab is at zero, unless the job states a height somewhere."""
    if spec.typed.stated_height is not None:
        stated = spec.typed.stated_height
        return stated.height.ft - bare.height_ft(point_ft(stated.at))
    if any(slope.ridge_ft is not None for slope in bare.slopes):
        return 0.0
    return -max(bare.height_ft(at) for ring in measured.rings_ft for at in ring)


def falls_of(spec: PlacementSpec, measured: PlacementTakeoff, surface: Surface) -> PlacementFalls:
    """Return the height of each outer corner and the drop along each edge."""
    stated = spec.typed.stated_height
    return PlacementFalls(
        placement=spec.id,
        of=(stated.of or "") if stated else "",
        corners=_corners(measured, surface),
        edges=tuple(drop_of(run, surface) for run in measured.edges),
    )


def _corners(measured: PlacementTakeoff, surface: Surface) -> tuple[CornerHeight, ...]:
    outer = [run for run in measured.edges if not run.inner]
    by_start = {_near(run.points_ft[0]): run for run in outer}
    corners = []
    for run in outer:
        after = by_start.get(_near(run.points_ft[-1]))
        if after is not None and after is not run:
            at = run.points_ft[-1]
            corners.append(
                CornerHeight(
                    marks=(run.mark, after.mark),
                    at_ft=at,
                    height_ft=rounded(surface.height_ft(at), HEIGHT_PLACES),
                )
            )
    return tuple(corners)


def drop_of(run: EdgeRun, surface: Surface) -> EdgeDrop:
    """Return how far a run of edge drops, from its highest to its lowest point."""
    line = shapely.LineString(run.points_ft)
    shares = [step / _STEPS for step in range(_STEPS + 1)]
    along = [line.interpolate(share, normalized=True) for share in shares]
    spots = (*run.points_ft, *((at.x, at.y) for at in along))
    heights = [surface.height_ft(at) for at in spots]
    return EdgeDrop(
        mark=run.mark,
        highest_ft=rounded(max(heights), HEIGHT_PLACES),
        lowest_ft=rounded(min(heights), HEIGHT_PLACES),
        drop_ft=rounded(max(heights) - min(heights), HEIGHT_PLACES),
    )


def middles(run: EdgeRun) -> Sequence[tuple[Point, Point]]:
    """Return the middle of each straight piece of a run, and the direction away from the slab.

    The slab lies on the left of every run, so away from it is on the right.
    """
    found = []
    for (x0, y0), (x1, y1) in zip(run.points_ft, run.points_ft[1:], strict=False):
        length = math.dist((x0, y0), (x1, y1))
        if length:
            away = ((y1 - y0) / length, (x0 - x1) / length)
            found.append((((x0 + x1) / 2, (y0 + y1) / 2), away))
    return found


def inches_per_foot(fall: float) -> Fraction:
    """Return a fall in inches per foot, rounded to be compared with a rule."""
    return Fraction(rounded(fall * 12, 6))


def _near(at: Point) -> tuple[int, int]:
    return math.floor(at[0] * 100 + 0.5), math.floor(at[1] * 100 + 0.5)
