"""The rules of the trade for joint panels, as floats for geometry."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from quotegen.quantity import Length, decimal_of
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.shapes.faults import Fault, sqft_text
from quotegen.takeoff.slab.slab import Slab
from quotegen.trade import joints
from quotegen.trade.rules import RuleBook

_MARGIN_RAD = math.radians(3)
MOST_PANELS, MOST_IN_A_ROW = 3_000, 500
"""More would take minutes to lay out: feet were typed for inches, or next to no thickness."""


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
    slabs: Iterable[tuple[PlacementSpec, Slab]], rules: RuleBook, on: date
) -> tuple[Fault, ...]:
    """Return a fault at the placement with which there are more panels than we lay out.

    They are counted as the largest that fit: as long as the rules let a slab of its mean width be.
    """
    in_all, in_a_row = 0.0, 0.0
    for spec, slab in slabs:
        limits, perimeter_ft = limits_of(spec.thickness, rules, on), slab.region.length
        mean_ft = max(limits.least_ft, 2 * slab.area_sqft / perimeter_ft)
        wide_ft = min(limits.most_ft, mean_ft)
        long_ft = min(limits.most_ft, limits.times * wide_ft)
        in_all += slab.area_sqft / (wide_ft * long_ft)
        in_a_row += perimeter_ft / 2 / long_ft
        if in_all > MOST_PANELS or in_a_row > MOST_IN_A_ROW:
            inches = f"{decimal_of(spec.thickness.inches):.4g}"
            said = (
                f"`{spec.id}` measures {sqft_text(slab.area_sqft)} and is {inches} in thick; at"
                f" most {MOST_PANELS:,} panels between joints are laid out in a job, and"
                f" {MOST_IN_A_ROW} in a row"
            )
            hint = "check feet and inches of its sides, and its thickness; or make two jobs of it"
            fault = Fault(code="slab-too-large", path=("add",), message=said, hint=hint)
            return (fault.under(*spec.path),)
    return ()
