"""The plan: the customer's own slab, dimensioned so that a tape can check it."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from quotegen.explain import hatches, svg
from quotegen.explain.curves import Pixel
from quotegen.explain.frame import Room
from quotegen.explain.free_space import Box
from quotegen.explain.paper import (
    HOUSE_PX,
    LABEL_SIZE,
    MarkedEdge,
    Paper,
    marked_edges,
    moved,
    rings_of,
)
from quotegen.explain.plan_symbols import north, prepared_ground, scale_bar
from quotegen.explain.svg import Drawing
from quotegen.explain.wording import Words
from quotegen.spec.records import JobSpec, PlacementSpec
from quotegen.spec.shapes import Side
from quotegen.takeoff.records import Against, PlacementTakeoff, Span, SpanOf, Takeoff

GAP_PX = 26.0
MARK_PX = 17.0
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
        scale = tuple(scale_bar(paper))  # takes its place first, and is drawn over all else
        yield from prepared_ground(paper)
        marked = marked_edges(paper.takeoff)
        for one in marked:
            yield from paper.house(one)
        for _, measured in pairs:
            yield from self._spans(measured)
        undimensioned = []
        for one in marked:
            drawn = self._dimension(one)
            undimensioned += [] if drawn else [one]
            yield drawn
        for spec, measured in pairs:
            yield from self._label(spec, measured)
        for one in undimensioned:
            yield self._mark(one)
        for spec, measured in pairs:
            yield from self._fall(spec, measured)
        yield from scale

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

    def _dimension(self, marked: MarkedEdge) -> str:
        """Dimension a straight outer edge beside it, if it has room for its text."""
        edge = marked.edge
        words = f"{marked.mark}  {self.paper.words.feet(edge.length_ft)}"
        if edge.is_curved or edge.inner:
            return ""
        gap = GAP_PX + (HOUSE_PX if edge.against is Against.HOUSE else 0)
        away = self.paper.away(marked)
        ends = (self.paper.frame.px(edge.points_ft[0]), self.paper.frame.px(edge.points_ft[-1]))
        return self._dimension_line(
            moved(ends[0], away, gap), moved(ends[1], away, gap), words, extension=ends
        )

    def _dimension_line(
        self,
        start: Pixel,
        end: Pixel,
        words: str,
        *,
        extension: tuple[Pixel, Pixel] | None = None,
        text_at: float = 0.5,
    ) -> str:
        """Draw a dimension unless its text is too long for it or would cover something."""
        wide = svg.text_width(words, LABEL_SIZE)
        long = dist(start, end)
        lettering = svg.dimension_text_at(start, end, text_at)
        lies_flat = abs(end[0] - start[0]) >= abs(end[1] - start[1])
        box = Box.around(lettering, *((wide, 13) if lies_flat else (13, wide)))
        if (
            long < wide + 8
            or not self.paper.space.is_free(box)
            or (extension and self._on_slab(start, end))
        ):
            return ""
        self.paper.space.take(box)
        self.paper.space.take_line(start, end)
        for foot, tip in zip(extension or (), (start, end), strict=False):
            self.paper.space.take_line(foot, tip)
        return svg.dimension(
            start, end, words, size=LABEL_SIZE, extension=extension, text_at=text_at
        )

    def _mark(self, marked: MarkedEdge) -> str:
        """Put an edge's letter beside it: outside, or inside where another slab lies outside."""
        points = [self.paper.frame.px(point) for point in marked.edge.points_ft]
        away = self.paper.away(marked)
        others = [p for p in self.paper.takeoff.placements if p.id != marked.placement]
        for distance in (MARK_PX, -MARK_PX, MARK_PX + 12, -MARK_PX - 12):
            for share in (0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95):
                at = _along(points, share)
                spot = moved(at, away, distance)
                box = Box.around(spot, 21, 21)
                if self.paper.space.is_free(box) and not self.paper.covered(spot, others):
                    self.paper.space.take(box)
                    return svg.mark(spot, marked.mark)
        near = moved(_along(points, 0.5), away, MARK_PX)
        found = self.paper.space.find(near, 21, 21, lambda _: True) or Box.around(near, 21, 21)
        return svg.mark(
            ((found.left + found.right) / 2, (found.top + found.bottom) / 2), marked.mark
        )

    def _spans(self, measured: PlacementTakeoff) -> Iterator[str]:
        for span in measured.spans:
            start, end = self.paper.frame.px(span.start_ft), self.paper.frame.px(span.end_ft)
            words = self.paper.words.feet(span.length_ft)
            upright = abs(start[0] - end[0]) < 1
            if span.of is SpanOf.OVERALL:
                if upright and self._needs_depth(measured, span):
                    beside = GAP_PX + 6
                    yield self._dimension_line(
                        (start[0] - beside, start[1]),
                        (end[0] - beside, end[1]),
                        words,
                        extension=(start, end),
                    )
            elif span.of is SpanOf.POOL:
                yield self._dimension_line(start, end, words, text_at=0.5 if upright else 0.3)
            else:
                yield self._dimension_line(start, end, words)

    def _needs_depth(self, measured: PlacementTakeoff, span: Span) -> bool:
        """The overall depth is drawn where curves leave no straight side that says it."""
        outer = [edge for edge in measured.edges if not edge.inner]
        said = {edge.length_ft for edge in outer if not edge.is_curved}
        alone = len(self.paper.takeoff.placements) == 1
        return alone and any(e.is_curved for e in outer) and span.length_ft not in said

    def _label(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        area = self.paper.words.area(measured)
        wide = max(svg.text_width(spec.name, 14), svg.text_width(area, 13)) + 6
        near = self.paper.frame.px(measured.label_ft)
        box = self._find_on(near, wide, 36, measured)
        box = box or self.paper.space.find(near, wide, 36, self.paper.off_slab)
        box = box or Box.around(near, wide, 36)
        middle = (box.left + box.right) / 2
        yield svg.text((middle, box.top + 14), spec.name, size=14, face="bold", halo=True)
        yield svg.text((middle, box.top + 31), area, size=13, halo=True)

    def _fall(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        if spec.fall is None or spec.falls_toward is None:
            return
        dx, dy = TURNED[spec.falls_toward]
        words = self.paper.words.slope(spec.fall)
        text_wide = svg.text_width(words, LABEL_SIZE)
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

    def _on_slab(self, *pixels: Pixel) -> bool:
        """Say whether a line would cross any slab: by its ends and its middle."""
        middle = (sum(p[0] for p in pixels) / len(pixels), sum(p[1] for p in pixels) / len(pixels))
        return any(
            self.paper.covered(at, self.paper.takeoff.placements) for at in (*pixels, middle)
        )


def _along(points: list[Pixel], share: float) -> Pixel:
    """Return the point that far along a run."""
    lengths = [dist(a, b) for a, b in pairwise(points)]
    left = share * sum(lengths)
    for (start, end), length in zip(pairwise(points), lengths, strict=True):
        if left <= length and length:
            part = left / length
            return (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)
        left -= length
    return points[-1]
