"""Areas and lengths in the units of a job, rounded as printed, and as steps of the working."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.problem import Source
from quotegen.quantity import FEET_PER_METER, SQFT_PER_M2, Length, Units, rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.plan_geometry import EdgeRun
from quotegen.working import Step, given

SQFT_PLACES, M2_PLACES = 1, 2
FT_PLACES, M_PLACES = 1, 2
_SHAPE_PLACES = 2
_GIVEN_PLACES = 4


def area_sqft(square_feet: float) -> Decimal:
    """Round an area to 0.1 sq ft."""
    return rounded(square_feet, SQFT_PLACES)


def area_m2(square_feet: float) -> Decimal:
    """Turn an area in square feet into square meters, to 0.01."""
    return rounded(square_feet / SQFT_PER_M2, M2_PLACES)


def length_ft(feet: float) -> Decimal:
    """Round a length to 0.1 ft."""
    return rounded(feet, FT_PLACES)


def length_m(feet: float) -> Decimal:
    """Turn a length in feet into meters, to 0.01."""
    return rounded(feet / FEET_PER_METER, M_PLACES)


@dataclass(frozen=True, slots=True, kw_only=True)
class JobUnits:
    """Writes the steps of a working in the units of a job."""

    units: Units

    @property
    def is_metric(self) -> bool:
        return self.units is Units.METRIC

    @property
    def area_unit(self) -> str:
        return "m2" if self.is_metric else "sq ft"

    @property
    def length_unit(self) -> str:
        return "m" if self.is_metric else "ft"

    def shape_area(self, square_feet: float) -> Decimal:
        """Return the area of one shape, which is printed but not priced."""
        return area_m2(square_feet) if self.is_metric else rounded(square_feet, _SHAPE_PLACES)

    def given_length(self, name: str, length: Length, source: Source | None = None) -> Step:
        """Return a length as it was typed."""
        exact = length.meters if self.is_metric else length.feet
        return given(name, rounded(exact, _GIVEN_PLACES), self.length_unit, source)

    def worked_length(self, name: str, feet: float) -> Step:
        """Return a length that geometry worked out from what was typed."""
        value = length_m(feet) if self.is_metric else rounded(feet, _SHAPE_PLACES)
        return Step(name=name, value=value, unit=self.length_unit)

    def angle(self, name: str, degrees: float | Fraction, source: Source | None = None) -> Step:
        """Return an angle in degrees."""
        return given(name, rounded(degrees, _SHAPE_PLACES), "deg", source)

    def side(self, run: EdgeRun) -> Step:
        """Return the length of one run of edge."""
        meters = rounded(Fraction(run.length_ft) / FEET_PER_METER, M_PLACES)
        return Step(
            name=f"Side {run.mark}",
            formula="radius x angle" if run.radius_ft is not None else "along the edge",
            value=meters if self.is_metric else run.length_ft,
            unit=self.length_unit,
        )

    def edge(self, edge: EdgeKind, feet: float, runs: tuple[EdgeRun, ...]) -> Step:
        """Return the length of one kind of edge, with its runs."""
        value = length_m(feet) if self.is_metric else length_ft(feet)
        return Step(
            name=edge.value.capitalize(),
            formula="sum of the sides, rounded once",
            inputs=tuple(self.side(run) for run in runs),
            value=value,
            unit=self.length_unit,
        )
