"""The plan: the customer's own slab, dimensioned so that a tape can check it."""

from collections.abc import Iterator
from dataclasses import dataclass

from quotegen.explain import hatches, svg
from quotegen.explain.curves import Pixel
from quotegen.explain.dimension import Dimension, draw_dimensions
from quotegen.explain.frame import Room
from quotegen.explain.free_space import Box
from quotegen.explain.paper import LABEL_SIZE, Paper, marked_edges, rings_of
from quotegen.explain.plan_dimensions import edge_dimension, span_dimensions
from quotegen.explain.plan_marks import edge_mark
from quotegen.explain.plan_symbols import north, prepared_ground, scale_bar
from quotegen.explain.svg import Drawing
from quotegen.explain.wording import Words
from quotegen.spec.records import JobSpec, PlacementSpec
from quotegen.spec.shapes import Side
from quotegen.takeoff.records import PlacementTakeoff, Takeoff

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
        area = self.paper.words.area(measured)
        wide = max(svg.text_width(spec.name, 14), svg.text_width(area, 13)) + 6
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
