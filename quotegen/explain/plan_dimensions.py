"""The dimensions of a plan: straight outer edges beside them, and spans across the slab."""

from collections.abc import Iterator
from math import dist

from quotegen.explain import svg
from quotegen.explain.curves import Pixel
from quotegen.explain.dimension import Dimension
from quotegen.explain.paper import HOUSE_PX, LABEL_SIZE, MarkedEdge, Paper, moved
from quotegen.takeoff.records import Against, PlacementTakeoff, Span, SpanOf

GAP_PX = 26.0
SPARE_PX = 10.0


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
    boxes = tuple(wanted.lettering_boxes())
    long = svg.text_width(wanted.words, wanted.size) + SPARE_PX
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
