"""The plan: the customer's own slab, dimensioned so that a tape can check it."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import dist

from quotegen.explain.drawing import hatches, svg
from quotegen.explain.drawing.canvas import (
    HOUSE_PX,
    LABEL_SIZE,
    MarkedEdge,
    Paper,
    marked_edges,
    moved,
    rings_of,
)
from quotegen.explain.drawing.curves import Pixel, along, length
from quotegen.explain.drawing.dimension import Dimension, draw_dimensions
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.drawing.scale import Room
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan_symbols import north, prepared_ground, scale_bar
from quotegen.explain.wording import Words
from quotegen.reading.files.shapes import Side
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.plan_geometry import Against, Span, SpanOf
from quotegen.takeoff.records import PlacementTakeoff, Takeoff

GAP_PX = 26.0
SPARE_PX = 14.0
"""By how much a dimension line is longer than its text, at least."""


def edge_dimension(marked: MarkedEdge, paper: Paper) -> Dimension | None:
    """Dimension a straight outer edge beside it; nothing where it would cover something."""
    edge = marked.edge
    if edge.is_curved or edge.inner:
        return None
    gap = GAP_PX + (HOUSE_PX if edge.against is Against.HOUSE else 0)
    away = paper.away(marked)
    ends = (paper.frame.px(edge.points_ft[0]), paper.frame.px(edge.points_ft[-1]))
    words = f"{marked.mark}  {paper.words.feet(edge.length_ft)}"
    start, end = moved(ends[0], away, gap), moved(ends[1], away, gap)
    wanted = Dimension(start=start, end=end, words=words, measured=ends, size=LABEL_SIZE)
    clear = paper.space.is_free_line(start, end) and not _on_slab(paper, start, end)
    return _placed(wanted, paper) if clear else None


def span_dimensions(measured: PlacementTakeoff, paper: Paper) -> Iterator[Dimension]:
    """Yield the spans of a placement that have room for their text."""
    for span in measured.spans:
        wanted = _of_span(span, measured, paper)
        placed = _placed(wanted, paper) if wanted else None
        if placed:
            yield placed


def _of_span(span: Span, measured: PlacementTakeoff, paper: Paper) -> Dimension | None:
    start, end = paper.frame.px(span.start_ft), paper.frame.px(span.end_ft)
    words = paper.words.feet(span.length_ft)
    upright = abs(start[0] - end[0]) < 1
    if span.of is SpanOf.OVERALL:
        if not upright or not _needs_depth(measured, span, paper):
            return None
        beside = GAP_PX + 6
        return Dimension(
            start=(start[0] - beside, start[1]),
            end=(end[0] - beside, end[1]),
            words=words,
            measured=(start, end),
            size=LABEL_SIZE,
        )
    text_at = 0.3 if span.of is SpanOf.POOL and not upright else 0.5
    return Dimension(start=start, end=end, words=words, text_at=text_at, size=LABEL_SIZE)


def _needs_depth(measured: PlacementTakeoff, span: Span, paper: Paper) -> bool:
    """The overall depth is drawn where curves leave no straight side that says it."""
    outer = [edge for edge in measured.edges if not edge.inner]
    said = {edge.length_ft for edge in outer if not edge.is_curved}
    alone = len(paper.takeoff.placements) == 1
    return alone and any(e.is_curved for e in outer) and span.length_ft not in said


def _placed(wanted: Dimension, paper: Paper) -> Dimension | None:
    """Take the room of a dimension, unless its text is too long for it or covers something."""
    font = paper.words.font
    boxes = tuple(wanted.lettering_boxes(font))
    long = font.width(wanted.words, wanted.size) + SPARE_PX
    if dist(wanted.start, wanted.end) < long or not all(map(paper.space.is_free, boxes)):
        return None
    for box in boxes:
        paper.space.take(box)
    for start, end in ((wanted.start, wanted.end), *wanted.projections()):
        paper.space.take_line(start, end)
    return wanted


def _on_slab(paper: Paper, start: Pixel, end: Pixel) -> bool:
    """Say whether a line would cross any slab: by its ends and its middle."""
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    return any(paper.covered(at, paper.takeoff.placements) for at in (start, end, middle))


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


ARROW_PX = 32.0
TURNED = {Side.BOTTOM: (0, 1), Side.TOP: (0, -1), Side.LEFT: (-1, 0), Side.RIGHT: (1, 0)}


def draw_plan(job: JobSpec, takeoff: Takeoff, words: Words, room: Room, ident: str) -> Drawing:
    """Draw the plan of all placements into a room of paper."""
    prepared = takeoff.prepared.outline_ft if takeoff.prepared else ()
    around = (point for ring in prepared for point in ring)
    paper = Paper.sized(job, takeoff, words, room, ident, around)
    title = words("plan_title", title=job.title, site=job.site.address)
    return paper.drawing(_Artist(paper=paper).parts(), title)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Artist:
    """One plan in the making."""

    paper: Paper

    def parts(self) -> Iterator[str]:
        """Yield the plan piece by piece."""
        paper = self.paper
        pairs = tuple(zip(paper.job.placements, paper.takeoff.placements, strict=True))
        yield svg.element("defs", "".join(self._hatches()))
        for spec, measured in pairs:
            yield self._surface(spec, measured)
            yield paper.outline(measured)
        yield from north(paper)
        yield from prepared_ground(paper)
        marked = marked_edges(paper.takeoff)
        for one in marked:
            yield paper.house(one)
        dimensions: list[Dimension] = []
        for _, measured in pairs:
            dimensions += span_dimensions(measured, paper)
        undimensioned = []
        for one in marked:
            dimension = edge_dimension(one, paper)
            dimensions += [dimension] if dimension else []
            undimensioned += [] if dimension else [one]
        yield draw_dimensions(dimensions)
        yield from scale_bar(paper)
        for one in marked:
            yield paper.house_name(one)
        for one in undimensioned:
            yield edge_mark(one, paper)
        for spec, measured in pairs:
            yield from self._label(spec, measured)
        for spec, measured in pairs:
            yield from self._fall(spec, measured)

    def _hatches(self) -> Iterator[str]:
        job, ident = self.paper.job, self.paper.ident
        yield self.paper.wall()
        for placement in job.placements:
            kind = job.finish_of(placement, job.finish)[1].kind
            yield hatches.surface(kind, f"{ident}-{placement.id}")

    def _surface(self, spec: PlacementSpec, measured: PlacementTakeoff) -> str:
        rings = [self.paper.frame.ring(ring) for ring in rings_of(measured)]
        fill = f"url(#{self.paper.ident}-{spec.id})"
        return svg.element("path", d=svg.rings_path(rings), fill=fill, fill_rule="evenodd")

    def _label(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        area, font = self.paper.words.area(measured), self.paper.words.font
        wide = max(font.width(spec.name, 14, face="bold"), font.width(area, 13)) + 6
        near = self.paper.frame.px(measured.label_ft)
        box = self._find_on(near, wide, 36, measured)
        box = box or self.paper.space.find(near, wide, 36, self.paper.off_slab)
        box = box or Box.around(near, wide, 36)
        yield svg.text((box.middle[0], box.top + 14), spec.name, size=14, face="bold", halo=True)
        yield svg.text((box.middle[0], box.top + 31), area, size=13, halo=True)

    def _fall(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        if spec.fall is None or spec.falls_toward is None:
            return
        dx, dy = TURNED[spec.falls_toward]
        words = self.paper.words.slope(spec.fall)
        text_wide = self.paper.words.font.width(words, LABEL_SIZE)
        wide, high = (text_wide + 24, ARROW_PX + 6) if dy else (max(text_wide, ARROW_PX) + 8, 30)
        near = self.paper.frame.px(measured.label_ft)
        box = self._find_on(near, wide, high, measured)
        if box is None:
            return
        if dy:
            x, top, bottom = box.left + 8, box.top + 3, box.bottom - 3
            yield svg.arrow((x, bottom), (x, top)) if dy < 0 else svg.arrow((x, top), (x, bottom))
            yield svg.text(
                (x + 9, (top + bottom) / 2 + 4), words, size=LABEL_SIZE, anchor="start", halo=True
            )
        else:
            y, left, right = box.bottom - 7, box.left + 4, box.right - 4
            yield svg.arrow((left, y), (right, y)) if dx > 0 else svg.arrow((right, y), (left, y))
            yield svg.text(((left + right) / 2, y - 7), words, size=LABEL_SIZE, halo=True)

    def _find_on(
        self, near: Pixel, wide: float, high: float, measured: PlacementTakeoff
    ) -> Box | None:
        """Find room on a slab."""
        paper = self.paper
        return paper.space.find(near, wide, high, lambda box: paper.on(box, measured))
