"""Curved edges as measured in the field: offsets from a base line, and ties to two pins."""

from enum import StrEnum

from quotegen.spec.fields import AnyLength, LengthField, Model, YesNoField


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
    the base line unless it is given; a reading on the other side of the base line is below nought.
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
