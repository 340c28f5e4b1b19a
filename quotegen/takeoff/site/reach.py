"""Reach: how much of the deck each way of access comes to from where the truck can stand."""

from collections.abc import Iterator

from shapely import LineString, MultiLineString, Polygon, union_all
from shapely.geometry.base import BaseGeometry

from quotegen.problem import Problem
from quotegen.quantity import rounded
from quotegen.reading.files.order_parts import AccessKind, AccessMethod
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec
from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.takeoff.records import MethodReach, Reach, Takeoff
from quotegen.takeoff.shapes.placed_shape import Figure, figure_of
from quotegen.takeoff.shapes.segments import point_ft
from quotegen.takeoff.site.drawn_slabs import regions_of, rings_of
from quotegen.takeoff.site.sight import Barriers, Way
from quotegen.takeoff.slab.edges import runs_along

WALL_FT = 0.5  # how thick the house is drawn where only its edge is typed
NEARLY_ALL = 0.995  # what is left is pulled over with a rake
_PERCENT = 100
_STRAIGHT = {AccessKind.CHUTE, AccessKind.CONVEYOR}


def reach_of(job: JobSpec, takeoff: Takeoff) -> tuple[Reach | None, tuple[Problem, ...]]:
    """Return what each way of access reaches, or None where no truck stand is typed.

    A chute and a conveyor reach straight over the pool and not through the house or an
    obstacle; barrows and a pump line go round all three, the shortest way.
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
    over, round_ = Barriers.of((*walls, *solid)), Barriers.of((*walls, *solid, *pools))
    ways = [round_.ways(stand) for stand in stands]
    deck = regions_of(takeoff)
    methods = tuple(
        _method(method_id, method, _reached(job, method, stands, over, round_, ways), deck, job)
        for method_id, method in job.rate_book.access.items()
    )
    farthest = _farthest(takeoff, round_, ways)
    return Reach(
        stands_ft=stands,
        obstacles_ft=tuple(ring for shape in solid for ring in rings_of(shape.simplify(0.005))),
        obstacle_names=tuple(obstacle.what for obstacle in access.obstacles),
        methods=methods,
        route_ft=rounded(farthest[0], 1) if farthest else None,
        route=farthest[1] if farthest else (),
    ), ()


def _obstacles(job: JobSpec) -> tuple[tuple[Figure, ...], tuple[Problem, ...]]:
    figures: list[Figure] = []
    problems: list[Problem] = []
    for index, obstacle in enumerate(job.access.obstacles if job.access else ()):
        found = figure_of(obstacle.shape, "obstacles", index)
        if isinstance(found, Figure):
            figures.append(found)
        else:
            problems += [
                # A fault counts its path from its group and place; here the shape is a key deeper.
                fault.at("access", "obstacles", index, "shape", *fault.path[2:]).problem(job)
                for fault in found
            ]
    return tuple(figures), tuple(problems)


def _walls(takeoff: Takeoff) -> Iterator[BaseGeometry]:
    """A thin wall behind each edge at the house; who types the house as an obstacle has more."""
    for measured in takeoff.placements:
        for run in runs_along(measured.edges, EdgeKind.HOUSE):
            # A negative one-sided buffer lies on the right of the run, away from the slab.
            yield LineString(run.points_ft).buffer(-WALL_FT, single_sided=True)


def _reached(
    job: JobSpec,
    method: AccessMethod,
    stands: tuple[Point, ...],
    over: Barriers,
    round_: Barriers,
    ways: list[dict[Point, Way]],
) -> BaseGeometry:
    if method.kind in _STRAIGHT:
        typed = job.access.chute if job.access and method.kind is AccessKind.CHUTE else None
        reach_ft = (typed or method.reach).ft
        return union_all([over.seen(stand, reach_ft) for stand in stands])
    return union_all([round_.within(each, method.reach.ft) for each in ways])


def _method(
    method_id: str, method: AccessMethod, reached: BaseGeometry, deck: BaseGeometry, job: JobSpec
) -> MethodReach:
    typed = job.access.chute if job.access and method.kind is AccessKind.CHUTE else None
    share = reached.intersection(deck).area / deck.area
    return MethodReach(
        id=method_id,
        name=method.name,
        kind=method.kind,
        reach_ft=rounded((typed or method.reach).feet, 1),
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
    takeoff: Takeoff, barriers: Barriers, ways: list[dict[Point, Way]]
) -> tuple[float, Ring] | None:
    """Return the way to the corner that is farthest from every truck."""
    shortest = []
    for measured in takeoff.placements:
        for ring in measured.outer_ft:
            for corner in ring:
                found = [way for each in ways if (way := barriers.way_to(each, corner))]
                if found:
                    shortest.append(min(found))
    return max(shortest, default=None)
