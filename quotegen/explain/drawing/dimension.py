"""Dimension lines: a line with oblique ticks, its projection lines, and its text above it."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import atan2, ceil, cos, degrees, hypot, pi, sin

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.font import Font

TEXT_PX = 4.0
RISE = 0.36
"""How far the middle of figures and capitals is above their baseline, in parts of a size."""

TICK_PX = 5.0
CLEAR_PX, BEYOND_PX = 4.0, 5.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """A dimension, to be read from below or from the right.

    Attributes:
        start, end: of the dimension line.
        words: the dimension.
        measured: the two points on the object that thin projection lines come from, if any.
        text_at: how far along the line the text stands.
        size: of the text.
        level: whether the text stands level, right of an upright line that is too short for it.
    """

    start: Pixel
    end: Pixel
    words: str
    measured: tuple[Pixel, ...] = ()
    text_at: float = 0.5
    size: float = 12
    level: bool = False

    def lettering_at(self) -> Pixel:
        """Where the text stands: above its line, as it is read."""
        up = self._reading_angle()
        (x, y), (to_x, to_y) = self.start, self.end
        x, y = x + (to_x - x) * self.text_at, y + (to_y - y) * self.text_at
        if self.level:
            return (x + TEXT_PX, y + self.size * RISE)
        return (x + TEXT_PX * sin(up), y - TEXT_PX * cos(up))

    def lettering_boxes(self, font: Font) -> Iterator[Box]:
        """The room that the text takes, as upright boxes from its beginning to its end."""
        up = self._reading_angle()
        x, y = self.lettering_at()
        if self.level:
            wide = font.width(self.words, self.size)
            middle = (x + wide / 2, y - self.size * RISE)
            yield Box.around(middle, wide + BEYOND_PX, self.size + 2)
            return
        middle = (x + self.size * RISE * sin(up), y - self.size * RISE * cos(up))
        wide = font.width(self.words, self.size) - self.size
        side = (self.size + 2) * (abs(cos(up)) + abs(sin(up)))
        pieces = max(1, ceil(wide / self.size))
        for piece in range(pieces + 1):
            off = wide * (piece / pieces - 0.5)
            yield Box.around((middle[0] + off * cos(up), middle[1] + off * sin(up)), side, side)

    def projections(self) -> Iterator[tuple[Pixel, Pixel]]:
        """The projection lines, from near the object to beyond the dimension line."""
        for foot, tip in zip(self.measured, (self.start, self.end), strict=False):
            yield _toward(foot, tip, CLEAR_PX), _toward(tip, foot, -BEYOND_PX)

    def lines(self) -> str:
        """Draw the dimension line and its projection lines."""
        return "".join(svg.line(*ends) for ends in ((self.start, self.end), *self.projections()))

    def ticks(self) -> str:
        """Draw the strokes that end the dimension line."""
        angle = atan2(self.end[1] - self.start[1], self.end[0] - self.start[0]) - pi / 4
        across, down = TICK_PX * cos(angle), TICK_PX * sin(angle)
        return "".join(
            svg.line((x - across, y - down), (x + across, y + down), width=1.6)
            for x, y in (self.start, self.end)
        )

    def lettering(self) -> str:
        """Write the text."""
        at, size = self.lettering_at(), self.size
        if self.level:
            return svg.text(at, self.words, size=size, anchor="start", halo=True)
        turn = degrees(self._reading_angle())
        return svg.text(at, self.words, size=size, turn=turn, halo=True)

    def _reading_angle(self) -> float:
        angle = atan2(self.end[1] - self.start[1], self.end[0] - self.start[0])
        if angle > pi / 2 - 0.01:
            return angle - pi
        return angle + pi if angle <= -pi / 2 - 0.01 else angle


def draw_dimensions(dimensions: Iterable[Dimension]) -> str:
    """Draw dimensions: every line, then every tick, then every text over them."""
    every = tuple(dimensions)
    return "".join(
        part
        for layer in (Dimension.lines, Dimension.ticks, Dimension.lettering)
        for part in map(layer, every)
    )


def _toward(start: Pixel, end: Pixel, distance: float) -> Pixel:
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1
    return (
        start[0] + (end[0] - start[0]) / length * distance,
        start[1] + (end[1] - start[1]) / length * distance,
    )
