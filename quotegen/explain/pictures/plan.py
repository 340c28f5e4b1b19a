"""The plan: the customer's own slab, dimensioned so that a tape can check it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import chain
from math import dist

from quotegen.explain.drawing import hatches, svg
from quotegen.explain.drawing.canvas import (
    LABEL_SIZE,
    WALL_PX,
    Canvas,
    MarkedEdge,
    marked_edges,
    moved,
)
from quotegen.explain.drawing.curves import Pixel, along, length
from quotegen.explain.drawing.dimension import Dimension, draw_dimensions
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.drawing.scale import Viewport
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan_garden import (
    cut_ring,
    drain_name,
    drains,
    falls_by_side,
    finish_patch,
    pool_name,
    pool_wall,
    water,
)
from quotegen.explain.pictures.plan_symbols import flight, north, prepared_ground, scale_bar
from quotegen.explain.results import Results
from quotegen.reading.files.shapes import Side
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import Against, Span, SpanOf
from quotegen.takeoff.records import PlacementTakeoff
from quotegen.takeoff.shapes.segments import point_ft

GAP_PX = 26.0
"""From an edge to its dimension line."""

SPARE_PX = 14.0
"""By how much a dimension line is longer than its text, at least."""

MARK_PX = 17.0
"""From an edge to the middle of its letter."""

SAME_WAY = 0.01
"""The sine of the angle up to which two edges run the same way."""

RING_PX = 21.0
MARK_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95)
"""How far along its edge a letter may stand, the best place first."""

SPAN_TEXT_AT = (0.5, 0.25, 0.75, 0.3, 0.7)
ARROW_PX = 32.0
DRAIN_PX = 5.0
DOWNHILL = {Side.BOTTOM: (0, 1), Side.TOP: (0, -1), Side.LEFT: (-1, 0), Side.RIGHT: (1, 0)}
"""The direction of a fall arrow, across and down, by the side that the slab falls toward."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanLook:
    """What a plan shows beside the slab.

    Attributes:
        letters: whether edges have the letters of the table of edges.
        patch: whether the finish stands in a patch alone, so that figures stand free, with water
            in the pool and the slope at each side.
        ring: the number of the sheet that shows the slab cut open; none if empty.
    """

    letters: bool = True
    patch: bool = False
    ring: str = ""


MEASURED = PlanLook()
FRAMED = PlanLook(letters=False, patch=True)


def draw_plan(
    results: Results, viewport: Viewport, ident: str, look: PlanLook = MEASURED
) -> Drawing:
    """Draw the plan of all placements."""
    job, prepared = results.job, results.takeoff.prepared
    flights = (one.flight.treads_ft for one in results.takeoff.placements if one.flight)
    rings = (*(prepared.outline_ft if prepared else ()), *chain.from_iterable(flights))
    beside = (point for ring in rings for point in ring)
    canvas = Canvas.fitted(results, viewport, ident, beside)
    title = results.words("plan_title", title=job.title, site=job.site.address)
    return canvas.drawing(_framed(canvas, look) if look.patch else _parts(canvas, look), title)


def _framed(canvas: Canvas, look: PlanLook) -> Iterator[str]:
    """The plan to be looked at: what comes first keeps its place."""
    pairs = tuple(zip(canvas.job.placements, canvas.takeoff.placements, strict=True))
    marked = marked_edges(canvas.takeoff)
    yield svg.element("defs", canvas.wall_hatch())
    for spec, measured in pairs:
        yield canvas.outline(measured)
        yield from pool_wall(measured, canvas)
        yield from drains(measured, canvas)
        yield from _drains(spec, canvas)
        yield from flight(measured, canvas)
    yield from north(canvas)
    yield from prepared_ground(canvas)
    for one in marked:
        yield canvas.house_wall(one)
    spans = [span for _, measured in pairs for span in _span_dimensions(measured, canvas)]
    yield draw_dimensions((*spans, *_each_once(marked, canvas, look)))
    for spec, _ in pairs:
        yield from _drain_names(spec, canvas)
    yield from scale_bar(canvas)
    if look.ring:
        yield _of_the_quote(cut_ring(marked, canvas, look.ring))
    for one in marked:
        yield canvas.house_label(one)
    for spec, measured in pairs:
        yield from _name_and_area(spec, measured, canvas)
    for spec, measured in pairs:
        yield from falls_by_side(spec, measured, canvas)
        yield from pool_name(measured, canvas)
        yield from drain_name(measured, canvas)
    for spec, measured in pairs:
        yield _of_the_quote(finish_patch(spec, measured, canvas))
    for _, measured in pairs:
        yield water(measured, canvas)


def _of_the_quote(drawn: str) -> str:
    """What belongs to the quoted finish, and is hidden where another is looked at."""
    return svg.element("g", drawn, data_quoted="") if drawn else ""


def _each_once(
    marked: tuple[MarkedEdge, ...], canvas: Canvas, look: PlanLook
) -> Iterator[Dimension]:
    """Dimension the edges; of two that run side by side and are as long, one is enough."""
    said: list[MarkedEdge] = []
    for one in marked:
        if any(_is_the_same(one, other) for other in said):
            continue
        dimension = _edge_dimension(one, canvas, look)
        if dimension:
            said.append(one)
            yield dimension


def _is_the_same(one: MarkedEdge, other: MarkedEdge) -> bool:
    """Whether two edges of a slab are as long as each other and run the same way."""
    if (one.placement, one.edge.length_ft) != (other.placement, other.edge.length_ft):
        return False
    (ax, ay), (bx, by) = one.edge.points_ft[0], one.edge.points_ft[-1]
    (cx, cy), (dx, dy) = other.edge.points_ft[0], other.edge.points_ft[-1]
    across = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    return abs(across) < SAME_WAY * dist((ax, ay), (bx, by)) * dist((cx, cy), (dx, dy))


def _parts(canvas: Canvas, look: PlanLook) -> Iterator[str]:
    """Draw the plan piece by piece: what comes first keeps its place."""
    pairs = tuple(zip(canvas.job.placements, canvas.takeoff.placements, strict=True))
    marked = marked_edges(canvas.takeoff)
    yield svg.element("defs", "".join(_hatches(canvas)))
    for spec, measured in pairs:
        yield _surface(spec, measured, canvas)
        yield canvas.outline(measured)
    yield from north(canvas)
    yield from prepared_ground(canvas)
    for one in marked:
        yield canvas.house_wall(one)
    for spec, _ in pairs:
        yield from _drains(spec, canvas)
    for _, measured in pairs:
        yield from flight(measured, canvas)
    spans = [span for _, measured in pairs for span in _span_dimensions(measured, canvas)]
    edges = [(one, _edge_dimension(one, canvas, look)) for one in marked]
    yield draw_dimensions((*spans, *(dimension for _, dimension in edges if dimension)))
    for spec, _ in pairs:
        yield from _drain_names(spec, canvas)
    yield from scale_bar(canvas)
    for one in marked:
        yield canvas.house_label(one)
    for one, dimension in edges:
        yield _edge_mark(one, canvas) if look.letters and not dimension else ""
    for spec, measured in pairs:
        yield from _name_and_area(spec, measured, canvas)
    for spec, measured in pairs:
        yield from _fall(spec, measured, canvas)


def _hatches(canvas: Canvas) -> Iterator[str]:
    job = canvas.job
    yield canvas.wall_hatch()
    for placement in job.placements:
        kind = job.finish_of(placement, job.finish)[1].kind
        yield hatches.surface(kind, f"{canvas.ident}-{placement.id}")


def _surface(spec: PlacementSpec, measured: PlacementTakeoff, canvas: Canvas) -> str:
    rings = [canvas.scale.ring(ring) for ring in measured.rings_ft]
    fill = f"url(#{canvas.ident}-{spec.id})"
    return svg.element("path", d=svg.rings_path(rings), fill=fill, fill_rule="evenodd")


def _edge_dimension(marked: MarkedEdge, canvas: Canvas, look: PlanLook) -> Dimension | None:
    """Dimension a straight outer edge beside it; nothing where it would cover something."""
    edge = marked.edge
    if edge.is_curved or edge.inner:
        return None
    gap = GAP_PX + (WALL_PX if edge.against is Against.HOUSE else 0)
    away = canvas.away(marked)
    ends = (canvas.scale.px(edge.points_ft[0]), canvas.scale.px(edge.points_ft[-1]))
    words = canvas.words.feet(edge.length_ft)
    words = f"{marked.mark}  {words}" if look.letters else words
    start, end = moved(ends[0], away, gap), moved(ends[1], away, gap)
    wanted = Dimension(start=start, end=end, words=words, measured=ends, size=LABEL_SIZE)
    clear = canvas.space.is_free_line(start, end) and not _on_slab(canvas, start, end)
    return _placed(wanted, canvas) if clear else None


def _span_dimensions(measured: PlacementTakeoff, canvas: Canvas) -> Iterator[Dimension]:
    """Dimension the spans of a placement that have room for their text."""
    for span in measured.spans:
        wanted = _of_span(span, measured, canvas)
        tried = _tried(wanted, span) if wanted else ()
        placed = next(filter(None, (_placed(one, canvas) for one in tried)), None)
        if placed:
            yield placed


def _tried(wanted: Dimension, span: Span) -> Iterator[Dimension]:
    """A span with its text where it may stand, the best first: lines cross at a pool's middle."""
    upright = span.start_ft[0] == span.end_ft[0]
    shares = SPAN_TEXT_AT if upright or span.of is not SpanOf.POOL else (0.3, 0.7)
    yield from (replace(wanted, text_at=share) for share in shares)
    if upright:
        yield from (replace(wanted, text_at=share, level=True) for share in shares)


def _of_span(span: Span, measured: PlacementTakeoff, canvas: Canvas) -> Dimension | None:
    start, end = canvas.scale.px(span.start_ft), canvas.scale.px(span.end_ft)
    words = canvas.words.feet(span.length_ft)
    upright = abs(start[0] - end[0]) < 1
    if span.of is SpanOf.OVERALL:
        if not upright or not _needs_depth(measured, span, canvas):
            return None
        beside = GAP_PX + 6
        return Dimension(
            start=(start[0] - beside, start[1]),
            end=(end[0] - beside, end[1]),
            words=words,
            measured=(start, end),
            size=LABEL_SIZE,
        )
    return Dimension(start=start, end=end, words=words, size=LABEL_SIZE)


def _needs_depth(measured: PlacementTakeoff, span: Span, canvas: Canvas) -> bool:
    """Whether no straight side tells the overall depth of a curved slab."""
    outer = [edge for edge in measured.edges if not edge.inner]
    straight_ft = {edge.length_ft for edge in outer if not edge.is_curved}
    alone = len(canvas.takeoff.placements) == 1
    return alone and any(e.is_curved for e in outer) and span.length_ft not in straight_ft


def _placed(wanted: Dimension, canvas: Canvas) -> Dimension | None:
    """Take the room of a dimension; nothing where its text is too long or covers something."""
    font = canvas.words.font
    boxes = tuple(wanted.lettering_boxes(font))
    wide = wanted.size if wanted.level else font.width(wanted.words, wanted.size)
    long = wide + SPARE_PX
    if dist(wanted.start, wanted.end) < long or not all(map(canvas.space.is_free, boxes)):
        return None
    for box in boxes:
        canvas.space.take(box)
    for start, end in ((wanted.start, wanted.end), *wanted.projections()):
        canvas.space.take_line(start, end)
    return wanted


def _on_slab(canvas: Canvas, start: Pixel, end: Pixel) -> bool:
    """Whether a line would cross a slab: by its ends and its middle."""
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    return any(canvas.covered(at, canvas.takeoff.placements) for at in (start, end, middle))


def _edge_mark(marked: MarkedEdge, canvas: Canvas) -> str:
    """Put an edge's letter beside it, or where there is room, with a thin line to its edge."""
    others = [p for p in canvas.takeoff.placements if p.id != marked.placement]
    for spot in _beside(marked, canvas):
        box = Box.around(spot, RING_PX, RING_PX)
        if canvas.space.is_free(box) and not canvas.covered(spot, others):
            canvas.space.take(box)
            return svg.mark(spot, marked.mark)
    return _with_leader(marked, canvas)


def _beside(marked: MarkedEdge, canvas: Canvas) -> Iterator[Pixel]:
    """Places beside an edge, the best first: outside it, then inside, then farther off."""
    points = [canvas.scale.px(point) for point in marked.edge.points_ft]
    away = canvas.away(marked)
    wall = WALL_PX if marked.edge.against is Against.HOUSE else 0
    for distance in (MARK_PX + wall, -MARK_PX, MARK_PX + 12 + wall, -MARK_PX - 12):
        for share in MARK_SHARES:
            yield moved(along(points, share), away, distance)


def _with_leader(marked: MarkedEdge, canvas: Canvas) -> str:
    middle = along([canvas.scale.px(point) for point in marked.edge.points_ft], 0.5)
    near = moved(middle, canvas.away(marked), MARK_PX)
    found = canvas.space.find(near, RING_PX, RING_PX, canvas.off_slab)
    if found is None:
        return svg.mark(near, marked.mark)
    leader = middle, found.middle
    rim = along(leader, 1 - svg.MARK_PX / max(length(leader), svg.MARK_PX))
    return svg.line(middle, rim) + svg.mark(found.middle, marked.mark)


def _name_and_area(
    spec: PlacementSpec, measured: PlacementTakeoff, canvas: Canvas
) -> Iterator[str]:
    area, font = canvas.words.area(measured), canvas.words.font
    wide = max(font.width(spec.name, 14, face="bold"), font.width(area, 13)) + 6
    near = canvas.scale.px(measured.label_ft)
    box = _find_on(measured, near, (wide, 36), canvas)
    box = box or canvas.space.find(near, wide, 36, canvas.off_slab)
    box = box or Box.around(near, wide, 36)
    yield svg.text((box.middle[0], box.top + 14), spec.name, size=14, face="bold", halo=True)
    yield svg.text((box.middle[0], box.top + 31), area, size=13, halo=True)


def _drains(spec: PlacementSpec, canvas: Canvas) -> Iterator[str]:
    """Draw each drain as a double line."""
    for drain in spec.typed.drains:
        line = (canvas.scale.px(point_ft(drain.from_)), canvas.scale.px(point_ft(drain.to)))
        for width, ink in ((DRAIN_PX, svg.INK), (DRAIN_PX - 2 * svg.THIN, svg.PAPER)):
            yield svg.polyline(line, width=width, ink=ink)
        canvas.space.take_line(*line)


def _drain_names(spec: PlacementSpec, canvas: Canvas) -> Iterator[str]:
    for drain in spec.typed.drains:
        line = (canvas.scale.px(point_ft(drain.from_)), canvas.scale.px(point_ft(drain.to)))
        yield canvas.label(moved(along(line, 0.5), (0, -1), 12), canvas.words("plan_drain"))


def _fall(spec: PlacementSpec, measured: PlacementTakeoff, canvas: Canvas) -> Iterator[str]:
    """Draw an arrow in the direction that water runs, and its slope; nothing without room."""
    if spec.typed.fall is None or len(spec.typed.falls_toward) != 1:
        return
    across, down = DOWNHILL[spec.typed.falls_toward[0]]
    words = canvas.words.slope(spec.typed.fall)
    text_wide = canvas.words.font.width(words, LABEL_SIZE)
    size = (text_wide + 24, ARROW_PX + 6) if down else (max(text_wide, ARROW_PX) + 8, 30)
    box = _find_on(measured, canvas.scale.px(measured.label_ft), size, canvas)
    if box is None:
        return
    if down:
        x, ends = box.left + 8, (box.top + 3, box.bottom - 3)
        start, end = ends if down > 0 else ends[::-1]
        yield svg.arrow((x, start), (x, end))
        at = (x + 9, box.middle[1] + 4)
        yield svg.text(at, words, size=LABEL_SIZE, anchor="start", halo=True)
    else:
        y, ends = box.bottom - 7, (box.left + 4, box.right - 4)
        start, end = ends if across > 0 else ends[::-1]
        yield svg.arrow((start, y), (end, y))
        yield svg.text((box.middle[0], y - 7), words, size=LABEL_SIZE, halo=True)


def _find_on(
    measured: PlacementTakeoff, near: Pixel, size: tuple[float, float], canvas: Canvas
) -> Box | None:
    """Find room on a slab for something of a width and height, and take it."""
    return canvas.space.find(near, *size, lambda box: canvas.on(box, measured))
