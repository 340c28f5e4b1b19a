"""Spans: the straight distances on a plan that anyone can check with a tape."""

from collections.abc import Iterator

from shapely import LinearRing, Polygon, maximum_inscribed_circle
from shapely import Point as Pin

from quotegen.quantity import rounded
from quotegen.takeoff.plan_geometry import Point, Ring, Span, SpanOf

NEAR_NOTHING_FT = 0.05
AT_THE_EDGE_FT = 0.25
LABEL_TOLERANCE_FT = 0.25


def spans_of(
    outer: tuple[Ring, ...], inner: tuple[Ring, ...], pools: tuple[Ring, ...]
) -> tuple[Span, ...]:
    """Return the overall size of each part, the size of each pool, and the deck beside each.

    The deck is measured straight out from the middle of the pool, to each of four sides. A pool
    that draws in at its middle has no size there.
    """
    return tuple(span for span in _all(outer, inner, pools) if span.length_ft > NEAR_NOTHING_FT)


def label_point(outer: tuple[Ring, ...], inner: tuple[Ring, ...]) -> tuple[Point, float]:
    """Return the roomiest place on the slab for a label, and its distance from the nearest edge."""
    polygons = [
        Polygon(ring, [hole for hole in inner if Polygon(ring).covers(Polygon(hole))])
        for ring in outer
    ]
    spots = [maximum_inscribed_circle(p, LABEL_TOLERANCE_FT) for p in polygons]
    best = max(spots, key=lambda spot: spot.length)
    across, up = best.coords[0]
    return (across, up), best.length


def _all(
    outer: tuple[Ring, ...], inner: tuple[Ring, ...], pools: tuple[Ring, ...]
) -> Iterator[Span]:
    for ring in outer:
        left, bottom, right, top = _box(ring)
        yield _span(SpanOf.OVERALL, (left, bottom), (right, bottom))
        yield _span(SpanOf.OVERALL, (left, bottom), (left, top))
    for pool in pools:
        left, bottom, right, top = _box(pool)
        across, up = (left + right) / 2, (bottom + top) / 2
        edge = LinearRing(pool)
        for ends in (((left, up), (right, up)), ((across, bottom), (across, top))):
            if all(edge.distance(Pin(end)) < AT_THE_EDGE_FT for end in ends):
                yield _span(SpanOf.POOL, *ends)
        for direction in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            yield from _clear((across, up), direction, pool, (*outer, *inner))


def _clear(
    middle: Point, direction: tuple[int, int], pool: Ring, edges: tuple[Ring, ...]
) -> Iterator[Span]:
    """From the edge of the pool to the next edge of the slab, away from the middle of the pool."""
    from_pool = max(_hits(middle, direction, pool), default=None)
    if from_pool is None:
        return
    beyond = [
        hit
        for ring in edges
        for hit in _hits(middle, direction, ring)
        if hit > from_pool + NEAR_NOTHING_FT
    ]
    if beyond:
        ends = [
            (middle[0] + direction[0] * far, middle[1] + direction[1] * far)
            for far in (from_pool, min(beyond))
        ]
        yield _span(SpanOf.CLEAR, ends[0], ends[1])


def _hits(middle: Point, direction: tuple[int, int], ring: Ring) -> Iterator[float]:
    """Yield how far out a horizontal or vertical line from a point meets a ring."""
    along, across = (0, 1) if direction[0] else (1, 0)
    sign = direction[along]
    for start, end in zip(ring, (*ring[1:], ring[0]), strict=True):
        low, high = start[across] - middle[across], end[across] - middle[across]
        if (low <= 0) != (high <= 0):
            share = low / (low - high)
            far = sign * (start[along] + share * (end[along] - start[along]) - middle[along])
            if far > 0:
                yield far


def _box(ring: Ring) -> tuple[float, float, float, float]:
    along, out = [p[0] for p in ring], [p[1] for p in ring]
    return min(along), min(out), max(along), max(out)


def _span(of: SpanOf, start: Point, end: Point) -> Span:
    length = abs(end[0] - start[0]) + abs(end[1] - start[1])
    return Span(of=of, start_ft=start, end_ft=end, length_ft=rounded(length, 2))
