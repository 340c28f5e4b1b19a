"""Price against cost for the whole job at one finish; for the owner alone."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.costs.floors import floors_of
from quotegen.pricing.costs.items import CostedJob, items_of, price_of, road_to_site
from quotegen.pricing.costs.records import CostItem, CostLine, FinishCosts, Missing, MissingKind
from quotegen.pricing.quoted.no_work import TAX
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.quantity import Units, decimal_of
from quotegen.reading.records import JobSpec, OwnersJob
from quotegen.takeoff.materials.order_list import order_list
from quotegen.takeoff.records import Takeoff
from quotegen.trade.rules import RuleBook


def costs_at(
    job: JobSpec,
    owners: OwnersJob,
    takeoff: Takeoff,
    rules: RuleBook,
    priced: PricedFinish,
    without: frozenset[str] = frozenset(),
) -> FinishCosts:
    """Return price against cost of a job at one finish.

    Args:
        job: with its access line asked for.
        owners: what the same job costs.
        takeoff: what is costed.
        rules: of the trade, for the order list.
        priced: the lines and the total.
        without: scope items left to others, whose materials are not bought.
    """
    at_finish = replace(job, finish=priced.id)
    costed = CostedJob(
        job=at_finish,
        owners=owners,
        priced=priced,
        materials=order_list(at_finish, takeoff, rules),
        without=without,
    )
    items = tuple(items_of(costed))
    cost = total(tuple(one.amount for one in items))
    tax = total(tuple(line.amount for line in priced.lines if TAX in line.scope))
    net, margin = Money(priced.total - tax), Money(priced.total - cost)
    area = takeoff.area(Units.US)
    lines = _lines(priced.lines, items)
    return FinishCosts(
        finish=priced.id,
        name=priced.name,
        lines=lines,
        items=items,
        price=priced.total,
        net_price=net,
        cost=cost,
        margin=margin,
        margin_share=Fraction(margin) / Fraction(net or 1),
        crew_days=costed.days,
        area_sqft=area,
        floors=floors_of(owners.costs, net, margin, costed.days, area),
        missing=tuple(_missing(costed, lines)),
    )


def _lines(lines: tuple[Line, ...], items: tuple[CostItem, ...]) -> tuple[CostLine, ...]:
    """Give each line its own costs; an item for several lines is shared by their prices."""
    costs: dict[str, Money] = {}
    amounts = {line.id: line.amount for line in lines}
    for one in items:
        for line_id, part in _parts(one, amounts):
            costs[line_id] = Money(costs.get(line_id, ZERO) + part)
    return tuple(_cost_line(line, costs.get(line.id)) for line in lines)


def _parts(one: CostItem, amounts: dict[str, Money]) -> Iterator[tuple[str, Money]]:
    """Share an item among its lines by their prices; the last takes what rounding leaves."""
    whole = sum((amounts[line] for line in one.lines), start=ZERO)
    left = one.amount
    for line in one.lines[:-1]:
        share = Fraction(amounts[line]) / Fraction(whole or 1)
        part = to_cents(one.amount * decimal_of(share))
        left = Money(left - part)
        yield line, part
    if one.lines:
        yield one.lines[-1], left


def _cost_line(line: Line, cost: Money | None) -> CostLine:
    if cost is None and not line.pays_for_work:
        cost = ZERO
    return CostLine(
        line=line.id,
        name=line.working.name,
        price=line.amount,
        cost=cost,
        margin=None if cost is None else Money(line.amount - cost),
    )


def _missing(costed: CostedJob, lines: tuple[CostLine, ...]) -> Iterator[Missing]:
    costs = costed.costs
    if costs is None:
        yield Missing(kind=MissingKind.COSTS, name="")
    for line in lines:
        if line.cost is None:
            yield Missing(kind=MissingKind.LINE, name=line.name)
    if costs is None:
        return
    for material in costed.materials:
        if material.bought_as is not None and price_of(costs, material) is None:
            yield Missing(kind=MissingKind.MATERIAL, name=material.id)
    road = road_to_site(costed, costs)
    if costs.travel is None or road.miles is None or road.hours is None:
        yield Missing(kind=MissingKind.ROAD, name="")
