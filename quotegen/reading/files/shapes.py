"""Shapes as they are typed: outlines, pieces, and slabs measured by offsets, ties or border."""

from enum import StrEnum
from typing import Any, TypeVar

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.reading.fields.typed_fields import (
    AngleField,
    AnyLength,
    LengthField,
    Model,
    PointField,
    SizeField,
    WholeField,
    YesNoField,
)


class EdgeKind(StrEnum):
    """The edge that a price by the foot follows."""

    OUTER = "outer edge"
    INNER = "inner edge"
    FORMED = "formed edge"
    HOUSE = "house edge"
    GARAGE = "garage edge"
    ISOLATED = "isolated edge"
    POOL = "pool edge"
    STRAIGHT = "straight edge"
    CURVED = "curved edge"
    JOINT = "joint length"


class Beside(StrEnum):
    """What an edge may be against that is neither the house nor a pool; a soft strip parts them."""

    GARAGE = "garage"
    SLAB = "slab"
    CURB = "curb"
    WALL = "wall"


class AreaRule(StrEnum):
    """The rule that makes an area of offsets."""

    TRAPEZOID = "trapezoid"
    SIMPSON = "simpson"


class OddStrip(StrEnum):
    """What becomes of the last strip where Simpson's rule meets an odd number of them."""

    TRAPEZOID = "trapezoid"


class EdgeLine(StrEnum):
    """How measured points are joined."""

    STRAIGHT = "straight"
    SMOOTH = "smooth"


class OffLine(StrEnum):
    """A side of the line from the first pin to the second, seen with that line lying level."""

    TOP = "top"
    BOTTOM = "bottom"


class Offsets(Model):
    """Distances square off a straight base line, at even spacing (`every`) or at places (`along`).

    `far` says where the far edge lies at each place; `near` where the near edge lies, which is on
    the base line unless it is given; a reading on the other side of the base line is below zero.
    The area is that of the named `rule`; `edge` says how the edge is drawn, and is smooth with
    Simpson's rule unless it is given.
    """

    every: LengthField | None = None
    along: tuple[AnyLength, ...] | None = None
    far: tuple[AnyLength, ...]
    near: tuple[AnyLength, ...] | None = None
    rule: AreaRule = AreaRule.TRAPEZOID
    odd_strip: OddStrip | None = None
    edge: EdgeLine | None = None


class TiePoint(Model):
    """A point on the edge by its distances from the two pins.

    `side` where it differs from that of the shape; `corner` where a smooth edge breaks.
    """

    a: LengthField
    b: LengthField
    side: OffLine | None = None
    corner: YesNoField = False


class Ties(Model):
    """Two pins a known distance apart, and two tapes to each point, in order round the edge.

    The first pin lies at `at`, the second along the base line from it (`turn` turns that line).
    """

    apart: LengthField
    side: OffLine | None = None
    points: tuple[TiePoint, ...]
    edge: EdgeLine = EdgeLine.STRAIGHT


M = TypeVar("M", bound=Model)


class Side(StrEnum):
    """A side of a shape on the plan."""

    BOTTOM = "bottom"
    TOP = "top"
    LEFT = "left"
    RIGHT = "right"


class CutOut(StrEnum):
    """What a shape that is taken away is."""

    POOL = "pool"
    OPENING = "opening"


class Bow(StrEnum):
    """Which way an arc bends, seen from the slab."""

    OUT = "out"
    IN = "in"


class OutlineSide(Model):
    """One side of an outline: where it goes to, and how.

    The first item says `from`; each later one `to`. A side is straight unless it has a radius,
    a rise at the middle of its chord, a point that the arc goes through, its length measured
    along the arc, or points that a smooth curve goes through.
    """

    from_: PointField | None = Field(default=None, alias="from")
    to: PointField | None = None
    radius: LengthField | None = None
    rise: LengthField | None = None
    through: PointField | None = None
    arc_length: LengthField | None = None
    smooth_through: tuple[PointField, ...] | None = None
    bows: Bow = Bow.OUT
    against_house: YesNoField = False
    against: Beside | None = None


class Round(Model):
    """A circle or part of one, by radius or diameter."""

    radius: LengthField | None = None
    diameter: LengthField | None = None

    @model_validator(mode="after")
    def _one_of(self) -> "Round":
        return _exactly_one(self, "radius", "diameter")


class Triangle(Model):
    """A triangle by base and height, or by base and the sides that go up from its two ends.

    By height, the peak stands over the middle of the base unless `peak_at` says else.
    """

    base: LengthField
    height: LengthField | None = None
    peak_at: LengthField | None = None
    left: LengthField | None = None
    right: LengthField | None = None

    @model_validator(mode="after")
    def _one_way(self) -> "Triangle":
        by_height = self.height is not None
        sides = (self.left is not None, self.right is not None)
        if any(sides) != all(sides) or by_height == all(sides) or (self.peak_at and not by_height):
            raise PydanticCustomError(
                "triangle-way",
                "a triangle is measured by `base` and `height`, or by `base`, `left` and `right`",
            )
        return self


class Parallelogram(Model):
    """Two equal parallel sides and their distance; the top begins `offset` along the bottom."""

    base: LengthField
    height: LengthField
    offset: LengthField


class Segment(Model):
    """Between an arc and its chord: the chord, and how far the arc stands off its middle."""

    chord: LengthField
    rise: LengthField


class RegularPolygon(Model):
    """So many equal sides: the length of one, or the longest distance from corner to corner."""

    sides: WholeField
    side: LengthField | None = None
    across_corners: LengthField | None = None

    @model_validator(mode="after")
    def _one_of(self) -> "RegularPolygon":
        return _exactly_one(self, "side", "across_corners")


class Trapezoid(Model):
    """Two parallel sides and their distance; the top begins `offset` along the bottom."""

    bottom: LengthField
    top: LengthField
    height: LengthField
    offset: LengthField | None = None


class Ring(Model):
    """Part of a ring, as a drive that turns: outer radius or outer arc length, width, sweep."""

    outer_radius: LengthField | None = None
    outer_arc: LengthField | None = None
    width: LengthField
    sweep: AngleField

    @model_validator(mode="after")
    def _one_of(self) -> "Ring":
        return _exactly_one(self, "outer_radius", "outer_arc")


PIECES = (
    "outline", "rectangle", "right_triangle", "triangle", "trapezoid", "parallelogram",
    "regular_polygon", "circle", "half_circle", "quarter_circle", "segment", "ellipse", "ring",
    "offsets", "ties",
)  # fmt: skip
KINDS = (*PIECES, "border")


class Piece(Model):
    """One figure about its own origin: exactly one kind."""

    outline: tuple[OutlineSide, ...] | None = None
    rectangle: SizeField | None = None
    right_triangle: SizeField | None = None
    triangle: Triangle | None = None
    trapezoid: Trapezoid | None = None
    parallelogram: Parallelogram | None = None
    regular_polygon: RegularPolygon | None = None
    circle: Round | None = None
    half_circle: Round | None = None
    quarter_circle: Round | None = None
    segment: Segment | None = None
    ellipse: SizeField | None = None
    ring: Ring | None = None
    offsets: Offsets | None = None
    ties: Ties | None = None
    corner_radius: LengthField | None = None

    @model_validator(mode="before")
    @classmethod
    def _no_rule_of_thumb(cls, typed: Any) -> Any:
        if isinstance(typed, dict) and "kidney" in typed:
            raise PydanticCustomError(
                "kidney-rough",
                "a kidney by its length and two widths is a rule of thumb, for the first visit"
                " only; a quote is not settled by it: measure the edge by `offsets` or `ties`",
            )
        return typed

    @model_validator(mode="after")
    def _one_kind(self) -> "Piece":
        _exactly_one(self, *self.kinds())
        if self.corner_radius and not self.rectangle:
            raise PydanticCustomError(
                "corner-radius-place", "`corner_radius` belongs to a rectangle only"
            )
        return self

    @classmethod
    def kinds(cls) -> tuple[str, ...]:
        """Return the kinds that this may be."""
        return PIECES

    @property
    def kind(self) -> str:
        return next(kind for kind in self.kinds() if getattr(self, kind) is not None)


class Corners(StrEnum):
    """How the outside corners of a border are made."""

    SQUARE = "square"
    ROUNDED = "rounded"


class Border(Model):
    """A deck of given width round a pool; the pool is left out of it.

    `width` holds for every side that does not have its own; only a rectangular pool has sides.
    A rounded outside corner keeps the width all the way round; between two widths, the lesser.
    """

    pool: Piece
    width: LengthField | None = None
    bottom: LengthField | None = None
    top: LengthField | None = None
    left: LengthField | None = None
    right: LengthField | None = None
    corners: Corners = Corners.SQUARE

    @model_validator(mode="after")
    def _each_side(self) -> "Border":
        own = [side.value for side in Side if getattr(self, side.value) is not None]
        if own and self.pool.rectangle is None:
            raise PydanticCustomError(
                "border-sides",
                f"only a rectangular pool has a {own[0]} side; give one `width` all round",
            )
        if self.width is None and len(own) < len(Side):
            missing = " and ".join(side.value for side in Side if side.value not in own)
            raise PydanticCustomError(
                "border-width", f"the width is missing at: {missing}; or give one `width`"
            )
        return self


class Shape(Piece):
    """One shape, and where it lies on the plan.

    `at` is the lower left corner of a straight-sided piece, the center of a round one, the left
    end of the chord of a segment, the start of a base line, the first pin of ties, and the origin
    of the pool of a border; `turn` turns the shape about that point, counter-clockwise.
    `accuracy` is how near one reading of its tape is to the truth, two times in three.
    """

    border: Border | None = None
    at: PointField | None = None
    turn: AngleField | None = None
    against_house: Side | None = None
    against: dict[Side, Beside] = Field(default_factory=dict)
    is_: CutOut | None = Field(default=None, alias="is")
    accuracy: LengthField | None = None

    @classmethod
    def kinds(cls) -> tuple[str, ...]:
        """Return the kinds that this may be."""
        return KINDS


def _exactly_one(model: M, *names: str) -> M:
    found = [name for name in names if getattr(model, name) is not None]
    if len(found) != 1:
        said = f"found {' and '.join(found)}" if found else "found none"
        raise PydanticCustomError(
            "exactly-one", f"exactly one of {', '.join(names)} belongs here; {said}"
        )
    return model
