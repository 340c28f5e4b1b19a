"""Everything that a job costs, item by item, from the same lines and the same order list."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from quotegen.money import to_cents, total
from quotegen.pricing.costs.basis import Basis, item, loaded_wage, lump
from quotegen.pricing.costs.records import CostItem, CostKind
from quotegen.pricing.quoted.rates import shown_rate, us_quantity
from quotegen.pricing.quoted.records import Line
from quotegen.pricing.quoted.tax import TAX
from quotegen.quantity import Length, decimal_of
from quotegen.reading.fields.text_fields import Rate, Road
from quotegen.reading.files.costs import BOUGHT_BY, CLEAN_UP, DRIVE, SET_UP, Costs, MaterialId
from quotegen.reading.files.rate_book import Sealer
from quotegen.reading.files.rate_book_file import CostedRate
from quotegen.takeoff.records import Material

_MATERIALS = {
    "concrete": MaterialId.CONCRETE, "base_tons": MaterialId.STONE, "wire": MaterialId.WIRE,
    "wire_supports": MaterialId.CHAIRS, "bar": MaterialId.BAR, "fiber": MaterialId.FIBER,
    "pigment": MaterialId.PIGMENT, "hardener": MaterialId.HARDENER,
    "release": MaterialId.RELEASE, "curing": MaterialId.CURING,
    "joint_filler": MaterialId.JOINT_FILLER, "bond_breaker": MaterialId.BOND_BREAKER,
}  # fmt: skip
_SCOPE = {
    "concrete": "slab", "base_tons": "base", "wire": "reinforcement",
    "wire_supports": "reinforcement", "bar": "reinforcement", "fiber": "reinforcement",
    "pigment": "finish", "hardener": "finish", "release": "finish", "curing": "curing",
    "sealer": "sealing", "joint_filler": "isolation", "bond_breaker": "isolation",
}  # fmt: skip
"""For which scope item each material of the order list is bought."""


def items_of(basis: Basis) -> Iterator[CostItem]:
    """Yield every cost of a job; shares of the direct cost come last."""
    direct = [*_bought(basis), *_bills(basis)]
    costs = basis.costs
    if costs is not None:
        direct += [
            *hours_of(basis, costs), *_materials(basis, costs), *_deliveries(basis, costs),
            *_equipment(basis, costs), *_miles(basis, costs),
        ]  # fmt: skip
    yield from sorted(direct, key=lambda one: tuple(CostKind).index(one.kind))
    if costs is not None:
        yield from _shares(basis, costs, tuple(direct))
    for line in basis.priced.lines:
        if TAX in line.scope:  # it is collected and handed on
            yield lump(CostKind.TAX, TAX, line.amount, name=line.name, lines=(line,))


def hours_of(basis: Basis, costs: Costs) -> Iterator[CostItem]:
    """Yield the crew hours of a job at the loaded wage: on site, then on the road.

    They go by the lines and the days alone, so a job without an order list has them too.
    """
    yield from _labour(basis, costs)
    yield from _drive(basis, costs)


def _labour(basis: Basis, costs: Costs) -> Iterator[CostItem]:
    """Hours of each step at the loaded wage; what is fixed comes once for a rate."""
    wage, seen = loaded_wage(costs), set[str]()
    for line in basis.priced.lines:
        step = costs.hours.get(line.rate_id)
        if step is None:
            continue
        quantity, unit = us_quantity(line.quantity, line.unit)
        hours = Fraction(0) if line.rate_id in seen else step.fixed
        seen.add(line.rate_id)
        if step.work is not None and step.work.unit is unit:
            hours += quantity / step.work.of * step.work.hours
        yield item(
            CostKind.LABOUR, line.rate_id, hours, wage, unit="hour", name=line.name,
            placement=line.placement, lines=(line,),
        )  # fmt: skip
    for name, hours in ((SET_UP, costs.set_up), (CLEAN_UP, costs.clean_up)):
        if hours:
            yield item(CostKind.LABOUR, name, hours * basis.days, wage, unit="hour")


def price_of(basis: Basis, costs: Costs, material: Material) -> tuple[MaterialId, bool] | None:
    """Return under which name a material is priced and whether it is; None if it is not bought."""
    known = _MATERIALS.get(material.id)
    if material.id == "sealer":
        spec = next(p for p in basis.job.placements if p.id == material.placement)
        film = basis.job.finish_of(spec, basis.priced.id)[1].sealer is Sealer.FILM
        known = MaterialId.SEALER_FILM if film else MaterialId.SEALER_PENETRATING
    if known is None:
        return None
    price = costs.materials.get(known)
    fits = price is not None and price.price.unit == material.buy_unit
    return known, fits and material.buy_unit in BOUGHT_BY[known]


def _materials(basis: Basis, costs: Costs) -> Iterator[CostItem]:
    """What the order list buys and the waste on top, at delivered prices."""
    for material in basis.materials:
        known = price_of(basis, costs, material)
        scope = _SCOPE.get(material.id)
        if known is None or not known[1] or scope in basis.without:
            continue
        price = costs.materials[known[0]]
        yield item(
            CostKind.MATERIAL,
            material.id,
            Fraction(material.buy) * (1 + price.waste),
            price.price.amount,
            unit=material.buy_unit,
            placement=material.placement,
            lines=basis.lines_of(scope, material.placement),
        )


def _deliveries(basis: Basis, costs: Costs) -> Iterator[CostItem]:
    """What comes on top for each load, and for one that is short."""
    loads, fees = {m.id: m for m in basis.materials}, costs.deliveries
    short = basis.owners.book.order.short_load
    slab, base = basis.lines_of("slab"), basis.lines_of("base")
    if fees.concrete_load is not None:
        yield item(
            CostKind.DELIVERY, "concrete_loads", Fraction(loads["truck_loads"].buy),
            fees.concrete_load, unit="load", lines=slab,
        )  # fmt: skip
    if "short_load" in loads and short is not None and short.charge is not None:
        yield lump(CostKind.DELIVERY, "short_load", short.charge, lines=slab)
    if fees.stone_load is not None and fees.stone_load_tons and "base" not in basis.without:
        tons = sum((Fraction(m.buy) for m in basis.materials if m.id == "base_tons"), Fraction(0))
        yield item(
            CostKind.DELIVERY, "stone_loads", Fraction(ceil(tons / fees.stone_load_tons)),
            fees.stone_load, unit="load", lines=base,
        )  # fmt: skip


def _equipment(basis: Basis, costs: Costs) -> Iterator[CostItem]:
    days = {visit.id: visit.days for visit in basis.visits}
    finishes = {basis.job.finish_of(p, basis.priced.id)[0] for p in basis.job.placements}
    for machine_id, machine in costs.equipment.items():
        used = not machine.finishes or not finishes.isdisjoint(machine.finishes)
        if used and machine.visit in days and machine.covers not in basis.without:
            yield item(
                CostKind.EQUIPMENT, machine_id, Fraction(days[machine.visit]), machine.day,
                unit="day", name=machine.name, lines=basis.lines_of(machine.covers),
            )  # fmt: skip


def way_to(basis: Basis, costs: Costs) -> Road:
    """Return how far it is one way: as the job says, else as the book does."""
    site, usual = basis.job.site, costs.travel
    distance = site.distance or (usual.distance if usual else None)
    time = site.drive_time or (usual.drive_time if usual else None)
    return Road(miles=distance.miles if distance else None, hours=time.hours if time else None)


def _drive(basis: Basis, costs: Costs) -> Iterator[CostItem]:
    """Everybody's hours on the road, there and back on each day."""
    road = way_to(basis, costs)
    if costs.travel is not None and road.hours is not None:
        crew, people = basis.crew(costs), costs.travel.people
        trips = sum(visit.days * people.get(visit.id, crew) for visit in basis.visits)
        yield item(
            CostKind.TRAVEL, DRIVE, 2 * road.hours * trips, loaded_wage(costs), unit="hour",
            lines=basis.lines_of("travel"),
        )  # fmt: skip


def _miles(basis: Basis, costs: Costs) -> Iterator[CostItem]:
    """Each vehicle's miles, there and back on each day."""
    road = way_to(basis, costs)
    if costs.travel is not None and road.miles is not None:
        miles = 2 * road.miles * costs.travel.vehicles * basis.days
        yield item(
            CostKind.TRAVEL, "miles", miles, costs.travel.mile.amount, unit="mile",
            lines=basis.lines_of("travel"),
        )  # fmt: skip


def _bought(basis: Basis) -> Iterator[CostItem]:
    """What the `cost` of a rate or finish buys for one unit of its line."""
    book = basis.owners.book
    access = {method.rate for method in book.access.values()}
    for line in basis.priced.lines:
        rate = _line_cost(basis, line)
        if rate is None:
            continue
        kind = CostKind.SUPPLIES
        if line.rate_id in book.rates:
            kind = CostKind(book.rates[line.rate_id].cost_for.value)
        kind = CostKind.ACCESS if line.rate_id in access else kind
        shown = shown_rate(rate, basis.job.units)
        yield CostItem(
            kind=kind, id=line.rate_id, name=line.name, placement=line.placement,
            quantity=line.quantity, unit=line.unit.value, rate=shown.amount,
            amount=to_cents(line.quantity * shown.amount), lines=(line.id,),
        )  # fmt: skip


def _line_cost(basis: Basis, line: Line) -> Rate | None:
    book = basis.owners.book
    if line.rate_id in book.finishes and line.scope == ("finish",):
        return book.finishes[line.rate_id].cost
    if line.rate_id not in book.rates or TAX in line.scope:
        return None
    specs = basis.job.placements
    thickness = next((p.thickness for p in specs if p.id == line.placement), None)
    return _book_cost(book.rates[line.rate_id], line, thickness)


def _book_cost(rate: CostedRate, line: Line, thickness: Length | None) -> Rate | None:
    return cost_at(rate, thickness) if line.band is None else rate.bands[line.band].cost


def cost_at(rate: CostedRate, thickness: Length | None) -> Rate | None:
    """Return the cost that belongs to the same step as the price for a slab thickness."""
    if rate.rate is not None:
        return rate.cost
    if rate.bands:
        return rate.bands[0].cost
    steps = [s for s in rate.by_thickness if thickness and s.thickness <= thickness]
    return (steps[-1] if steps else rate.by_thickness[0]).cost


def _bills(basis: Basis) -> Iterator[CostItem]:
    for bill in basis.owners.file.private_costs:
        yield lump(CostKind(bill.kind.value), "bill", bill.amount, name=bill.what)


def _shares(basis: Basis, costs: Costs, direct: tuple[CostItem, ...]) -> Iterator[CostItem]:
    """The reserve for the warranty and the overhead; shares are of the direct cost."""
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
            CostKind.OVERHEAD, "days", Fraction(basis.days), costs.overhead.crew_day, unit="day"
        )
