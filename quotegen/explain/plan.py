"""The plan: the customer's own slab, dimensioned so that a tape can check it."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, dist, radians, sin

from quotegen.explain import hatches, svg
from quotegen.explain.frame import Frame, Room, frame_for, inside, midpoint, outward
from quotegen.explain.svg import Drawing, Pixel
from quotegen.explain.wording import Words
from quotegen.spec.records import JobSpec, PlacementSpec
from quotegen.spec.shapes import Side
from quotegen.takeoff.records import (
    Against,
    EdgeRun,
    PlacementTakeoff,
    Point,
    Span,
    SpanOf,
    Takeoff,
)

DIMENSION_GAP_PX = 26.0
HOUSE_PX = 12.0
LABEL_PX = 12.0
TURNED = {Side.BOTTOM: (0, -1), Side.TOP: (0, 1), Side.LEFT: (-1, 0), Side.RIGHT: (1, 0)}


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


def draw_plan(job: JobSpec, takeoff: Takeoff, words: Words, room: Room, ident: str) -> Drawing:
    """Draw the plan of all placements into a room of paper."""
    frame = frame_for(_extent(job, takeoff), room, job.units)
    artist = _Artist(job=job, takeoff=takeoff, words=words, frame=frame, ident=ident)
    title = words("plan_title", job=job.title, site=job.site.address)
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
    if job.access and job.access.truck_stand:
        along, out = (length.ft for length in job.access.truck_stand)
        yield (along, out)


def _letters(index: int) -> str:
    first, last = divmod(index, 26)
    return (chr(ord("A") + first - 1) if first else "") + chr(ord("A") + last)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Artist:
    """One plan in the making."""

    job: JobSpec
    takeoff: Takeoff
    words: Words
    frame: Frame
    ident: str

    def parts(self) -> Iterator[str]:
        """Yield the plan from the lowest layer up."""
        pairs = tuple(zip(self.job.placements, self.takeoff.placements, strict=True))
        yield svg.element("defs", "".join(self._hatches()))
        for _, measured in pairs:
            yield from self._house(measured)
        for spec, measured in pairs:
            yield from self._surface(spec, measured)
        for marked in marked_edges(self.takeoff):
            yield from self._edge(marked)
        for spec, measured in pairs:
            yield from self._spans(measured)
            yield from self._label(spec, measured)
            yield from self._fall(spec, measured)
        yield from self._truck()
        yield from self._north()
        yield from self._scale_bar()

    def _hatches(self) -> Iterator[str]:
        yield hatches.ground(f"{self.ident}-wall")
        for placement in self.job.placements:
            kind = self.job.finish_of(placement, self.job.finish)[1].kind
            yield hatches.surface(kind, f"{self.ident}-{placement.id}")

    def _house(self, measured: PlacementTakeoff) -> Iterator[str]:
        for edge in measured.edges:
            if edge.against is not Against.HOUSE:
                continue
            away = outward(edge.points_ft, (*measured.outer_ft, *measured.inner_ft))
            start, end = self.frame.px(edge.points_ft[0]), self.frame.px(edge.points_ft[-1])
            band = [start, end, _moved(end, away, HOUSE_PX), _moved(start, away, HOUSE_PX)]
            yield svg.element("path", d=svg.rings_path([band]), fill=f"url(#{self.ident}-wall)",
                              stroke=svg.INK, stroke_width=svg.THIN)

    def _surface(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        rings = [self.frame.ring(ring) for ring in (*measured.outer_ft, *measured.inner_ft)]
        data = svg.rings_path(rings)
        yield svg.element("path", d=data, fill=f"url(#{self.ident}-{spec.id})", fill_rule="evenodd")
        yield svg.element("path", d=data, fill="none", stroke=svg.INK, stroke_width=svg.THICK,
                          stroke_linejoin="round")

    def _edge(self, marked: MarkedEdge) -> Iterator[str]:
        """A straight edge gets its dimension if it has room for it; any other gets its letter."""
        edge = marked.edge
        measured = self.takeoff.placement(marked.placement)
        away = outward(edge.points_ft, (*measured.outer_ft, *measured.inner_ft))
        start, end = self.frame.px(edge.points_ft[0]), self.frame.px(edge.points_ft[-1])
        words = f"{marked.mark}  {self.words.feet(edge.length_ft)}"
        long_enough = self._drawn_px(edge) > svg.text_width(words, LABEL_PX, mono=True) + 12
        beyond = _moved(self.frame.px(midpoint(edge.points_ft)), away, DIMENSION_GAP_PX)
        if not edge.is_curved and not edge.inner and long_enough and not self._on_slab(beyond):
            gap = DIMENSION_GAP_PX + (HOUSE_PX if edge.against is Against.HOUSE else 0)
            yield svg.dimension(_moved(start, away, gap), _moved(end, away, gap), words,
                                size=LABEL_PX, extension=(start, end))
        else:
            at = _moved(self.frame.px(midpoint(edge.points_ft)), away, 17)
            yield svg.mark(at, marked.mark)

    def _drawn_px(self, edge: EdgeRun) -> float:
        start, end = edge.points_ft[0], edge.points_ft[-1]
        return dist(start, end) * self.frame.px_per_ft

    def _on_slab(self, pixel: Pixel) -> bool:
        """Say whether a place on the paper is on any placement."""
        frame = self.frame
        point = (frame.left_ft + (pixel[0] - frame.inset_px[0]) / frame.px_per_ft,
                 frame.top_ft - (pixel[1] - frame.inset_px[1]) / frame.px_per_ft)
        return any(inside(point, (*p.outer_ft, *p.inner_ft)) for p in self.takeoff.placements)

    def _spans(self, measured: PlacementTakeoff) -> Iterator[str]:
        for span in self._worth_drawing(measured):
            start, end = self.frame.px(span.start_ft), self.frame.px(span.end_ft)
            if span.of is SpanOf.OVERALL:
                extension, gap = (start, end), (-DIMENSION_GAP_PX - 6, 0)
                start = (start[0] + gap[0], start[1])
                end = (end[0] + gap[0], end[1])
                yield svg.dimension(start, end, self.words.feet(span.length_ft), size=LABEL_PX,
                                    extension=extension)
            else:
                yield svg.dimension(start, end, self.words.feet(span.length_ft), size=LABEL_PX)

    def _worth_drawing(self, measured: PlacementTakeoff) -> Iterator[Span]:
        """Overall depth where no straight edge says it; the rest where its text has room."""
        straight = {e.length_ft for e in measured.edges if not e.is_curved}
        for span in measured.spans:
            long_px = self._long_px(span)
            text_px = svg.text_width(self.words.feet(span.length_ft), LABEL_PX, mono=True)
            upright = span.start_ft[0] == span.end_ft[0]
            has_curves = any(e.is_curved and not e.inner for e in measured.edges)
            if span.of is SpanOf.OVERALL:
                if upright and has_curves and span.length_ft not in straight and len(
                        self.takeoff.placements) == 1:
                    yield span
            elif long_px > text_px + 14:
                yield span

    def _long_px(self, span: Span) -> float:
        return dist(span.start_ft, span.end_ft) * self.frame.px_per_ft

    def _label(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        x, y = self.frame.px(measured.label_ft)
        room = measured.label_room_ft * self.frame.px_per_ft
        area = self.words.area(measured)
        wide = max(svg.text_width(spec.name, 14), svg.text_width(area, 13))
        if wide / 2 > room * 1.6:  # too narrow for words: name it beside the slab
            away = self.frame.px_per_ft * measured.label_room_ft + 12
            yield svg.text((x + away, y + 4), spec.name, size=13, bold=True, anchor="start", halo=True)
            yield svg.text((x + away, y + 20), area, size=12, anchor="start", halo=True)
        else:
            yield svg.text((x, y - 3), spec.name, size=14, bold=True, halo=True)
            yield svg.text((x, y + 14), area, size=13, halo=True)

    def _fall(self, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[str]:
        if spec.fall is None or spec.falls_toward is None:
            return
        x, y = self.frame.px(measured.label_ft)
        dx, dy = TURNED[spec.falls_toward]
        y += 30 if dy <= 0 else -22
        start, end = (x - dx * 2, y), (x + dx * 34, y - dy * 34)
        if dy > 0:
            start, end = (x, y), (x, y - 30)
        yield svg.arrow(start, end)
        words = self.words.slope(spec.fall)
        yield svg.text((x + 8, (start[1] + end[1]) / 2 + 4), words, size=12, anchor="start", halo=True)

    def _truck(self) -> Iterator[str]:
        access = self.job.access
        if access is None or access.truck_stand is None:
            return
        along, out = (length.ft for length in access.truck_stand)
        x, y = self.frame.px((along, out))
        yield svg.element("rect", x=x - 9, y=y - 20, width=18, height=40, fill="#fff",
                          stroke=svg.INK, stroke_width=svg.THIN, stroke_dasharray="4 2")
        yield svg.text((x, y + 34), self.words("plan_truck"), size=12)

    def _north(self) -> Iterator[str]:
        if self.job.north_deg is None:
            return
        turn = radians(self.job.north_deg.numerator / self.job.north_deg.denominator)
        x, y = self.frame.width_px - 24, 34.0
        tip = (x - 18 * sin(turn), y - 18 * cos(turn))
        foot = (x + 14 * sin(turn), y + 14 * cos(turn))
        yield svg.arrow(foot, tip)
        yield svg.text((tip[0] - 8 * sin(turn), tip[1] - 4 * cos(turn)), self.words("plan_north"),
                       size=12, bold=True)

    def _scale_bar(self) -> Iterator[str]:
        step, count, unit = self.words.scale_bar(self.frame.px_per_ft)
        x, y = self.frame.width_px - 16 - step * count, self.frame.height_px - 14
        for index in range(count):
            fill = svg.INK if index % 2 == 0 else "#fff"
            yield svg.element("rect", x=x + index * step, y=y, width=step, height=4, fill=fill,
                              stroke=svg.INK, stroke_width=svg.THIN)
        for index, label in enumerate(unit):
            yield svg.text((x + index * step * count / 2, y - 4), label, size=12)


def _moved(at: Pixel, away: Point, distance: float) -> Pixel:
    """Move a pixel in a direction of the ground, where up is positive."""
    return (at[0] + away[0] * distance, at[1] - away[1] * distance)
