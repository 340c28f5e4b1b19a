"""What the joint plan hands on: joints, panels and the rules they break, without geometry."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.working import Step


class PanelRule(StrEnum):
    """The rules that a panel is held against."""

    SPACING = "spacing"
    RATIO = "ratio"
    CORNER = "corner"
    SLIVER = "sliver"
    INSIDE_CORNER = "inside corner"
    WRAP = "wrap"


@dataclass(frozen=True, slots=True, kw_only=True)
class Broken:
    """One rule that a panel breaks.

    Attributes:
        found: feet for spacing and sliver, times for ratio, degrees for the others.
        allowed: the same, as the rule gives it.
    """

    rule: PanelRule
    found: Decimal
    allowed: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """One straight contraction joint."""

    start_ft: Point
    end_ft: Point
    length_ft: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """One panel between joints and edges.

    Attributes:
        number: counted from one, from the lower left of the plan.
        outline_ft: round it, the first corner not repeated.
        long_ft, short_ft: sides of the smallest rectangle that the panel fits in, to 0.01 ft.
        ratio: long over short, to 0.01.
        area_sqft: to 0.1 sq ft.
        broken: the rules that it breaks; none when it passes.
        label_ft: the roomiest place in it.
    """

    number: int
    outline_ft: Ring
    long_ft: Decimal
    short_ft: Decimal
    ratio: Decimal
    area_sqft: Decimal
    broken: tuple[Broken, ...]
    label_ft: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class JointPlan:
    """The joints of one placement.

    Attributes:
        is_owners: whether the job gives the lines.
        spacing_ft: longest space between joints.
        spacing_rules: ids of the rules that give it; both where they say the same.
        saw_depth_in: least depth of a cut, exact.
        joints: contraction joints.
        panels: what they divide the slab into, by number.
        length_ft: of all contraction joints together, to 0.1 ft.
        length_m: the same, to 0.01 m.
        isolation_ft: length of edge that a soft strip keeps apart from house, pool or opening.
        working: how spacing and length came about.
    """

    is_owners: bool
    spacing_ft: Decimal
    spacing_rules: tuple[str, ...]
    saw_depth_in: Fraction
    joints: tuple[Joint, ...]
    panels: tuple[Panel, ...]
    length_ft: Decimal
    length_m: Decimal
    isolation_ft: Decimal
    working: tuple[Step, ...]

    @property
    def exceptions(self) -> tuple[Panel, ...]:
        """The panels that break a rule."""
        return tuple(panel for panel in self.panels if panel.broken)
