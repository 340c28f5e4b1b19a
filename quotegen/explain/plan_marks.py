"""The letters of edges that have no dimension, each in a ring beside its edge."""

from collections.abc import Iterator

from quotegen.explain import svg
from quotegen.explain.curves import Pixel, along, length
from quotegen.explain.free_space import Box
from quotegen.explain.paper import HOUSE_PX, MarkedEdge, Paper, moved
from quotegen.takeoff.records import Against

MARK_PX = 17.0
RING_PX = 21.0
SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95)


def edge_mark(marked: MarkedEdge, paper: Paper) -> str:
    """Put an edge's letter beside it, or where there is room, with a thin line to its edge."""
    others = [p for p in paper.takeoff.placements if p.id != marked.placement]
    for spot in _beside(marked, paper):
        box = Box.around(spot, RING_PX, RING_PX)
        if paper.space.is_free(box) and not paper.covered(spot, others):
            paper.space.take(box)
            return svg.mark(spot, marked.mark)
    return _led(marked, paper)


def _beside(marked: MarkedEdge, paper: Paper) -> Iterator[Pixel]:
    """Yield places beside an edge: outside, or inside where something else lies outside."""
    points = [paper.frame.px(point) for point in marked.edge.points_ft]
    away = paper.away(marked)
    wall = HOUSE_PX if marked.edge.against is Against.HOUSE else 0
    for distance in (MARK_PX + wall, -MARK_PX, MARK_PX + 12 + wall, -MARK_PX - 12):
        for share in SHARES:
            yield moved(along(points, share), away, distance)


def _led(marked: MarkedEdge, paper: Paper) -> str:
    middle = along([paper.frame.px(point) for point in marked.edge.points_ft], 0.5)
    near = moved(middle, paper.away(marked), MARK_PX)
    found = paper.space.find(near, RING_PX, RING_PX, paper.off_slab)
    if found is None:
        return svg.mark(near, marked.mark)
    leader = middle, found.middle
    rim = along(leader, 1 - svg.MARK_PX / max(length(leader), svg.MARK_PX))
    return svg.line(middle, rim) + svg.mark(found.middle, marked.mark)
