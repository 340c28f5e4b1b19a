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
from quotegen.takeoff.plan_geometry import EdgeRun, Point, Ring
from quotegen.takeoff.records import CornerHeight, EdgeDrop, PlacementFalls, PlacementTakeoff
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.slab.edges import runs_along

HEIGHT_PLACES = 3  # 0.001 ft is finer than a laser level reads
_DOWN = {
    Side.BOTTOM: (0.0, -1.0), Side.TOP: (0.0, 1.0), Side.LEFT: (-1.0, 0.0), Side.RIGHT: (1.0, 0.0),
}  # fmt: skip
_STEPS = 200  # steps along an edge at which its height is worked out
_AWAY = {FallsFrom.POOL: EdgeKind.POOL, FallsFrom.HOUSE: EdgeKind.HOUSE}


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """The finished top of a slab that falls in one direction, or away from an edge on all sides.

    Attributes:
        fall: the drop in one foot, in feet.
        down: the direction water runs; None where it runs away from `edge`.
        edge: what water runs away from.
        lift_ft: what to add for the stated height to come out.
    """

    fall: float
    down: Point | None
    edge: BaseGeometry | None
    lift_ft: float = 0.0

    def height_ft(self, at: Point) -> float:
        """Return the height of the finished top at a point."""
        if self.edge is not None:
            return self.lift_ft - self.fall * self.edge.distance(shapely.Point(at))
        down = self.down or (0.0, 0.0)
        return self.lift_ft - self.fall * (at[0] * down[0] + at[1] * down[1])

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
    if spec.typed.falls_away_from is not None:
        runs = runs_along(measured.edges, _AWAY[spec.typed.falls_away_from])
        if not runs:
            return None
        edge = shapely.union_all([shapely.LineString(run.points_ft) for run in runs])
        bare = Surface(fall=fall, down=None, edge=edge)
    elif spec.typed.falls_toward is not None:
        bare = Surface(fall=fall, down=_DOWN[spec.typed.falls_toward], edge=None)
    else:
        return None
    return replace(bare, lift_ft=_lift(spec, measured, bare))


def _lift(spec: PlacementSpec, measured: PlacementTakeoff, bare: Surface) -> float:
    """The highest point of the slab is at zero, unless the job states a height somewhere."""
    if spec.typed.stated_height is not None:
        stated = spec.typed.stated_height
        return stated.height.ft - bare.height_ft(point_ft(stated.at))
    return -max(bare.height_ft(at) for ring in _rings(measured) for at in ring)


def falls_of(spec: PlacementSpec, measured: PlacementTakeoff, surface: Surface) -> PlacementFalls:
    """Return the height of each outer corner and the drop along each edge."""
    stated = spec.typed.stated_height
    return PlacementFalls(
        placement=spec.id,
        of=(stated.of or "") if stated else "",
        corners=_corners(measured, surface),
        edges=tuple(_drop(run, surface) for run in measured.edges),
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


def _drop(run: EdgeRun, surface: Surface) -> EdgeDrop:
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


def _rings(measured: PlacementTakeoff) -> tuple[Ring, ...]:
    return (*measured.outer_ft, *measured.inner_ft)
