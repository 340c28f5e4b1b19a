"""What a plan to be looked at has beside its measures: water, drain, slopes, a patch of finish."""

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import pairwise, product
from math import hypot

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.canvas import (
    LABEL_SIZE,
    Canvas,
    MarkedEdge,
    moved,
)
from quotegen.explain.drawing.curves import Pixel, along
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.scale import inside, outward
from quotegen.explain.drawing.scatter import spots
from quotegen.explain.drawing.surfaces import surface_strokes
from quotegen.reading.files.shapes import Side
from quotegen.reading.files.site_parts import FallsFrom
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import BUILDING, Against, EdgeRun, Point
from quotegen.takeoff.records import PlacementTakeoff
from quotegen.takeoff.slab.edges import runs_along

WALL_PX, DRAIN_PX = 3.5, 7.0
"""From the edge of a pool to its inner line, and from an edge to the drain along it."""

DRAIN_DASH = "9 3 2 3"
ARROW_PX, ARROW_OFF_PX = 30.0, 30.0
WATER_PX = ((-15.0, 15.0, 0.0), (-8.0, 9.0, 4.0), (-3.0, 4.0, 8.0))
"""The strokes that stand for water: from, to, and how far down."""

PATCHES = ((150, 84), (110, 64), (80, 46), (60, 34))
SURFACE_PX_PER_IN = 3.2
"""A patch shows the finish larger than the plan is: at its scale there is nothing to be seen."""

RING_PX, RING_OFF_PX = 11.0, 30.0
DOWNHILL: dict[Side, Point] = {
    Side.BOTTOM: (0, -1), Side.TOP: (0, 1), Side.LEFT: (-1, 0), Side.RIGHT: (1, 0),
}  # fmt: skip


def pool_wall(measured: PlacementTakeoff, canvas: Canvas) -> Iterator[str]:
    """Draw a second line inside the edge of each pool."""
    ink = Ink()
    for ring in measured.pools_ft:
        ink.stroke(_beside(canvas.scale.ring(ring), -WALL_PX), Pen.FINE, closed=True)
    yield ink.drawn()


def drains(measured: PlacementTakeoff, canvas: Canvas) -> Iterator[str]:
    """Draw a drain along each edge that has one."""
    ink = Ink()
    for edge in _drained(measured, canvas):
        run = _inward(edge, measured, canvas)
        for start, end in pairwise(run):
            canvas.space.take_line(start, end)
        ink.stroke(run, Pen.MEDIUM, dash=DRAIN_DASH)
    yield ink.drawn()


def drain_name(measured: PlacementTakeoff, canvas: Canvas) -> Iterator[str]:
    """Name a drain beside it, once."""
    runs = [_inward(edge, measured, canvas) for edge in _drained(measured, canvas)]
    if runs:
        yield canvas.label_beside(
            sorted(runs, key=len), canvas.words("plan_drain"), lambda box: canvas.on(box, measured)
        )


def pool_name(measured: PlacementTakeoff, canvas: Canvas) -> Iterator[str]:
    """Write the word in each pool."""
    words = canvas.words("plan_pool")
    wide = canvas.words.font.width(words, LABEL_SIZE) + 6
    for ring in measured.pools_ft:
        pixels = canvas.scale.ring(ring)
        middle = (sum(x for x, _ in pixels) / len(pixels), sum(y for _, y in pixels) / len(pixels))
        box = canvas.space.find((middle[0], middle[1] - 14), wide, 15, partial(_in, canvas, ring))
        if box:
            yield svg.text((box.middle[0], box.bottom - 3), words, size=LABEL_SIZE)


def water(measured: PlacementTakeoff, canvas: Canvas) -> str:
    """Scatter the strokes of water over each pool, clear of every line and word."""
    ink = Ink()
    for ring in measured.pools_ft:
        pixels = canvas.scale.ring(ring)
        left, top = min(x for x, _ in pixels), min(y for _, y in pixels)
        wide, high = max(x for x, _ in pixels) - left, max(y for _, y in pixels) - top
        for u, v in spots(max(4, int(wide * high / 1500)), wide, high, 4):
            x, y = left + u, top + v
            box = Box(x - 18, y - 4, x + 18, y + 12)
            if _in(canvas, ring, box) and canvas.space.is_free(box):
                canvas.space.take(box)
                for start, end, down in WATER_PX:
                    ink.stroke(((x + start, y + down), (x + end, y + down)), Pen.FINE)
    return ink.drawn()


def falls_by_side(spec: PlacementSpec, measured: PlacementTakeoff, canvas: Canvas) -> Iterator[str]:
    """Draw an arrow downhill at each side that water runs to, the first one with its slope."""
    if spec.typed.fall is None:
        return
    words, written = canvas.words.slope(spec.typed.fall), False
    for places, way in _ways(spec, measured, canvas):
        wide, high = (16 + abs(part) * ARROW_PX for part in way)
        tried = (
            canvas.space.find_near(near, wide, high, lambda box: canvas.on(box, measured))
            for near in places
        )
        box = next(filter(None, tried), None)
        if box is None:
            continue
        yield svg.arrow(moved(box.middle, way, -ARROW_PX / 2), moved(box.middle, way, ARROW_PX / 2))
        if not written:
            text = canvas.space.find_near(
                (box.right + canvas.words.font.width(words, LABEL_SIZE) / 2 + 4, box.middle[1]),
                canvas.words.font.width(words, LABEL_SIZE) + 6, 15,
                lambda box: canvas.on(box, measured),
            )  # fmt: skip
            if text:
                written = True
                yield svg.text((text.middle[0], text.bottom - 3), words, size=LABEL_SIZE)


_EVERYWHERE = tuple(product((0.16, 0.84), (0.25, 0.75)))
_STANDS = {
    Side.LEFT: ((0.16, 0.5),), Side.RIGHT: ((0.84, 0.5),),
    Side.TOP: ((0.3, 0.2), (0.7, 0.2)), Side.BOTTOM: ((0.3, 0.8), (0.7, 0.8)),
}  # fmt: skip
"""Where on the plan arrows stand, in shares across and down: all over, or at their own side."""
_AT_HOUSE, _ON_A_CURVE, _BESIDE_A_POOL = (0.25,), (0.5,), (0.5, 0.75, 0.25)
"""Where along an edge its arrow may stand: a drain is named at the middle of the house, a curve
runs another way at each point, and a round pool comes nearest at the middle."""


def _ways(
    spec: PlacementSpec, measured: PlacementTakeoff, canvas: Canvas
) -> Iterator[tuple[tuple[Pixel, ...], Point]]:
    """Where each arrow may stand, the best place first, and its direction on the ground."""
    sides = spec.typed.falls_toward or ()
    pixels = [canvas.scale.px(point) for ring in measured.outer_ft for point in ring]
    left, right = min(x for x, _ in pixels), max(x for x, _ in pixels)
    top, foot = min(y for _, y in pixels), max(y for _, y in pixels)
    for side in sides:
        for across, down in _STANDS[side] if len(sides) > 1 else _EVERYWHERE:
            near = (left + (right - left) * across, top + (foot - top) * down)
            yield (near,), DOWNHILL[side]
    away = spec.typed.falls_away_from or ()
    for edge in measured.edges:
        inward = edge.against in BUILDING and FallsFrom.HOUSE in away
        outward_to = edge.against is Against.OPEN and FallsFrom.POOL in away
        if not edge.inner and (inward or outward_to):
            x, y = outward(edge.points_ft, measured.rings_ft)
            run = [canvas.scale.px(point) for point in edge.points_ft]
            shares = _AT_HOUSE if inward else _ON_A_CURVE if edge.is_curved else _BESIDE_A_POOL
            places = (moved(along(run, share), (x, y), -ARROW_OFF_PX) for share in shares)
            yield tuple(places), (-x, -y) if inward else (x, y)


def finish_patch(spec: PlacementSpec, measured: PlacementTakeoff, canvas: Canvas) -> str:
    """Show the finish in one patch where nothing else stands, larger than the plan is."""
    finish = canvas.job.finish_of(spec, canvas.job.finish)[1]
    near, ink = canvas.scale.px(measured.label_ft), Ink()
    for wide, high in PATCHES:
        box = canvas.space.find(near, wide, high, lambda box: canvas.on(box, measured))
        if box is None:
            continue
        a, b = wide / SURFACE_PX_PER_IN, high / SURFACE_PX_PER_IN
        for stroke in surface_strokes(finish.kind, finish.pattern, a, b, 1.0):
            run = [(x, y) for x, y in stroke.points if _in_patch(x / a, y / b)]
            if len(run) > 1:
                shown = [(box.left + x * SURFACE_PX_PER_IN, box.top + y * SURFACE_PX_PER_IN)
                         for x, y in run]  # fmt: skip
                whole = len(run) == len(stroke.points)
                ink.stroke(shown, Pen.FINE, closed=stroke.closed and whole)
        return ink.drawn()
    return ""


def _in_patch(x: float, y: float) -> bool:
    """Whether a share of the patch lies in its rounded middle."""
    return (2 * x - 1) ** 4 + (2 * y - 1) ** 4 <= 1


def cut_ring(marked: Sequence[MarkedEdge], canvas: Canvas, number: str) -> str:
    """Draw a line across an open edge, and at its end the number of the sheet that cuts there."""
    open_edges = [one for one in marked if one.edge.against is Against.OPEN and not one.edge.inner]
    for one in sorted(open_edges, key=lambda one: -one.edge.length_ft):
        points = [canvas.scale.px(point) for point in one.edge.points_ft]
        away = canvas.away(one)
        for share in (0.72, 0.28, 0.85, 0.15, 0.6, 0.4):
            foot = along(points, share)
            middle = moved(foot, away, RING_OFF_PX)
            box = Box.around(middle, 2 * RING_PX + 2, 2 * RING_PX + 2)
            if canvas.space.is_free(box) and canvas.off_slab(box):
                canvas.space.take(box)
                ends = moved(foot, away, -16), moved(foot, away, RING_OFF_PX - RING_PX)
                canvas.space.take_line(*ends)
                ring = svg.element("circle", cx=middle[0], cy=middle[1], r=RING_PX, fill=svg.PAPER,
                                   stroke=svg.INK, stroke_width=svg.LINE)  # fmt: skip
                word = svg.text((middle[0], middle[1] + 4.5), number, size=13, face="bold")
                return svg.line(*ends, width=svg.LINE) + ring + word
    return ""


def _drained(measured: PlacementTakeoff, canvas: Canvas) -> Iterator[EdgeRun]:
    spec = next(one for one in canvas.job.placements if one.id == measured.id)
    typed = [runs_along(measured.edges, edge) for edge in spec.typed.drained_edges]
    yield from (edge for edge in measured.edges if any(edge in runs for runs in typed))


def _inward(edge: EdgeRun, measured: PlacementTakeoff, canvas: Canvas) -> list[Pixel]:
    """An edge, moved onto the slab by the distance of a drain."""
    run = [canvas.scale.px(point) for point in edge.points_ft]
    away = outward(edge.points_ft, measured.rings_ft)
    middle = len(run) // 2
    (ax, ay), (bx, by) = run[middle - 1], run[middle]
    left = (by - ay) * away[0] + (bx - ax) * away[1]  # which side of the run lies off the slab
    return _offset(run, -DRAIN_PX if left > 0 else DRAIN_PX)


def _offset(run: Sequence[Pixel], by: float) -> list[Pixel]:
    """A line beside a line, each point moved square to its neighbors."""
    moved_points = []
    for index, (x, y) in enumerate(run):
        (ax, ay), (bx, by_) = run[max(0, index - 1)], run[min(len(run) - 1, index + 1)]
        long = hypot(bx - ax, by_ - ay) or 1
        moved_points.append((x + by * (by_ - ay) / long, y - by * (bx - ax) / long))
    return moved_points


def _beside(ring: Sequence[Pixel], by: float) -> list[Pixel]:
    """A ring inside (negative) or around a ring."""
    area = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))
    around = [ring[-1], *ring, ring[0]]
    return _offset(around, by if area > 0 else -by)[1:-1]


def _in(canvas: Canvas, ring: Sequence[Point], box: Box) -> bool:
    return all(inside(canvas.scale.ground(at), [tuple(ring)]) for at in box.probes())
