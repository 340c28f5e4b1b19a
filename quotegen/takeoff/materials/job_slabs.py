"""What every material of the order list starts from: the slabs of the job, and how to list it."""

from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from math import ceil

from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.rate_book import Finish
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.records import Material, PlacementTakeoff, Takeoff
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

NEEDED_PLACES = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSlabs:
    """The slabs of a job, as typed and as measured, with the rules for them."""

    job: JobSpec
    takeoff: Takeoff
    rules: RuleBook

    @property
    def on(self) -> date:
        """The quote date."""
        return self.job.quote_date

    def each(self) -> tuple[tuple[PlacementSpec, PlacementTakeoff], ...]:
        """Return each placement as typed and as measured."""
        return tuple(zip(self.job.placements, self.takeoff.placements, strict=True))

    def finish(self, spec: PlacementSpec) -> Finish:
        """Return the finish of a placement when the job has its chosen finish."""
        return self.job.finish_of(spec, self.job.finish)[1]

    def rule(self, rule_id: str, name: str) -> Step:
        """Return the number of a rule as an input of the working."""
        rule = self.rules.rule(rule_id)
        value = self.rules.number(rule_id, self.on)
        return Step(name=name, value=value, unit=rule.unit, rules=(rule_id,))


def area_step(spec: PlacementSpec, measured: PlacementTakeoff) -> Step:
    """Return the area that a material covers."""
    return given(f"Area of {spec.name}", measured.area_sqft, "sq ft")


def material(
    material_id: str,
    spec: PlacementSpec | None,
    needed: Fraction,
    unit: str,
    *,
    formula: str,
    inputs: tuple[Step, ...],
    rules: tuple[str, ...] = (),
    what: str = "",
) -> Material:
    """List one material, bought in whole units, rounded up."""
    quantity = rounded(needed, NEEDED_PLACES)
    return Material(
        id=material_id,
        placement=spec.id if spec else None,
        what=what,
        needed=quantity,
        unit=unit,
        buy=decimal_of(Fraction(ceil(needed))),
        buy_unit=unit,
        working=Step(
            name=material_id.replace("_", " ").capitalize(),
            formula=formula,
            inputs=inputs,
            value=quantity,
            unit=unit,
            rules=rules,
        ),
    )
