"""What every material of the order list starts from: the slabs of the job, and how to list it."""

from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.order_parts import MaterialId
from quotegen.reading.files.rate_book import Finish
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.records import Material, PlacementTakeoff, Takeoff
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

NEEDED_PLACES = 2
_HUNDRED = 100
_WASTE, _CURVED_WASTE = "order_waste", "order_waste_curved"


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

    def waste(self, bought: MaterialId, placement_id: str | None) -> Step | None:
        """Return what is ordered of a material beyond its measure, in per cent; None for nothing.

        As the rate book says, or else as is usual: more where sheets are cut to a curve.
        """
        own = self.job.waste.get(bought)
        if own is not None:
            return given("Waste", rounded(own * _HUNDRED, NEEDED_PLACES), "%") if own else None
        curved = any(
            measured.edges_ft[EdgeKind.CURVED]
            for measured in self.takeoff.placements
            if placement_id in {None, measured.id}
        )
        for rule_id in (_CURVED_WASTE, _WASTE) if curved else (_WASTE,):
            usual = self.rules.table(rule_id, self.on).get(bought)
            if usual is not None:
                return Step(name="Waste", value=usual, unit="%", rules=(rule_id,))
        return None


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
    """List one material, bought in whole units, rounded up.

    It is bought as the material of that id; one of no material only tells more of another row, such
    as a weight. What is ordered beyond the quantity is added by the list, with `with_waste`.
    """
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
        bought_as=next((one for one in MaterialId if one == material_id), None),
    )


def with_waste(slabs: JobSlabs, one: Material) -> Material:
    """Add to a material what is ordered of it beyond the quantity that its working gives.

    The list does it for every row; a row that goes by what another one orders does it before.
    """
    waste = slabs.waste(one.bought_as, one.placement) if one.bought_as else None
    if waste is None:
        return one
    return replace(one, waste=waste, buy=decimal_of(Fraction(ceil(wasted(one.needed, waste)))))


def wasted(needed: Decimal | Fraction, waste: Step | None) -> Fraction:
    """Return a quantity with its waste."""
    return Fraction(needed) * (1 + (Fraction(waste.value) / _HUNDRED if waste else 0))
