"""Parts of a job file about the ground: deep edges, heights, steps, prepared ground, obstacles."""

from enum import StrEnum
from typing import Literal, TypeAlias

from pydantic import Field

from quotegen.reading.fields.typed_fields import AnyLength, LengthField, Model, PointField, Word
from quotegen.reading.files.shapes import EdgeKind, Shape

Along: TypeAlias = Literal[
    EdgeKind.OUTER, EdgeKind.FORMED, EdgeKind.HOUSE, EdgeKind.POOL, EdgeKind.INNER
]
"""The edges that something can run along."""


class FallsFrom(StrEnum):
    """What water runs away from on all sides."""

    POOL = "pool"
    HOUSE = "house"


class DeepEdge(Model):
    """An edge that is deeper than the slab.

    Attributes:
        along: the edge that it follows.
        width: of the deep part, measured from the edge.
        depth: from the finished top down, so more than the slab is thick.
        taper: how far the underside slopes back up beyond the width; none if left out.
    """

    along: Along
    width: LengthField
    depth: LengthField
    taper: LengthField | None = None


class PouredWith(StrEnum):
    """Whether steps and slab are one piece of concrete."""

    SLAB = "the slab"
    APART = "apart"


class Flight(Model):
    """One flight of steps.

    Attributes:
        risers: the height of each, from the bottom.
        run: how deep each is, from front to back.
        poured: in one pour with the slab, or apart from it with a joint between.
    """

    risers: tuple[LengthField, ...] = Field(min_length=1, max_length=20)
    run: LengthField | None = None
    poured: PouredWith | None = None


class StatedHeight(Model):
    """A height of the finished top that is known, above (or, negative, below) a mark."""

    at: PointField
    height: AnyLength
    of: Word | None = None


class GroundHeight(Model):
    """The height of the ground at a point, over the same mark as the finished top."""

    at: PointField
    height: AnyLength


class PreparedGround(Model):
    """Fill and base that others made: its outline, and how far the deck stays inside it."""

    add: tuple[Shape, ...] = Field(min_length=1)
    take_away: tuple[Shape, ...] = ()
    margin: LengthField


class Obstacle(Model):
    """Something on the plan that nothing passes through: the house, a shed, a tree."""

    what: Word
    shape: Shape
