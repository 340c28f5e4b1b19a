"""What the costs of a job at one finish are worked out from, and how one of them is written."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.money import to_cents
from quotegen.pricing.costs.records import CostItem, CostKind
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.pricing.quoted.visits_needed import NeededVisit, visits_needed
from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.costs import Costs
from quotegen.reading.records import JobSpec, OwnersJob
from quotegen.takeoff.records import Material, Takeoff

HOURS_PLACES = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Basis:
    """One job at one finish, as its costs see it.

    Attributes:
        job: with that finish as its own.
        owners: what the same job costs.
        materials: the order list at that finish; hours do without it.
        without: scope items that are not done, whose materials are not bought.
    """

    job: JobSpec
    owners: OwnersJob
    takeoff: Takeoff
    priced: PricedFinish
    materials: tuple[Material, ...] = ()
    without: frozenset[str] = frozenset()

    @property
    def costs(self) -> Costs | None:
        return self.owners.costs

    @property
    def visits(self) -> tuple[NeededVisit, ...]:
        return visits_needed(self.job, self.priced.id)

    @property
    def days(self) -> int:
        """Days on site."""
        return sum(visit.days for visit in self.visits)

    def crew(self, costs: Costs) -> int:
        """Return how many people come."""
        return next((v.crew for v in self.visits if v.crew is not None), costs.crew)

    def lines_of(self, scope: str | None, placement: str | None = None) -> tuple[Line, ...]:
        """Return the lines that pay for a scope item, on a placement if one is named."""
        return tuple(
            line
            for line in self.priced.lines
            if scope in line.scope and placement in {None, line.placement}
        )


def loaded_wage(costs: Costs) -> Decimal:
    """Return what an hour of one person costs with all that the wage carries, to the cent."""
    return to_cents(costs.wage.amount * decimal_of(1 + costs.burden))


def item(
    kind: CostKind,
    item_id: str,
    quantity: Fraction,
    rate: Decimal,
    *,
    unit: str = "",
    name: str = "",
    placement: str | None = None,
    lines: tuple[Line, ...] = (),
) -> CostItem:
    """Write one cost down: its quantity to two places, its amount to the cent."""
    shown = rounded(quantity, HOURS_PLACES)
    return CostItem(
        kind=kind, id=item_id, name=name, placement=placement, quantity=shown, unit=unit,
        rate=rate, amount=to_cents(shown * rate), lines=tuple(line.id for line in lines),
    )  # fmt: skip


def lump(
    kind: CostKind, item_id: str, amount: Decimal, *, name: str = "", lines: tuple[Line, ...] = ()
) -> CostItem:
    """Write down a sum that no quantity stands behind."""
    return item(kind, item_id, Fraction(1), amount, name=name, lines=lines)
