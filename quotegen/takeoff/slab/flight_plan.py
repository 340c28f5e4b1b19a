"""A flight of steps as it lies on the plan: at the house it climbs from the slab, else up to it."""

from itertools import pairwise
from math import dist, inf

import shapely

from quotegen.reading.files.site_parts import Flight
from quotegen.takeoff.plan_geometry import BUILDING, EdgeRun, FlightPlan, Point, Ring
from quotegen.takeoff.shapes.segments import point_ft

_PROBE_FT = 0.02


def flight_plan(
    flight: Flight | None, runs: tuple[EdgeRun, ...], outer: tuple[Ring, ...]
) -> FlightPlan | None:
    """Lay a flight to the edge nearest to where it was typed; None where nobody said where."""
    if flight is None or flight.at is None or flight.width is None or flight.tread is None:
        return None
    at = point_ft(flight.at)
    run, start, end = min(
        ((run, a, b) for run in runs for a, b in pairwise(run.points_ft)),
        key=lambda piece: _off(at, piece[1], piece[2]),
    )
    long = dist(start, end)
    way = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    line = shapely.LineString((start, end))
    foot = line.interpolate(line.project(shapely.Point(at)))
    middle, away = (foot.x, foot.y), _away((foot.x, foot.y), way, outer)
    at_house = run.against in BUILDING
    sign, half, tread = -1 if at_house else 1, flight.width.ft / 2, flight.tread.ft
    out = (sign * away[0], sign * away[1])

    def corner(along: float, off: float) -> Point:
        return (
            middle[0] + way[0] * along + out[0] * off,
            middle[1] + way[1] * along + out[1] * off,
        )

    steps = [tread * number for number in range(len(flight.risers) + 1)]
    treads = tuple(
        (corner(-half, near), corner(half, near), corner(half, far), corner(-half, far))
        for near, far in pairwise(steps)
    )
    return FlightPlan(treads_ft=treads, at_house=at_house, off_edge_ft=_off(at, start, end))


def _off(at: Point, start: Point, end: Point) -> float:
    return inf if start == end else shapely.LineString((start, end)).distance(shapely.Point(at))


def _away(at: Point, way: Point, outer: tuple[Ring, ...]) -> Point:
    """The direction square to an edge that leaves the slab."""
    side = (way[1], -way[0])
    probe = shapely.Point(at[0] + side[0] * _PROBE_FT, at[1] + side[1] * _PROBE_FT)
    on_slab = any(shapely.Polygon(ring).covers(probe) for ring in outer)
    return (-side[0], -side[1]) if on_slab else side
