"""Sheet 2 as a template gets it: text and drawings."""

from dataclasses import dataclass

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.words.rows import Row


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSheet:
    """Sheet 2: what exactly will be poured.

    Attributes:
        joint_plan: joints and panels drawn; None where the job has no joints.
        reach: how concrete gets there, drawn; None where no truck stand is typed.
        reached: how far each method of access in the rate book reaches.
        small, door: the plan for sheet 1, and for the door sheet.
        wide, narrow: the plan for paper and large screens, and for a phone.
        edges: every lettered edge, with what a tape should read.
        sizes: area, edges and volume of each placement.
        joints: the joint plan of each placement in numbers.
        sections: one for each build-up.
        access: how concrete reaches the slab.
        corners, drops: heights of the finished top; empty where no fall is typed.
        heights_from: what the heights count from.
        ground: a sentence on the prepared ground, if there is any.
        measured: every shape, how it was measured, and its area.
        sure: how sure the areas are, and what that may move the price by.
        steps: steps, each or by the foot of nosing; no part of the area.
    """

    small: Drawing
    door: Drawing
    wide: Drawing
    narrow: Drawing
    joint_plan: Drawing | None
    reach: Drawing | None
    reached: tuple[str, ...]
    edges: tuple["EdgeRow", ...]
    sizes: tuple["SizeRow", ...]
    joints: tuple["JointRow", ...]
    sections: tuple["SectionPair", ...]
    access: str
    water: tuple[str, ...]
    corners: tuple["HeightRow", ...]
    drops: tuple["HeightRow", ...]
    heights_from: str
    ground: str
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
class SectionPair:
    """One section, drawn for paper and for a phone."""

    wide: Drawing
    narrow: Drawing


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
