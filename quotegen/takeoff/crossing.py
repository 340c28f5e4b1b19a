"""Where a loop crosses or touches itself."""

from shapely import LineString, Point, Polygon, STRtree

from quotegen.takeoff import records
from quotegen.takeoff.path import Loop, fine_corners, fine_ring


def crossing_of(loop: Loop) -> tuple[int, int, records.Point] | None:
    """Return which two segments cross or touch, and about where; None for a sound loop."""
    ring = fine_ring(loop)
    if Polygon(ring).is_valid:
        return None
    owners = [i for i, part in enumerate(loop) for _ in fine_corners(part)]
    edges = [LineString(pair) for pair in zip(ring, (*ring[1:], ring[0]), strict=True)]
    pairs = STRtree(edges).query(edges, predicate="intersects").T.tolist()
    for first, second in sorted(pairs):
        if first >= second:
            continue
        meeting = edges[first].intersection(edges[second])
        beside = second - first in {1, len(edges) - 1}
        if not (beside and isinstance(meeting, Point)):
            at = meeting.representative_point()
            return owners[first], owners[second], (at.x, at.y)
    return 0, len(loop) - 1, loop[0].start
