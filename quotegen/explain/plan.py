"""The plan: the customer's own slab, dimensioned so that a tape can check it."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from quotegen.explain import hatches, svg
from quotegen.explain.frame import Frame, Room, frame_for, inside, outward
from quotegen.explain.free_space import Box, FreeSpace
from quotegen.explain.plan_joints import joint_lines, panel_sizes
from quotegen.explain.plan_symbols import site_extent, symbols
from quotegen.explain.svg import Drawing, Pixel
from quotegen.explain.wording import Words
from quotegen.spec.records import JobSpec, PlacementSpec
from quotegen.spec.shapes import Side
from quotegen.takeoff.records import (
    Against,
    EdgeRun,
    PlacementTakeoff,
    Point,
    Ring,
    Span,
    SpanOf,
    Takeoff,
)

GAP_PX = 26.0
HOUSE_PX = 12.0
MARK_PX = 17.0
LABEL_SIZE = 12.0
ARROW_PX = 32.0
TURNED = {Side.BOTTOM: (0, 1), Side.TOP: (0, -1), Side.LEFT: (-1, 0), Side.RIGHT: (1, 0)}


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedEdge:
    """An edge and its letter, unique on the plan."""

    mark: str
    placement: str
    edge: EdgeRun


def marked_edges(takeoff: Takeoff) -> tuple[MarkedEdge, ...]:
    """Letter every edge of the job: A to Z, then AA, AB and on."""
    edges = [(p.id, edge) for p in takeoff.placements for edge in p.edges]
    return tuple(
        MarkedEdge(mark=_letters(index), placement=placement, edge=edge)
        for index, (placement, edge) in enumerate(edges)
    )


def draw_plan(
    job: JobSpec,
    takeoff: Takeoff,
    words: Words,
    room: Room,
    ident: str,
    *,
    with_sizes: bool = True,
) -> Drawing:
    """Draw the plan of all placements into a room of paper, panel sizes and all unless small."""
    frame = frame_for(_extent(job, takeoff), room, job.units)
    paper = Box(2, 2, frame.width_px - 2, frame.height_px - 2)
    artist = _Artist(
        job=job,
        takeoff=takeoff,
        words=words,
        frame=frame,
        ident=ident,
        space=FreeSpace(paper),
        with_sizes=with_sizes,
    )
    title = words("plan_title", title=job.title, site=job.site.address)
    content = "".join(artist.parts())
    return Drawing(
        svg=svg.document(frame.width_px, frame.height_px, content, title=title, ident=ident),
        title=title,
        scale=frame.scale,
    )


def _extent(job: JobSpec, takeoff: Takeoff) -> Iterator[Point]:
    for placement in takeoff.placements:
        for ring in placement.outer_ft:
            yield from ring
    yield from site_extent(job, takeoff)


def _letters(index: int) -> str:
    first, last = divmod(index, 26)
    return (chr(ord("A") + first - 1) if first else "") + chr(ord("A") + last)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Artist:
    """One plan in the making: lines first, then words where there is room."""

    job: JobSpec
    takeoff: Takeoff
    words: Words
    frame: Frame
    ident: str
    space: FreeSpace
    with_sizes: bool

    def parts(self) -> Iterator[str]:
        """Yield the plan piece by piece."""
        pairs = tuple(zip(self.job.placements, self.takeoff.placements, strict=True))
        yield svg.element("defs", "".join(self._hatches()))
        for spec, measured in pairs:
            yield from self._surface(spec, measured)
        yield from symbols(self.job, self.takeoff, self.words, self.frame, self.space)
        yield from self._joint_lines()
        marked = marked_edges(self.takeoff)
        for one in marked:
            yield from self._house(one)
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
        yield from self._panel_sizes()

    def _joint_lines(self) -> Iterator[str]:
        for measured in self.takeoff.placements:
            yield from joint_lines(measured.joints, self.frame, self.space)

    def _panel_sizes(self) -> Iterator[str]:
        for measured in self.takeoff.placements if self.with_sizes else ():
            yield from panel_sizes(measured.joints, self.words, self.frame, self.space)

    def _hatches(self) -> Iterator[str]:
        yield hatches.ground(f"{self.ident}-wall")
        for placement in self.job.placements:
            kind = self.job.finish_of(placement, self.job.finish)[1].kind
            yield hatches.surface(kind, f"{self.ident}-{placement.id}")

    def _surface(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        rings = [self.frame.ring(ring) for ring in _rings(measured)]
        data = svg.rings_path(rings)
        yield svg.element("path", d=data, fill=f"url(#{self.ident}-{spec.id})", fill_rule="evenodd")
        yield svg.element(
            "path",
            d=data,
            fill="none",
            stroke=svg.INK,
            stroke_width=svg.THICK,
            stroke_linejoin="round",
        )
        for ring in rings:
            for start, end in zip(ring, (*ring[1:], ring[0]), strict=True):
                self.space.take_line(start, end)

    def _house(self, marked: MarkedEdge) -> Iterator[str]:
        edge = marked.edge
        if edge.against is not Against.HOUSE:
            return
        away = self._away(marked)
        start, end = self.frame.px(edge.points_ft[0]), self.frame.px(edge.points_ft[-1])
        band = [start, end, _moved(end, away, HOUSE_PX), _moved(start, away, HOUSE_PX)]
        yield svg.element(
            "path",
            d=svg.rings_path([band]),
            fill=f"url(#{self.ident}-wall)",
            stroke=svg.INK,
            stroke_width=svg.THIN,
        )
        self.space.take_line(
            _moved(start, away, HOUSE_PX / 2), _moved(end, away, HOUSE_PX / 2), HOUSE_PX + 2
        )
        words = self.words("plan_house")
        last = max(start, end)
        near = _moved((last[0] + 24, last[1]), away, HOUSE_PX / 2)
        box = self.space.find(near, svg.text_width(words, LABEL_SIZE) + 4, 14, self._off_slab)
        if box:
            yield svg.text(((box.left + box.right) / 2, box.bottom - 3), words, size=LABEL_SIZE)

    def _dimension(self, marked: MarkedEdge) -> str:
        """Dimension a straight outer edge beside it, if it has room for its text."""
        edge = marked.edge
        words = f"{marked.mark}  {self.words.feet(edge.length_ft)}"
        if edge.is_curved or edge.inner:
            return ""
        gap = GAP_PX + (HOUSE_PX if edge.against is Against.HOUSE else 0)
        away = self._away(marked)
        ends = (self.frame.px(edge.points_ft[0]), self.frame.px(edge.points_ft[-1]))
        return self._dimension_line(
            _moved(ends[0], away, gap), _moved(ends[1], away, gap), words, extension=ends
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
        wide = svg.text_width(words, LABEL_SIZE, mono=True)
        long = dist(start, end)
        lettering = svg.dimension_text_at(start, end, text_at)
        lies_flat = abs(end[0] - start[0]) >= abs(end[1] - start[1])
        box = Box.around(lettering, *((wide, 13) if lies_flat else (13, wide)))
        if (
            long < wide + 8
            or not self.space.is_free(box)
            or (extension and self._on_slab(start, end))
        ):
            return ""
        self.space.take(box)
        self.space.take_line(start, end)
        for foot, tip in zip(extension or (), (start, end), strict=False):
            self.space.take_line(foot, tip)
        return svg.dimension(
            start, end, words, size=LABEL_SIZE, extension=extension, text_at=text_at
        )

    def _mark(self, marked: MarkedEdge) -> str:
        """Put an edge's letter beside it: outside, or inside where another slab lies outside."""
        points = [self.frame.px(point) for point in marked.edge.points_ft]
        away = self._away(marked)
        others = [p for p in self.takeoff.placements if p.id != marked.placement]
        for distance in (MARK_PX, -MARK_PX, MARK_PX + 12, -MARK_PX - 12):
            for share in (0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95):
                at = _along(points, share)
                spot = _moved(at, away, distance)
                box = Box.around(spot, 21, 21)
                if self.space.is_free(box) and not self._covered(spot, others):
                    self.space.take(box)
                    return svg.mark(spot, marked.mark)
        near = _moved(_along(points, 0.5), away, MARK_PX)
        found = self.space.find(near, 21, 21, lambda _: True) or Box.around(near, 21, 21)
        return svg.mark(
            ((found.left + found.right) / 2, (found.top + found.bottom) / 2), marked.mark
        )

    def _spans(self, measured: PlacementTakeoff) -> Iterator[str]:
        for span in measured.spans:
            start, end = self.frame.px(span.start_ft), self.frame.px(span.end_ft)
            words = self.words.feet(span.length_ft)
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
        alone = len(self.takeoff.placements) == 1
        return alone and any(e.is_curved for e in outer) and span.length_ft not in said

    def _label(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        area = self.words.area(measured)
        wide = max(svg.text_width(spec.name, 14), svg.text_width(area, 13)) + 6
        near = self.frame.px(measured.label_ft)
        box = self._find_on(near, wide, 36, measured)
        box = box or self.space.find(near, wide, 36, self._off_slab)
        box = box or Box.around(near, wide, 36)
        middle = (box.left + box.right) / 2
        yield svg.text((middle, box.top + 14), spec.name, size=14, face="bold", halo=True)
        yield svg.text((middle, box.top + 31), area, size=13, halo=True)

    def _fall(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        if spec.fall is None or spec.falls_toward is None:
            return
        dx, dy = TURNED[spec.falls_toward]
        words = self.words.slope(spec.fall)
        text_wide = svg.text_width(words, LABEL_SIZE)
        wide, high = (text_wide + 24, ARROW_PX + 6) if dy else (max(text_wide, ARROW_PX) + 8, 30)
        near = self.frame.px(measured.label_ft)
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
        """Find room on a slab: between its joints, else over one."""
        for over in (False, True):
            box = self.space.find(
                near, wide, high, lambda box: self._on(box, measured), over_joints=over
            )
            if box:
                return box
        return None

    def _away(self, marked: MarkedEdge) -> Point:
        rings = _rings(self.takeoff.placement(marked.placement))
        return outward(marked.edge.points_ft, rings)

    def _on(self, box: Box, measured: PlacementTakeoff) -> bool:
        return all(self._covered(at, [measured]) for at in box.probes())

    def _off_slab(self, box: Box) -> bool:
        return not any(self._covered(at, self.takeoff.placements) for at in box.probes())

    def _on_slab(self, *pixels: Pixel) -> bool:
        """Say whether a line would cross any slab: by its ends and its middle."""
        middle = (sum(p[0] for p in pixels) / len(pixels), sum(p[1] for p in pixels) / len(pixels))
        return any(self._covered(at, self.takeoff.placements) for at in (*pixels, middle))

    def _covered(
        self, pixel: Pixel, placements: tuple[PlacementTakeoff, ...] | list[PlacementTakeoff]
    ) -> bool:
        point = self.frame.ground(pixel)
        return any(inside(point, _rings(p)) for p in placements)


def _rings(measured: PlacementTakeoff) -> tuple[Ring, ...]:
    return (*measured.outer_ft, *measured.inner_ft)


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


def _moved(at: Pixel, away: Point, distance: float) -> Pixel:
    """Move a pixel in a direction of the ground, where up is positive."""
    return (at[0] + away[0] * distance, at[1] - away[1] * distance)
