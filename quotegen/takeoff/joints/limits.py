"""The rules of the trade for joint panels, as floats for geometry."""

import math
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from quotegen.quantity import Length, decimal_of
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.shapes.faults import Fault, sqft_text
from quotegen.trade import joints
from quotegen.trade.rules import RuleBook

_MARGIN_RAD = math.radians(3)
MOST_PANELS = 3_000
"""So many would take minutes to lay out: feet were typed for inches, or next to no thickness."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What a panel may be.

    Attributes:
        most_ft: longest side.
        least_ft: least width.
        times: how many times the short side the long side may be.
        corner_rad: least angle that a joint may make.
        turn_rad: how far an edge may turn inward at one place without a joint.
        wrap_rad: how far one panel may follow the curve of a cut-out.
        place_ft: the length of edge that counts as one place.
    """

    most_ft: float
    least_ft: float
    times: float
    corner_rad: float
    turn_rad: float
    wrap_rad: float
    place_ft: float

    def stricter(self, share: float = 1) -> "Limits":
        """Return slightly stricter limits to lay out by, since curves are drawn as few sides.

        Args:
            share: of the margin; half of it once a layout is only mended.
        """
        return replace(self, corner_rad=self.corner_rad + share * _MARGIN_RAD)


def limits_of(thickness: Length, rules: RuleBook, on: date) -> Limits:
    """Return the limits for a slab of some thickness on the quote date."""
    spacing_ft, _ = joints.governing_spacing(thickness.inches, rules, on)
    ratio = rules.exact("panel_ratio_max", on)
    narrowest = Length.of_inches(Fraction(rules.range("panel_narrowest", on).least))
    return Limits(
        most_ft=Length(spacing_ft).ft,
        least_ft=narrowest.ft,
        times=ratio.numerator / ratio.denominator,
        corner_rad=math.radians(rules.exact("panel_corner_min", on)),
        turn_rad=math.radians(rules.exact("inside_corner_turn", on)),
        wrap_rad=math.radians(rules.exact("panel_wrap_max", on)),
        place_ft=Length(rules.exact("inside_corner_length", on)).ft,
    )


def too_many_panels(
    spec: PlacementSpec, area_sqft: float, rules: RuleBook, on: date
) -> tuple[Fault, ...]:
    """Return a fault where square panels of the longest side would be more than we lay out."""
    side_ft = limits_of(spec.thickness, rules, on).most_ft
    if area_sqft <= MOST_PANELS * side_ft**2:
        return ()
    inches = f"{decimal_of(spec.thickness.inches):.4g}"
    said = (
        f"`{spec.id}` measures {sqft_text(area_sqft)} and is {inches} in thick; at most"
        f" {MOST_PANELS:,} panels between joints are laid out"
    )
    hint = "check feet and inches of its sides and its thickness, or make several placements of it"
    return (Fault(code="slab-too-large", path=("add",), message=said, hint=hint),)
