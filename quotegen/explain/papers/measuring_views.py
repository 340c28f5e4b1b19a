"""The measuring sheet and the crew sheet as a template gets them: text and drawings."""

from dataclasses import dataclass

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.rows import Row


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuringSheet:
    """Edges and heights as a tape should read them, and how each part was measured.

    Attributes:
        plan: with a letter at each edge.
        edges: every lettered edge, with what a tape should read.
        sizes: area, edges and volume of each placement.
        corners, drops: heights of the finished top; empty where no fall is typed.
        heights_from: what the heights count from.
        measured: every shape, how it was measured, and its area.
        sure: how sure the areas are, and what that may move the price by.
        steps: steps, each or by the foot of nosing; no part of the area.
    """

    head: PaperHead
    plan: Drawing
    edges: tuple["EdgeRow", ...]
    sizes: tuple["SizeRow", ...]
    corners: tuple["HeightRow", ...]
    drops: tuple["HeightRow", ...]
    heights_from: str
    measured: tuple["MeasuredRow", ...]
    sure: tuple[str, ...]
    steps: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredRow:
    """A shape: how it was measured, its readings one by one where they are many, its area."""

    name: str
    text: str
    readings: tuple[str, ...]
    amount: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightRow:
    """The height of a corner, or the highest, lowest and drop of an edge."""

    mark: str
    height: str
    lowest: str = ""
    drop: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRow:
    """One edge as a tape would check it; empty where a column does not apply."""

    mark: str
    where: str
    kind: str
    along: str
    chord: str
    rise: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRow:
    """The sizes of one placement, or of all of them."""

    name: str
    area: str
    outer: str
    inner: str
    thickness: str
    volume: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JointRow:
    """The joints of one placement.

    Attributes:
        numbered: the sizes of the panels that stand in the drawing by their number alone.
        exceptions: what panels miss which rule by how much.
    """

    name: str
    panels: str
    largest: str
    length: str
    spacing: str
    rule: str
    depth: str
    numbered: str
    exceptions: tuple[str, ...]

    @property
    def notes(self) -> tuple[str, ...]:
        """Notes on single panels, if any."""
        return (*([self.numbered] if self.numbered else []), *self.exceptions)
