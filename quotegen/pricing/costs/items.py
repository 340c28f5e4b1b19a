"""Everything that a job costs, item by item, from the same lines and the same order list."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.money import to_cents, total
from quotegen.pricing.costs.records import CostItem, CostKind
from quotegen.pricing.quoted.no_work import TAX
from quotegen.pricing.quoted.rates import shown_rate, us_quantity
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.pricing.quoted.shares import lines_shared
from quotegen.pricing.quoted.visits_needed import NeededVisit, visits_needed
from quotegen.quantity import Unit, decimal_of, rounded
from quotegen.reading.fields.road_fields import Road
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.costs import CLEAN_UP, DRIVE, SET_UP, Costs
from quotegen.reading.files.order_parts import SOLD
from quotegen.reading.files.rate_book import FINISH, ColorHow
from quotegen.reading.records import JobSpec, OwnersJob
from quotegen.takeoff.records import Material

_PLACES = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class CostedJob:
    """One job at one finish, as its costs see it.

    Attributes:
        job: with that finish as its own.
        owners: what the same job costs.
        materials: the order list at that finish; hours need none.
        without: scope items left to others, whose materials are not bought.
    """

    job: JobSpec
    owners: OwnersJob
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
        """Return how many people come where no finish says it differently."""
        return next((v.crew for v in self.visits if v.crew is not None), costs.crew)

    def people_on(self, visit: NeededVisit, costs: Costs) -> int:
        """Return how many people come on a visit."""
        named = costs.travel.people if costs.travel else {}
        return named.get(visit.visit, self.crew(costs))

    def person_days(self, costs: Costs) -> int:
        """Return the days on site of all people together."""
        return sum(visit.days * self.people_on(visit, costs) for visit in self.visits)

    def lines_of(self, scope: str | None, placement: str | None = None) -> tuple[Line, ...]:
        """Return the lines that pay for a scope item, on a placement if one is named."""
        return tuple(
            line
            for line in self.priced.lines
            if scope in line.scope and placement in {None, line.placement}
        )


def loaded_wage(costs: Costs) -> Decimal:
    """Return what an hour of one person costs with its payroll burden, to the cent."""
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
    shown = rounded(quantity, _PLACES)
    return CostItem(
        kind=kind, id=item_id, name=name, placement=placement, quantity=shown, unit=unit,
        rate=rate, amount=to_cents(shown * rate), lines=tuple(line.id for line in lines),
    )  # fmt: skip


def lump(
    kind: CostKind, item_id: str, amount: Decimal, *, name: str = "", lines: tuple[Line, ...] = ()
) -> CostItem:
    """Write down a sum without a quantity behind it."""
    return item(kind, item_id, Fraction(1), amount, name=name, lines=lines)


def items_of(costed: CostedJob) -> Iterator[CostItem]:
    """Yield every cost of a job; shares of the direct cost come after it, tax last."""
    direct = [*_bought(costed), *_bills(costed)]
    costs = costed.costs
    if costs is not None:
        direct += [
            *hours_of(costed, costs), *_materials(costed, costs), *_deliveries(costed, costs),
            *_equipment(costed, costs), *_miles(costed, costs),
        ]  # fmt: skip
    yield from sorted(direct, key=lambda one: tuple(CostKind).index(one.kind))
    if costs is not None:
        yield from _shares(costed, costs, tuple(direct))
    for line in costed.priced.lines:
        if TAX in line.scope:  # it is collected and handed on
            yield lump(CostKind.TAX, TAX, line.amount, name=line.name, lines=(line,))


def hours_of(costed: CostedJob, costs: Costs) -> Iterator[CostItem]:
    """Yield the crew hours of a job at the loaded wage: on site, then on the road.

    They follow from the lines and the days alone, and need no order list.
    """
    yield from _labor(costed, costs)
    yield from _drive(costed, costs)


def _labor(costed: CostedJob, costs: Costs) -> Iterator[CostItem]:
    """Yield the hours of each step at the loaded wage; the fixed part of a rate comes once."""
    wage, seen = loaded_wage(costs), set[str]()
    for line in costed.priced.lines:
        step = costs.hours.get(line.rate_id)
        if step is None:
            continue
        quantity, unit = us_quantity(line.quantity, line.unit)
        hours = Fraction(0) if line.rate_id in seen else step.fixed
        seen.add(line.rate_id)
        if step.work is not None and step.work.unit is unit:
            hours += quantity / step.work.of * step.work.hours
        yield item(
            CostKind.LABOR, line.rate_id, hours, wage, unit="hour", name=line.name,
            placement=line.placement, lines=(line,),
        )  # fmt: skip
    for name, hours in ((SET_UP, costs.set_up), (CLEAN_UP, costs.clean_up)):
        if hours:
            everybodys = hours * costed.person_days(costs)
            yield item(CostKind.LABOR, name, everybodys, wage, unit="hour")


def price_of(costs: Costs, material: Material) -> Decimal | None:
    """Return what one of a material costs, None where the book has no price for it as sold."""
    price = costs.materials.get(material.bought_as) if material.bought_as else None
    return price.price.amount if price and price.price.unit == material.buy_unit else None


def _materials(costed: CostedJob, costs: Costs) -> Iterator[CostItem]:
    """Yield what the order list buys, at delivered prices: the same quantity, with its waste."""
    for material in costed.materials:
        price = price_of(costs, material)
        if material.bought_as is None or price is None:
            continue
        scope = SOLD[material.bought_as].scope
        if scope in costed.without:
            continue
        lines = costed.lines_of(scope, material.placement)
        for bought, payers in _parts_paid(material, lines):
            yield item(
                CostKind.MATERIAL, material.id, bought, price,
                unit=material.buy_unit, placement=material.placement, lines=payers,
            )  # fmt: skip


def _parts_paid(
    material: Material, lines: tuple[Line, ...]
) -> Iterator[tuple[Fraction, tuple[Line, ...]]]:
    """Yield how much of a material the lines pay for, and how much of it none does.

    A book may price the filler by the foot along the house alone; what stands along other edges
    is then no cost of that line.
    """
    bought, needed = Fraction(material.buy), Fraction(material.needed)
    by_foot = [us_quantity(line.quantity, line.unit) for line in lines]
    paid = sum((quantity for quantity, unit in by_foot if unit is Unit.FT), Fraction(0))
    if material.unit == "ft" and paid and paid < needed:
        yield bought * paid / needed, lines
        yield bought * (1 - paid / needed), ()
    else:
        yield bought, lines


def _deliveries(costed: CostedJob, costs: Costs) -> Iterator[CostItem]:
    """Yield the fee of each load, and the charge for one that is short."""
    loads, fees = {m.id: m for m in costed.materials}, costs.deliveries
    short = costed.owners.book.order.short_load
    slab, base = costed.lines_of("slab"), costed.lines_of("base")
    if fees.concrete_load is not None:
        yield item(
            CostKind.DELIVERY, "concrete_loads", Fraction(loads["truck_loads"].buy),
            fees.concrete_load, unit="load", lines=slab,
        )  # fmt: skip
    if fees.color_load is not None and (colored := _colored(costed, loads)):
        yield item(
            CostKind.DELIVERY, "color_loads", Fraction(loads["truck_loads"].buy),
            fees.color_load, unit="load", lines=colored,
        )  # fmt: skip
    charge = short and "short_load" in loads and short.charge_for(Fraction(loads["short_load"].buy))
    if charge:
        pours = Fraction(costed.job.typed.pours)
        yield item(CostKind.DELIVERY, "short_load", pours, charge, lines=slab)
    if fees.stone_load is not None and fees.stone_load_tons and "base" not in costed.without:
        tons = sum((Fraction(m.buy) for m in costed.materials if m.id == "base_tons"), Fraction(0))
        yield item(
            CostKind.DELIVERY, "stone_loads", Fraction(ceil(tons / fees.stone_load_tons)),
            fees.stone_load, unit="load", lines=base,
        )  # fmt: skip


def _colored(costed: CostedJob, bought: Mapping[str, Material]) -> tuple[Line, ...]:
    """Return the lines that pay for color mixed into the concrete; none where it is gray."""
    rates = costed.job.rate_book.rates
    mixed_in = tuple(
        line
        for line in costed.priced.lines
        if line.rate_id in rates and rates[line.rate_id].color is ColorHow.INTEGRAL
    )
    return mixed_in or (costed.lines_of(FINISH) if "pigment" in bought else ())


def _equipment(costed: CostedJob, costs: Costs) -> Iterator[CostItem]:
    days: Counter[str] = Counter()
    for visit in costed.visits:
        days[visit.visit] += visit.days
    finishes = {costed.job.finish_of(p, costed.priced.id)[0] for p in costed.job.placements}
    for machine_id, machine in costs.equipment.items():
        used = not machine.finishes or not finishes.isdisjoint(machine.finishes)
        if used and machine.visit in days and machine.covers not in costed.without:
            yield item(
                CostKind.EQUIPMENT, machine_id, Fraction(days[machine.visit]), machine.day,
                unit="day", name=machine.name, lines=costed.lines_of(machine.covers),
            )  # fmt: skip


def road_to_site(costed: CostedJob, costs: Costs) -> Road:
    """Return how far it is one way: as the job says, or else as the book does."""
    site, usual = costed.job.site, costs.travel
    distance = site.distance or (usual.distance if usual else None)
    time = site.drive_time or (usual.drive_time if usual else None)
    return Road(miles=distance.miles if distance else None, hours=time.hours if time else None)


def _drive(costed: CostedJob, costs: Costs) -> Iterator[CostItem]:
    """Yield everybody's hours on the road, there and back each day."""
    road = road_to_site(costed, costs)
    if costs.travel is not None and road.hours is not None:
        trips = costed.person_days(costs)
        yield item(
            CostKind.TRAVEL, DRIVE, 2 * road.hours * trips, loaded_wage(costs), unit="hour",
            lines=costed.lines_of("travel"),
        )  # fmt: skip


def _miles(costed: CostedJob, costs: Costs) -> Iterator[CostItem]:
    """Yield each vehicle's miles, there and back each day."""
    road = road_to_site(costed, costs)
    if costs.travel is not None and road.miles is not None:
        miles = 2 * road.miles * costs.travel.vehicles * costed.days
        yield item(
            CostKind.TRAVEL, "miles", miles, costs.travel.mile.amount, unit="mile",
            lines=costed.lines_of("travel"),
        )  # fmt: skip


def _bought(costed: CostedJob) -> Iterator[CostItem]:
    """Yield what the `cost` of a rate or finish buys, by the unit of its line."""
    book = costed.owners.book
    access = {method.rate for method in book.access.values()}
    for line in costed.priced.lines:
        yield from _share_cost(costed, line)
        rate = _line_cost(costed, line)
        if rate is None:
            continue
        kind = CostKind.SUPPLIES
        if line.rate_id in book.rates:
            kind = CostKind(book.rates[line.rate_id].cost_for.value)
        kind = CostKind.ACCESS if line.rate_id in access else kind
        shown = shown_rate(rate, costed.job.units)
        yield CostItem(
            kind=kind, id=line.rate_id, name=line.name, placement=line.placement,
            quantity=line.quantity, unit=line.unit.value, rate=shown.amount,
            amount=to_cents(line.quantity * shown.amount), lines=(line.id,),
        )  # fmt: skip


def _share_cost(costed: CostedJob, line: Line) -> Iterator[CostItem]:
    """Yield what a share of lines costs as a share of the same lines, as a bank takes of a card."""
    rate = costed.owners.book.rates.get(line.rate_id)
    if rate is None or rate.cost_share is None:
        return
    shared = lines_shared(costed.job.rate_book, line.rate_id, costed.priced.lines)
    whole, share = total(tuple(one.amount for one in shared)), decimal_of(rate.cost_share)
    yield CostItem(
        kind=CostKind(rate.cost_for.value), id=line.rate_id, name=line.name, placement=None,
        quantity=share * 100, unit="%", rate=whole, amount=to_cents(whole * share),
        lines=(line.id,),
    )  # fmt: skip


def _line_cost(costed: CostedJob, line: Line) -> Rate | None:
    book = costed.owners.book
    if TAX in line.scope:
        return None
    price = book.rates.get(line.rate_id) or book.finishes.get(line.rate_id)
    specs = costed.job.placements
    thickness = next((p.thickness for p in specs if p.id == line.placement), None)
    return price.cost_at(thickness, line.band) if price else None


def _bills(costed: CostedJob) -> Iterator[CostItem]:
    for bill in costed.owners.file.private_costs:
        yield lump(CostKind(bill.kind.value), "bill", bill.amount, name=bill.what)


def _shares(costed: CostedJob, costs: Costs, direct: tuple[CostItem, ...]) -> Iterator[CostItem]:
    """Yield the warranty reserve and the overhead; shares are of the direct cost."""
    sum_of = total(tuple(one.amount for one in direct))
    for kind, share in (
        (CostKind.WARRANTY, costs.warranty), (CostKind.OVERHEAD, costs.overhead.share)
    ):  # fmt: skip
        if share:
            amount = to_cents(sum_of * decimal_of(share))
            yield CostItem(
                kind=kind, id="share", name="", placement=None, quantity=decimal_of(share * 100),
                unit="%", rate=sum_of, amount=amount, lines=(),
            )  # fmt: skip
    if costs.overhead.crew_day is not None:
        yield item(
            CostKind.OVERHEAD, "days", Fraction(costed.days), costs.overhead.crew_day, unit="day"
        )
