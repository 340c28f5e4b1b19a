"""Parts of a job file about the ground: deep edges, heights, steps, prepared ground, obstacles."""

from enum import StrEnum
from typing import Annotated, Literal, Self, TypeAlias

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.reading.fields.typed_fields import (
    AnyLength,
    LengthField,
    Model,
    PointField,
    Word,
    one_or_more,
)
from quotegen.reading.files.shapes import EdgeKind, Shape, Side

Along: TypeAlias = Literal[
    EdgeKind.OUTER, EdgeKind.FORMED, EdgeKind.HOUSE, EdgeKind.GARAGE, EdgeKind.POOL, EdgeKind.INNER
]
"""The edges that something can run along."""


class FallsFrom(StrEnum):
    """What water runs away from on all sides."""

    POOL = "pool"
    HOUSE = "house"


Toward: TypeAlias = Annotated[tuple[Side, ...], one_or_more(Side)]
"""One side, two that meet (a plane that falls both ways), or two opposite (a ridge between)."""

AwayFrom: TypeAlias = Annotated[tuple[FallsFrom, ...], one_or_more(FallsFrom)]
"""The pool, the house, or both: then water meets on a low line between them."""


class Drain(Model):
    """A drain in the slab, straight from one point of the plan to another.

    Attributes:
        by: who supplies it; left out, it is in our price.
    """

    from_: PointField = Field(alias="from")
    to: PointField
    by: Word | None = None


class Between(StrEnum):
    """What stands between a placement and those before it that it meets."""

    FILLER = "filler"
    DOWELS = "dowels"
    NOTHING = "nothing"


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
        width, tread: of the flight, and of each step from front to back; with them the order list
            knows its concrete.
        poured: in one pour with the slab, or apart from it with a joint between.
        at: where the middle of the flight meets the edge of the slab, for the plan.
    """

    risers: tuple[LengthField, ...] = Field(min_length=1, max_length=20)
    width: LengthField | None = None
    tread: LengthField | None = None
    poured: PouredWith | None = None
    at: PointField | None = None

    @model_validator(mode="after")
    def _both_sizes(self) -> Self:
        if (self.width is None) != (self.tread is None):
            said = "the concrete of steps goes by `width` and `tread`; type both, or neither"
            raise PydanticCustomError("steps-size", said)
        if self.at is not None and self.width is None:
            said = "steps are drawn by their sizes; type `width` and `tread` beside `at`"
            raise PydanticCustomError("steps-place", said)
        return self


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
