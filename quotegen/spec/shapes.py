"""Shapes as they are typed: outlines and pieces, added and taken away."""

from enum import StrEnum
from typing import TypeVar

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.spec.fields import AngleField, LengthField, Model, PointField, SizeField, YesNoField

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
    a rise at the middle of its chord, or a point that the arc goes through.
    """

    from_: PointField | None = Field(default=None, alias="from")
    to: PointField | None = None
    radius: LengthField | None = None
    rise: LengthField | None = None
    through: PointField | None = None
    bows: Bow = Bow.OUT
    against_house: YesNoField = False


class Round(Model):
    """A circle or part of one, by radius or diameter."""

    radius: LengthField | None = None
    diameter: LengthField | None = None

    @model_validator(mode="after")
    def _one_of(self) -> "Round":
        return _exactly_one(self, "radius", "diameter")


class Triangle(Model):
    """A triangle by base and height; the peak stands over the middle unless `peak_at` says else."""

    base: LengthField
    height: LengthField
    peak_at: LengthField | None = None


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


KINDS = (
    "outline", "rectangle", "right_triangle", "triangle", "trapezoid", "circle",
    "half_circle", "quarter_circle", "ellipse", "ring",
)  # fmt: skip


class Shape(Model):
    """One shape: exactly one kind, and where it lies on the plan.

    `at` is the lower left corner of a straight-sided piece and the centre of a round one;
    `turn` turns the piece about that point, counter-clockwise.
    """

    outline: tuple[OutlineSide, ...] | None = None
    rectangle: SizeField | None = None
    right_triangle: SizeField | None = None
    triangle: Triangle | None = None
    trapezoid: Trapezoid | None = None
    circle: Round | None = None
    half_circle: Round | None = None
    quarter_circle: Round | None = None
    ellipse: SizeField | None = None
    ring: Ring | None = None
    corner_radius: LengthField | None = None
    at: PointField | None = None
    turn: AngleField | None = None
    against_house: Side | None = None
    is_: CutOut | None = Field(default=None, alias="is")

    @model_validator(mode="after")
    def _one_kind(self) -> "Shape":
        _exactly_one(self, *KINDS)
        if self.corner_radius and not self.rectangle:
            raise PydanticCustomError(
                "corner-radius-place", "`corner_radius` belongs to a rectangle only"
            )
        return self

    @property
    def kind(self) -> str:
        return next(kind for kind in KINDS if getattr(self, kind) is not None)


def _exactly_one(model: M, *names: str) -> M:
    found = [name for name in names if getattr(model, name) is not None]
    if len(found) != 1:
        said = f"found {' and '.join(found)}" if found else "found none"
        raise PydanticCustomError(
            "exactly-one", f"exactly one of {', '.join(names)} belongs here; {said}"
        )
    return model
