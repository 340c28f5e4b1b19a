"""What the joint plan hands on: joints, panels and the rules that panels break."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from quotegen.takeoff.plan_geometry import Point, Ring
from quotegen.working import Step


class PanelRule(StrEnum):
    """The rules that a panel is judged by."""

    SPACING = "spacing"
    RATIO = "ratio"
    CORNER = "corner"
    SLIVER = "sliver"
    INSIDE_CORNER = "inside corner"
    WRAP = "wrap"


@dataclass(frozen=True, slots=True, kw_only=True)
class BrokenRule:
    """One rule that a panel breaks.

    Attributes:
        found: feet for spacing and sliver, times for ratio, degrees for the others.
        allowed: the limit of the rule, in the same unit.
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
        number: from one, starting at the lower left of the plan.
        outline_ft: its corners, the first not repeated.
        long_ft, short_ft: sides of the smallest rectangle around it, to 0.01 ft.
        ratio: long over short, to 0.01.
        area_sqft: to 0.1 sq ft.
        broken: the rules that it breaks; none if it passes.
        label_ft: the roomiest place in it.
    """

    number: int
    outline_ft: Ring
    long_ft: Decimal
    short_ft: Decimal
    ratio: Decimal
    area_sqft: Decimal
    broken: tuple[BrokenRule, ...]
    label_ft: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class JointPlan:
    """The joints of one placement.

    Attributes:
        is_owners: whether the owner typed the joints.
        spacing_ft: longest space between joints.
        spacing_rules: ids of the rules that give it; both where they agree.
        saw_depth_in: least depth of a cut, exact.
        joints: contraction joints.
        panels: what they divide the slab into, by number.
        length_ft: of all contraction joints together, to 0.1 ft.
        length_m: the same, to 0.01 m.
        isolation_ft: length of edge that a soft strip separates from what stands there.
        working: how spacing and length were worked out.
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
