"""Corner panels: the far corners of a deck squared off before joints lead out from its pool.

A joint from a round pool straight into the corner of a deck would leave two sharp corners there.
So a corner panel is cut off by joints square to both edges. Where these two meet, a third leads
on to the pool, and all three angles are wide.
"""

import math
from collections.abc import Iterator

import shapely
from shapely.geometry.polygon import orient
from shapely.ops import nearest_points

from quotegen.takeoff.joints.judge import passes
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import Part, interior_rad
from quotegen.takeoff.plan_geometry import Point

_CORNER_RAD = (math.radians(60), math.radians(145))
_BEND_RAD = math.radians(30)
_NEAR_FT = 0.05


def corner_panels(
    region: shapely.Polygon, reach: float, limits: Limits
) -> tuple[shapely.Polygon, ...]:
    """Return a panel for each corner that lies too far from the nearest cut-out for one panel.

    Args:
        region: a slab with a cut-out.
        reach: how far toward the cut-out the panel reaches, as a share of the way.
        limits: of the panels.
    """
    found: list[shapely.Polygon] = []
    for panel in _panels(region, reach, limits):
        if all(panel.distance(other) > limits.least_ft for other in found):
            found.append(panel)
    return tuple(found)


def _panels(region: shapely.Polygon, reach: float, limits: Limits) -> Iterator[shapely.Polygon]:
    holes = [shapely.Polygon(ring) for ring in region.interiors]
    ring = tuple((x, y) for x, y in orient(region).exterior.coords[:-1])
    for n, at in enumerate(ring):
        angle = interior_rad(ring[n - 1], at, ring[(n + 1) % len(ring)])
        if not _CORNER_RAD[0] < angle < _CORNER_RAD[1]:
            continue
        near = min((nearest_points(hole, shapely.Point(at))[0] for hole in holes),
                   key=lambda one: one.distance(shapely.Point(at)))  # fmt: skip
        middle = (at[0] + (near.x - at[0]) * reach, at[1] + (near.y - at[1]) * reach)
        lean = max(0.0, (angle + limits.corner_rad - math.pi) / 2)
        feet = [_foot(ring, n, middle, step, lean) for step in (-1, 1)]
        if feet[0] is None or feet[1] is None:
            continue
        panel = (feet[0][0], *reversed(feet[0][1]), at, *feet[1][1], feet[1][0], middle)
        cut = (*([False] * (len(panel) - 2)), True, True)
        shape = shapely.Polygon(panel)
        if shape.is_valid and passes(Part(ring=panel, cut=cut), limits):
            yield shape


def _foot(
    ring: tuple[Point, ...], corner: int, middle: Point, step: int, lean_rad: float
) -> tuple[Point, tuple[Point, ...]] | None:
    """Return where the edge is nearest to a point, one way from a corner, and the points passed.

    None where the edge turns a corner before that.
    """
    passed: list[Point] = []
    here = ring[corner]
    for n in range(1, len(ring) // 2):
        there = ring[(corner + step * n) % len(ring)]
        ux, uy = there[0] - here[0], there[1] - here[1]
        long = math.hypot(ux, uy)
        along = ((middle[0] - here[0]) * ux + (middle[1] - here[1]) * uy) / long
        off = abs((middle[0] - here[0]) * uy - (middle[1] - here[1]) * ux) / long
        share = (along + off * math.tan(lean_rad)) / long
        if share <= 1:
            if share * long < _NEAR_FT:
                return (here, tuple(passed[:-1])) if passed else None
            return (here[0] + ux * share, here[1] + uy * share), tuple(passed)
        after = ring[(corner + step * (n + 1)) % len(ring)]
        if abs(interior_rad(here, there, after) - math.pi) > _BEND_RAD:
            return None
        passed.append(there)
        here = there
    return None
