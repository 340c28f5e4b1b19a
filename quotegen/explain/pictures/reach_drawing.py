"""The reach drawing: where the truck stands, what it goes round, and how far each way comes."""

from collections.abc import Iterator
from itertools import pairwise

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.canvas import Paper, marked_edges
from quotegen.explain.drawing.curves import length
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.drawing.scale import Room
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan_symbols import closed, north, scale_bar
from quotegen.explain.wording import Words
from quotegen.reading.records import JobSpec
from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.takeoff.records import MethodReach, Reach, Takeoff

STAND_PX = 7.0
REACH_DASH, ROUTE_DASH, OBSTACLE_DASH = "6 4", "2 4", "1.5 2"


def draw_reach(
    job: JobSpec, takeoff: Takeoff, reach: Reach, words: Words, room: Room, ident: str
) -> Drawing:
    """Draw how concrete gets from the truck to the slabs into a room of paper."""
    beside = (*reach.stands_ft, *(point for ring in reach.obstacles_ft for point in ring))
    paper = Paper.sized(job, takeoff, words, room, ident, beside)
    return paper.drawing(_parts(paper, reach), words("reach_title", title=job.title))


def _parts(paper: Paper, reach: Reach) -> Iterator[str]:
    yield svg.element("defs", paper.wall())
    for measured in paper.takeoff.placements:
        yield paper.outline(measured)
    yield from north(paper)
    yield from scale_bar(paper)
    marked = marked_edges(paper.takeoff)
    for one in marked:
        yield paper.house(one)
    for stand in reach.stands_ft:
        yield from _truck(stand, paper)
    for ring in reach.obstacles_ft:
        yield closed(paper.frame.ring(ring), dash=OBSTACLE_DASH)
    yield from _route(reach.route, paper)
    for method in reach.methods:
        yield from _ends_of(method, paper)
    for one in marked:
        yield paper.house_name(one)
    for method in reach.methods:
        yield _name_of(method, paper)
    yield from _names(reach, paper)


def _truck(at: Point, paper: Paper) -> Iterator[str]:
    """Draw where the chute of a truck begins: a dot in a ring."""
    x, y = paper.frame.px(at)
    paper.space.take(Box.around((x, y), 2 * STAND_PX, 2 * STAND_PX))
    yield svg.station((x, y), STAND_PX)
    yield paper.label((x, y + STAND_PX + 10), paper.words("plan_truck"), paper.off_slab)


def _route(route: Ring, paper: Paper) -> Iterator[str]:
    """Draw the way on foot to the farthest corner, dotted, with an arrow at its end."""
    points = paper.frame.ring(route)
    for start, end in pairwise(points):
        paper.space.take_line(start, end)
    if len(points) > 1:
        if len(points) > 2:
            yield svg.polyline(points[:-1], width=svg.LINE, dash=ROUTE_DASH)
        yield svg.arrow(points[-2], points[-1], dash=ROUTE_DASH)


def _ends_of(method: MethodReach, paper: Paper) -> Iterator[str]:
    """Draw where the reach of a way ends on the slab."""
    for line in method.edge_ft:
        points = paper.frame.ring(line)
        yield svg.polyline(points, width=svg.LINE, dash=REACH_DASH)
        for start, end in pairwise(points):
            paper.space.take_line(start, end)


def _name_of(method: MethodReach, paper: Paper) -> str:
    """Say which way it is at one of its ends, at the longest where there is room."""
    told = paper.words("plan_reach", method=method.name, length=paper.words.feet(method.reach_ft))
    lines = sorted(map(paper.frame.ring, method.edge_ft), key=length, reverse=True)
    return paper.label_beside(lines, told, paper.on_slab) if lines else ""


def _names(reach: Reach, paper: Paper) -> Iterator[str]:
    for ring, name in zip(reach.obstacles_ft, reach.obstacle_names, strict=False):
        pixels = paper.frame.ring(ring)
        middle = (sum(x for x, _ in pixels) / len(pixels), sum(y for _, y in pixels) / len(pixels))
        yield paper.label(middle, name)
    if reach.route and reach.route_ft is not None:
        told = paper.words("plan_route", length=paper.words.feet(reach.route_ft))
        yield paper.label_beside([paper.frame.ring(reach.route)], told)
