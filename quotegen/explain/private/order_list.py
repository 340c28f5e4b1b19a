"""The order list: what to buy, and how concrete gets to the slab. For the owner alone."""

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.wording import Words
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.quantity import Units, decimal_places
from quotegen.reading.files.rate_book_file import CostedOrder
from quotegen.takeoff.materials.metric import in_metric
from quotegen.takeoff.records import Material
from quotegen.trade.wording import SILENT_UNITS, unit_key
from quotegen.working import Step, given

_NEEDED_PLACES, _STEP_PLACES = 2, 3
_COUNTED = frozenset({"sheet", "roll", "bar", "board", "load", "each"})


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderRow:
    """One material: what to buy, how much is needed, and how that was worked out.

    Attributes:
        sold: what to buy as our book counts it, in a metric job; else empty.
        quoted: what to buy for the slab as quoted, where measuring it made that another; else
            empty.
    """

    name: str
    what: str
    buy: str
    sold: str
    quoted: str
    needed: str
    where: str
    how: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReachRow:
    """One method of access: how far it reaches, and how much of the slab."""

    name: str
    reach: str
    share: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderList:
    """The order list.

    Attributes:
        measured: that the list is for the slab as measured in the forms; else empty.
        note: how a metric job is to be read; else empty.
    """

    head: PaperHead
    measured: str
    note: str
    rows: tuple[OrderRow, ...]
    access: tuple[str, ...]
    reach: tuple[ReachRow, ...]


def order_list_view(results: Results, owner: OwnersFigures) -> OrderList:
    """Build the order list of the chosen finish."""
    job, words, reach = results.job, results.words, results.takeoff.reach
    remeasure = results.contract.remeasure
    materials = (_with_charge(one, owner.job.book.order) for one in results.to_order)
    quoted = {(one.id, one.placement): one for one in results.takeoff.materials}
    title = words("order_title", title=job.title, quote=job.quote)
    return OrderList(
        head=paper_head(results, title, job.quote_date),
        measured=words("order_measured", day=words.day(remeasure.on)) if remeasure else "",
        note=words("order_metric") if words.units is Units.METRIC else "",
        rows=tuple(
            _row(results, material, quoted.get((material.id, material.placement)))
            for material in materials
        ),
        access=_access(results),
        reach=tuple(
            ReachRow(name=method.name, reach=words.feet(method.reach_ft), share=f"{method.share}%")
            for method in (reach.methods if reach else ())
        ),
    )


def _with_charge(material: Material, order: CostedOrder) -> Material:
    """Add to a short load what the plant charges for it, which the takeoff does not know."""
    short = order.short_load if material.id == "short_load" else None
    charge = short and short.charge_for(Fraction(material.buy))
    if not charge:
        return material
    inputs = (*material.working.inputs, given("Charge", charge, "$"))
    return replace(material, working=replace(material.working, inputs=inputs))


def _row(results: Results, material: Material, quoted: Material | None) -> OrderRow:
    """A row; what was quoted stands in it where it is not what to buy now."""
    words, names = results.words, {p.id: p.name for p in results.job.placements}
    shown = _shown(words, material)
    other = quoted is not None and quoted.buy != material.buy
    before = _buy(words, _shown(words, quoted)) if quoted and other else ""
    return OrderRow(
        name=words(f"material_{material.id}"),
        what=material.what,
        buy=_buy(words, shown),
        sold=_buy(words, material) if shown.unit != material.unit else "",
        quoted=words("order_quoted", quoted=before) if before else "",
        needed=_amount(words, shown.needed, shown.unit, _NEEDED_PLACES),
        where=names.get(material.placement or "", words("order_whole")),
        how=_how(results, material),
    )


def _shown(words: Words, material: Material) -> Material:
    return in_metric(material) if words.units is Units.METRIC else material


def _buy(words: Words, material: Material) -> str:
    if not material.buy_unit:
        return ""
    return _amount(words, material.buy, material.buy_unit, decimal_places(material.buy))


def _amount(words: Words, value: Decimal, unit: str, places: int) -> str:
    """A quantity with its unit; a whole number of what is counted has no decimals."""
    whole = unit in _COUNTED and not decimal_places(value)
    number = words.number(value, 0 if whole else places)
    return words.count(f"order_unit_{unit_key(unit)}", value, number=number)


def _how(results: Results, material: Material) -> str:
    """How a quantity came about, with its numbers, and what is ordered on top of it."""
    words, step = results.words, material.working
    inputs = words.joined(tuple(_input(results, one) for one in step.inputs))
    how = words("order_how", formula=step.formula, inputs=inputs) if inputs else step.formula
    if material.waste is None:
        return how
    return words("order_waste", how=how, share=_value(results, material.waste))


def _input(results: Results, step: Step) -> str:
    return results.words("order_input", name=step.name, value=_value(results, step))


def _value(results: Results, step: Step) -> str:
    """The value of a step with its unit, and the source of its rule."""
    words, value = results.words, _step_value(results.words, step)
    named = [rule for rule in step.rules if rule in results.rules.rules]
    if named and not step.inputs:
        reference = results.rules.rule(named[0]).at(results.job.quote_date).reference
        return words("order_rule", value=value, reference=str(reference))
    return value


def _step_value(words: Words, step: Step) -> str:
    """The value of a step with its unit, in the plural form that it takes."""
    if step.unit == "$":
        return words.money(step.value)
    number = words.number(step.value, min(decimal_places(step.value), _STEP_PLACES))
    if step.unit in SILENT_UNITS:
        return number
    for kind in ("order_unit", "rule_unit"):
        key = f"{kind}_{unit_key(step.unit)}"
        if f"{key}_other" in words.labels:
            return words.count(key, step.value, number=number)
        if key in words.labels:
            return words(key, number=number)
    return f"{number} {step.unit}"


def _access(results: Results) -> tuple[str, ...]:
    words, chosen, reach = results.words, results.access, results.takeoff.reach
    sentences = []
    if chosen:
        name = results.job.rate_book.access[chosen.method].name
        sentences.append(words("order_named" if chosen.named else "order_chosen", method=name))
        others = tuple(f"{other} {words.money(cost)}" for other, cost in chosen.others.items())
        sentences += [words("order_others", others=words.listing(others))] if others else []
    if reach and reach.route_ft is not None:
        sentences.append(words("order_route", length=words.feet(reach.route_ft)))
    return tuple(sentences)
