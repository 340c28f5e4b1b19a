"""The reach drawing: where the truck stands, what is in the way, how far each method reaches."""

from collections.abc import Iterator
from itertools import pairwise

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.canvas import Canvas, marked_edges
from quotegen.explain.drawing.curves import length
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.drawing.scale import Viewport
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan_symbols import closed_line, north, scale_bar
from quotegen.explain.results import Results
from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.takeoff.records import MethodReach, Reach

STAND_PX = 7.0
REACH_DASH, ROUTE_DASH, OBSTACLE_DASH = "6 4", "2 4", "1.5 2"


def draw_reach(results: Results, viewport: Viewport, ident: str) -> Drawing | None:
    """Draw how concrete gets from the truck to the slabs; nothing where no truck stand is typed."""
    reach = results.takeoff.reach
    if reach is None:
        return None
    beside = (*reach.stands_ft, *(point for ring in reach.obstacles_ft for point in ring))
    canvas = Canvas.fitted(results, viewport, ident, beside)
    title = results.words("reach_title", title=results.job.title)
    return canvas.drawing(_parts(canvas, reach), title)


def _parts(canvas: Canvas, reach: Reach) -> Iterator[str]:
    yield svg.element("defs", canvas.wall_hatch())
    for measured in canvas.takeoff.placements:
        yield canvas.outline(measured)
    yield from north(canvas)
    yield from scale_bar(canvas)
    marked = marked_edges(canvas.takeoff)
    for one in marked:
        yield canvas.house_wall(one)
    for stand in reach.stands_ft:
        yield from _truck(stand, canvas)
    for ring in reach.obstacles_ft:
        yield closed_line(canvas.scale.ring(ring), dash=OBSTACLE_DASH)
    yield from _route(reach.route, canvas)
    for method in reach.methods:
        yield from _ends_of(method, canvas)
    for one in marked:
        yield canvas.house_label(one)
    for method in reach.methods:
        yield _name_of(method, canvas)
    yield from _names(reach, canvas)


def _truck(at: Point, canvas: Canvas) -> Iterator[str]:
    """Draw where the chute of a truck begins: a dot in a ring."""
    x, y = canvas.scale.px(at)
    canvas.space.take(Box.around((x, y), 2 * STAND_PX, 2 * STAND_PX))
    yield svg.station((x, y), STAND_PX)
    yield canvas.label((x, y + STAND_PX + 10), canvas.words("plan_truck"), canvas.off_slab)


def _route(route: Ring, canvas: Canvas) -> Iterator[str]:
    """Draw the route on foot to the farthest corner, dotted, with an arrow at its end."""
    points = canvas.scale.ring(route)
    for start, end in pairwise(points):
        canvas.space.take_line(start, end)
    if len(points) > 1:
        if len(points) > 2:
            yield svg.polyline(points[:-1], width=svg.LINE, dash=ROUTE_DASH)
        yield svg.arrow(points[-2], points[-1], dash=ROUTE_DASH)


def _ends_of(method: MethodReach, canvas: Canvas) -> Iterator[str]:
    """Draw where the reach of a method ends on the slab."""
    for line in method.edge_ft:
        points = canvas.scale.ring(line)
        yield svg.polyline(points, width=svg.LINE, dash=REACH_DASH)
        for start, end in pairwise(points):
            canvas.space.take_line(start, end)


def _name_of(method: MethodReach, canvas: Canvas) -> str:
    """Name a method beside a line where its reach ends, the longest that has room."""
    reach = canvas.words.feet(method.reach_ft)
    text = canvas.words("plan_reach", method=method.name, length=reach)
    lines = sorted(map(canvas.scale.ring, method.edge_ft), key=length, reverse=True)
    return canvas.label_beside(lines, text, canvas.on_slab) if lines else ""


def _names(reach: Reach, canvas: Canvas) -> Iterator[str]:
    for ring, name in zip(reach.obstacles_ft, reach.obstacle_names, strict=False):
        pixels = canvas.scale.ring(ring)
        middle = (sum(x for x, _ in pixels) / len(pixels), sum(y for _, y in pixels) / len(pixels))
        yield canvas.label(middle, name)
    if reach.route and reach.route_ft is not None:
        text = canvas.words("plan_route", length=canvas.words.feet(reach.route_ft))
        yield canvas.label_beside([canvas.scale.ring(reach.route)], text)
