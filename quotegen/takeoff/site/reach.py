"""Reach: how much of the deck each access method gets to from where the truck can stand."""

from collections.abc import Iterator

from shapely import LineString, MultiLineString, Polygon, union_all
from shapely.geometry.base import BaseGeometry

from quotegen.problem import Problem
from quotegen.quantity import Length, rounded
from quotegen.reading.files.order_parts import AccessKind, AccessMethod
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec
from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.takeoff.records import MethodReach, Reach, Takeoff
from quotegen.takeoff.shapes.placed_shape import PlacedShape, place_shape
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.site.drawn_slabs import regions_of, rings_of
from quotegen.takeoff.site.sight import Barriers, Route
from quotegen.takeoff.slab.edges import runs_along

WALL_FT = 0.5  # how thick the house is taken to be where only its edge is typed
NEARLY_ALL = 0.995  # a rake pulls concrete over the rest
_PERCENT = 100
_STRAIGHT = {AccessKind.CHUTE, AccessKind.CONVEYOR}


def reach_of(job: JobSpec, takeoff: Takeoff) -> tuple[Reach | None, tuple[Problem, ...]]:
    """Return what each access method reaches, or None where no truck stand is typed.

    A chute and a conveyor reach straight over the pool, but not through the house or an obstacle.
    Barrows and a pump line go around all three, by the shortest route.
    """
    access = job.access
    if access is None or not access.stands:
        return None, ()
    obstacles, problems = _obstacles(job)
    if problems:
        return None, problems
    stands = tuple(point_ft(stand) for stand in access.stands)
    walls = tuple(_walls(takeoff))
    solid = tuple(obstacle.polygon for obstacle in obstacles)
    pools = tuple(Polygon(ring) for p in takeoff.placements for ring in p.pools_ft)
    in_the_air, on_foot = Barriers.of((*walls, *solid)), Barriers.of((*walls, *solid, *pools))
    routes = tuple(on_foot.routes_from(stand) for stand in stands)
    deck = regions_of(takeoff)

    def reached_by(method: AccessMethod) -> BaseGeometry:
        reach_ft = _reach(job, method).ft
        if method.kind in _STRAIGHT:
            return union_all([in_the_air.visible_from(stand, reach_ft) for stand in stands])
        return union_all([on_foot.within(each, reach_ft) for each in routes])

    methods = tuple(
        _method_reach(method_id, method, _reach(job, method), reached_by(method), deck)
        for method_id, method in job.rate_book.access.items()
    )
    farthest = _farthest(takeoff, on_foot, routes)
    return Reach(
        stands_ft=stands,
        obstacles_ft=tuple(ring for shape in solid for ring in rings_of(shape.simplify(0.005))),
        obstacle_names=tuple(obstacle.what for obstacle in access.obstacles),
        methods=methods,
        route_ft=rounded(farthest[0], 1) if farthest else None,
        route=farthest[1] if farthest else (),
    ), ()


def _reach(job: JobSpec, method: AccessMethod) -> Length:
    """Return how far a method reaches; the job may give the length of its truck's chute."""
    if method.kind is AccessKind.CHUTE and job.access and job.access.chute:
        return job.access.chute
    return method.reach


def _obstacles(job: JobSpec) -> tuple[tuple[PlacedShape, ...], tuple[Problem, ...]]:
    placed: list[PlacedShape] = []
    problems: list[Problem] = []
    for index, obstacle in enumerate(job.access.obstacles if job.access else ()):
        found = place_shape(obstacle.shape, "obstacles", index)
        if isinstance(found, PlacedShape):
            placed.append(found)
        else:
            problems += [
                # A fault counts its path from group and place; here the shape is one key deeper.
                fault.at("access", "obstacles", index, "shape", *fault.path[2:]).problem(job)
                for fault in found
            ]
    return tuple(placed), tuple(problems)


def _walls(takeoff: Takeoff) -> Iterator[BaseGeometry]:
    """A thin wall behind each edge at the house; the whole house may be typed as an obstacle."""
    for measured in takeoff.placements:
        for run in runs_along(measured.edges, EdgeKind.HOUSE):
            # A negative one-sided buffer lies on the right of the run, away from the slab.
            yield LineString(run.points_ft).buffer(-WALL_FT, single_sided=True)


def _method_reach(
    method_id: str, method: AccessMethod, reach: Length, reached: BaseGeometry, deck: BaseGeometry
) -> MethodReach:
    share = reached.intersection(deck).area / deck.area
    return MethodReach(
        id=method_id,
        name=method.name,
        kind=method.kind,
        reach_ft=rounded(reach.feet, 1),
        share=rounded(share * _PERCENT, 1),
        covers=share >= NEARLY_ALL,
        edge_ft=tuple(_edge_on(reached, deck)),
    )


def _edge_on(reached: BaseGeometry, deck: BaseGeometry) -> Iterator[Ring]:
    """Yield where the reach ends on the deck."""
    edge = reached.boundary.intersection(deck.buffer(-0.01))
    lines = edge.geoms if isinstance(edge, MultiLineString) else (edge,)
    for line in lines:
        if isinstance(line, LineString) and not line.is_empty:
            yield tuple((x, y) for x, y, *_ in line.simplify(0.01).coords)


def _farthest(
    takeoff: Takeoff, on_foot: Barriers, routes: tuple[dict[Point, Route], ...]
) -> tuple[float, Ring] | None:
    """Return the route to the corner that is farthest from every truck, and its length."""
    shortest = []
    for measured in takeoff.placements:
        for ring in measured.outer_ft:
            for corner in ring:
                found = [route for each in routes if (route := on_foot.route_to(each, corner))]
                if found:
                    shortest.append(min(found))
    return max(shortest, default=None)
