"""Stage 5, explain, the owner's side: what to order, and how concrete gets to the slab."""

from dataclasses import dataclass
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.quantity import decimal_places
from quotegen.takeoff.site_records import Material
from quotegen.trade.wording import unit_key
from quotegen.working import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderRow:
    """One material: how much is needed, what to buy, and how that comes about."""

    name: str
    what: str
    where: str
    needed: str
    buy: str
    how: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReachRow:
    """One way of access, how far it reaches and how much of the deck."""

    name: str
    reach: str
    share: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderList:
    """Everything on the owner's order list."""

    language: str
    title: str
    accent: str
    paper_size: str
    revision: str
    date: str
    customer: str
    rows: tuple[OrderRow, ...]
    access: tuple[str, ...]
    reach: tuple[ReachRow, ...]


def order_list_view(results: Results) -> OrderList:
    """Build the order list at the chosen finish."""
    job, words, reach = results.job, results.words, results.takeoff.reach
    return OrderList(
        language=words.locale.partition("_")[0],
        title=words("order_title", title=job.title, quote=job.quote),
        accent=job.company.accent,
        paper_size=job.paper.value,
        revision=str(job.revision),
        date=words.day(job.quote_date),
        customer=job.customer.name,
        rows=tuple(_row(results, material) for material in results.takeoff.materials),
        access=_access(results),
        reach=tuple(
            ReachRow(name=method.name, reach=words.feet(method.reach_ft), share=f"{method.share} %")
            for method in (reach.methods if reach else ())
        ),
    )


def _row(results: Results, material: Material) -> OrderRow:
    words, names = results.words, {p.id: p.name for p in results.job.placements}

    def amount(unit: str, value: Decimal, places: int) -> str:
        number = words.number(value, places)
        return words.count(f"order_unit_{unit_key(unit)}", value, number=number)

    return OrderRow(
        name=words(f"material_{material.id}"),
        what=material.what,
        where=names.get(material.placement or "", words("order_whole")),
        needed=amount(material.unit, material.needed, 2),
        buy=amount(material.buy_unit, material.buy, decimal_places(material.buy))
        if material.buy_unit
        else "",
        how=_how(results, material.working),
    )


def _how(results: Results, step: Step) -> str:
    """Write one step of the working as a sentence with its numbers."""
    inputs = tuple(_input(results, one) for one in step.inputs)
    if not inputs:
        return step.formula
    return results.words("order_how", formula=step.formula, inputs=results.words.joined(inputs))


def _input(results: Results, step: Step) -> str:
    words, unit = results.words, step.unit
    named = [rule for rule in step.rules if rule in results.rules.rules]
    if named and not step.inputs:
        reference = results.rules.rule(named[0]).at(results.job.quote_date).reference
        unit = words("order_rule", unit=unit, reference=str(reference))
    places = min(decimal_places(step.value), 3)
    return words("order_input", name=step.name, value=words.number(step.value, places), unit=unit)


def _access(results: Results) -> tuple[str, ...]:
    words, chosen, reach = results.words, results.access, results.takeoff.reach
    told = []
    if chosen:
        name = results.job.rate_book.access[chosen.method].name
        told.append(words("order_named" if chosen.named else "order_chosen", method=name))
        others = tuple(f"{other} {words.money(cost)}" for other, cost in chosen.others.items())
        told += [words("order_others", others=words.listing(others))] if others else []
    if reach and reach.route_ft is not None:
        told.append(words("order_route", length=words.feet(reach.route_ft)))
    return tuple(told)
