"""A drawing of the slabs in the making: its scale, what is taken, and what every one shows."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import product
from math import dist

from quotegen.explain.drawing import hatches, svg
from quotegen.explain.drawing.curves import Pixel, along
from quotegen.explain.drawing.free_space import Box, FreeSpace
from quotegen.explain.drawing.scale import PlanScale, Viewport, inside, outward, scale_for
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.reading.records import JobSpec
from quotegen.takeoff.plan_geometry import Against, EdgeRun, Point
from quotegen.takeoff.records import PlacementTakeoff, Takeoff

WALL_PX = 12.0
LABEL_SIZE = 12.0
SMALL_SIZE = 12.0
ROW_PX = 14.0


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Canvas:
    """What one drawing is made on: lines first, then words where they find room.

    Attributes:
        ident: of the drawing, unique on the page.
    """

    job: JobSpec
    takeoff: Takeoff
    words: Words
    scale: PlanScale
    ident: str
    space: FreeSpace

    @classmethod
    def fitted(
        cls, results: Results, viewport: Viewport, ident: str, beside: Iterable[Point] = ()
    ) -> "Canvas":
        """Lay the slabs, and some points beside them, into a viewport."""
        job, takeoff = results.job, results.takeoff
        slabs = [point for p in takeoff.placements for ring in p.outer_ft for point in ring]
        scale = scale_for((*slabs, *beside), viewport, job.units)
        return cls(
            job=job,
            takeoff=takeoff,
            words=results.words,
            scale=scale,
            ident=ident,
            space=FreeSpace(Box(2, 2, scale.width_px - 2, scale.height_px - 2)),
        )

    def drawing(self, parts: Iterable[str], title: str) -> Drawing:
        """Finish the drawing."""
        scale = self.scale
        return svg.drawing(
            (scale.width_px, scale.height_px),
            "".join(parts),
            title=title,
            ident=self.ident,
            family=self.words.font.family,
            scale=scale.name,
        )

    def outline(self, measured: PlacementTakeoff) -> str:
        """Draw the edges of a placement, and mark them as taken."""
        drawn = [self.scale.ring(ring) for ring in measured.rings_ft]
        for ring in drawn:
            self.space.take_ring(ring)
        return svg.element(
            "path",
            d=svg.rings_path(drawn),
            fill="none",
            stroke=svg.INK,
            stroke_width=svg.THICK,
            stroke_linejoin="round",
        )

    def wall_hatch(self) -> str:
        """The hatch of a house wall, for the definitions of the drawing."""
        return hatches.ground(f"{self.ident}-wall")

    def house_wall(self, marked: MarkedEdge) -> str:
        """Draw the wall behind an edge at the house; nothing at another edge."""
        edge = marked.edge
        if edge.against is not Against.HOUSE:
            return ""
        away = self.away(marked)
        start, end = self.scale.px(edge.points_ft[0]), self.scale.px(edge.points_ft[-1])
        band = [start, end, moved(end, away, WALL_PX), moved(start, away, WALL_PX)]
        self.space.take_line(
            moved(start, away, WALL_PX / 2), moved(end, away, WALL_PX / 2), WALL_PX + 2
        )
        return svg.element(
            "path",
            d=svg.rings_path([band]),
            fill=f"url(#{self.ident}-wall)",
            stroke=svg.INK,
            stroke_width=svg.THIN,
        )

    def house_label(self, marked: MarkedEdge) -> str:
        """Name the wall at its middle, behind it and clear of every line."""
        edge = marked.edge
        if edge.against is not Against.HOUSE:
            return ""
        away = self.away(marked)
        words = self.words("plan_house")
        start, end = self.scale.px(edge.points_ft[0]), self.scale.px(edge.points_ft[-1])
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        near = moved(middle, away, WALL_PX + ROW_PX / 2)
        wide = self.words.font.width(words, LABEL_SIZE) + 4

        def at_the_wall(box: Box) -> bool:
            return self.off_slab(box) and dist(box.middle, near) < wide  # not in the pool

        box = self.space.find(near, wide, 14, at_the_wall)
        return svg.text((box.middle[0], box.bottom - 3), words, size=LABEL_SIZE) if box else ""

    def label(self, near: Pixel, text: str, fits: Callable[[Box], bool] = lambda _: True) -> str:
        """Write a few words as near as there is room; none where there is no room at all."""
        box = self.space.find(near, self.words.font.width(text, SMALL_SIZE) + 4, 14, fits)
        if box is None:
            return ""
        return svg.text((box.middle[0], box.bottom - 3), text, size=SMALL_SIZE, halo=True)

    def label_beside(
        self,
        lines: Sequence[Sequence[Pixel]],
        text: str,
        fits: Callable[[Box], bool] = lambda _: True,
    ) -> str:
        """Write a few words right beside one of some lines, in up to three rows."""
        font = self.words.font
        for count, line in product((1, 2, 3), lines):
            rows = font.wrapped(text, font.width(text, SMALL_SIZE) / count + 8, SMALL_SIZE)
            wide = max(font.width(row, SMALL_SIZE) for row in rows) + 4
            box = self.space.find_beside(line, wide, ROW_PX * len(rows), fits)
            if box is not None:
                return "".join(
                    svg.text((box.middle[0], box.top + ROW_PX * row - 3), words,
                             size=SMALL_SIZE, halo=True)
                    for row, words in enumerate(rows, start=1)
                )  # fmt: skip
        return self.label(along(lines[0], 0.5), text)

    def away(self, marked: MarkedEdge) -> Point:
        """The direction from an edge away from its slab, of length 1."""
        rings = self.takeoff.placement(marked.placement).rings_ft
        return outward(marked.edge.points_ft, rings)

    def on(self, box: Box, measured: PlacementTakeoff) -> bool:
        """Whether all of a box lies on one slab."""
        return all(self.covered(at, [measured]) for at in box.probes())

    def on_slab(self, box: Box) -> bool:
        """Whether all of a box lies on a slab."""
        return any(self.on(box, measured) for measured in self.takeoff.placements)

    def off_slab(self, box: Box) -> bool:
        """Whether no part of a box lies on a slab."""
        return not any(self.covered(at, self.takeoff.placements) for at in box.probes())

    def covered(self, pixel: Pixel, placements: Iterable[PlacementTakeoff]) -> bool:
        """Whether a pixel lies on one of these slabs."""
        point = self.scale.ground(pixel)
        return any(inside(point, p.rings_ft) for p in placements)


def moved(at: Pixel, away: Point, distance: float) -> Pixel:
    """Move a pixel in a direction of the ground, whose y runs up."""
    return (at[0] + away[0] * distance, at[1] - away[1] * distance)


def _letters(index: int) -> str:
    first, last = divmod(index, 26)
    return (chr(ord("A") + first - 1) if first else "") + chr(ord("A") + last)
