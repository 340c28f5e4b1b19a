"""The volume of a slab and the concrete to order for it, with the working."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.problem import Source
from quotegen.quantity import Length, decimal_of, rounded
from quotegen.reading.files.rate_book import Order
from quotegen.trade.concrete import net_volume_cuyd, order_cuyd
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

VOLUME, FLAT_VOLUME, UNEVEN_BASE = "Volume", "Volume of the flat slab", "Uneven base"
"""Names of the steps that the order list picks out of the working."""

_CUYD = "cu yd"
_GIVEN_PLACES = 4
_SHARE_PLACES = 2
_VOLUME_RULE = "sqft_inches_per_cubic_yard"
_ALLOWANCE_RULE = "concrete_order_allowance"
_INCREMENT_RULE = "concrete_order_increment"


@dataclass(frozen=True, slots=True, kw_only=True)
class Concrete:
    """The concrete of one slab, exact, with its working.

    Attributes:
        deep_edges: the concrete below the slab along its deep edges.
        net_cuyd: in the slab and its deep edges.
        beside: what is ordered and is no part of the slab: steps, and what an uneven base swallows.
    """

    deep_edges: tuple[Step, ...]
    net_cuyd: Fraction
    beside: tuple[Step, ...]
    volume_step: Step
    order_step: Step


def concrete_of(
    *,
    area: Step,
    thickness: Length,
    thickness_source: Source,
    order: Order,
    rules: RuleBook,
    on: date,
    deep_edges: tuple[Step, ...] = (),
    steps: Step | None = None,
) -> Concrete:
    """Return the volume of one slab and what to order for it.

    Args:
        area: in square feet as printed, so that a reader can repeat the calculation.
        thickness: of the slab.
        thickness_source: where the job file gives the thickness.
        order: how the company orders concrete.
        rules: of the trade.
        on: the quote date.
        deep_edges: the concrete below the slab along its deep edges.
        steps: the concrete of its flight of steps.
    """
    flat_cuyd = net_volume_cuyd(area.value, thickness.inches, rules, on)
    flat = Step(
        name=FLAT_VOLUME if deep_edges else VOLUME,
        formula="area in square feet x thickness in inches, over the square feet that one cubic"
        " yard covers one inch thick",
        inputs=(
            area,
            given("Thickness", rounded(thickness.inches, _GIVEN_PLACES), "in", thickness_source),
            given("One cubic yard", rules.number(_VOLUME_RULE, on), "sq ft x in"),
        ),
        value=decimal_of(flat_cuyd),
        unit=_CUYD,
        rules=(_VOLUME_RULE,),
    )
    net_cuyd = flat_cuyd + sum((Fraction(step.value) for step in deep_edges), Fraction(0))
    beside = (*((steps,) if steps else ()), *_uneven(area.value, order, rules, on))
    volume = _with_deep_edges(flat, deep_edges, net_cuyd)
    return Concrete(
        deep_edges=deep_edges,
        net_cuyd=net_cuyd,
        beside=beside,
        volume_step=volume,
        order_step=order_step(volume, net_cuyd, order, beside),
    )


def _uneven(area_sqft: Decimal, order: Order, rules: RuleBook, on: date) -> Iterator[Step]:
    """Yield what an uneven base swallows, where the company orders for it."""
    if order.uneven_base:
        cuyd = net_volume_cuyd(area_sqft, order.uneven_base.inches, rules, on)
        yield given(UNEVEN_BASE, decimal_of(cuyd), _CUYD)


def _with_deep_edges(flat: Step, deep_edges: tuple[Step, ...], net_cuyd: Fraction) -> Step:
    if not deep_edges:
        return flat
    return Step(
        name=VOLUME,
        formula="the flat slab and the deep edges below it",
        inputs=(flat, *deep_edges),
        value=decimal_of(net_cuyd),
        unit=_CUYD,
    )


def order_step(
    volume: Step, net_cuyd: Fraction, order: Order, beside: tuple[Step, ...] = ()
) -> Step:
    """Return what to order of concrete, with its working.

    Args:
        volume: the working of the net volume.
        net_cuyd: the same, exact.
        order: how the company orders concrete.
        beside: what is ordered with it and is no part of the slab.
    """
    whole = net_cuyd + sum((Fraction(step.value) for step in beside), Fraction(0))
    return Step(
        name="Concrete to order",
        formula="volume and the allowance, rounded up once to the step that the plant sells by",
        inputs=(
            volume,
            *beside,
            given("Allowance", rounded(order.allowance * 100, _SHARE_PLACES), "%"),
            given("Step", decimal_of(order.round_up_to), _CUYD),
        ),
        value=decimal_of(order_cuyd(whole, order.allowance, order.round_up_to)),
        unit=_CUYD,
        rules=(_ALLOWANCE_RULE, _INCREMENT_RULE),
    )


def job_order_steps(each: Sequence[Concrete], order: Order) -> tuple[Step, Step]:
    """Return the volume of all placements together, and the order for it, rounded up once."""
    net = sum((concrete.net_cuyd for concrete in each), Fraction(0))
    volume = Step(
        name="Volume of the job",
        formula="sum of the volumes of all placements",
        inputs=tuple(concrete.volume_step for concrete in each),
        value=decimal_of(net),
        unit=_CUYD,
    )
    beside = tuple(step for concrete in each for step in concrete.beside)
    return volume, order_step(volume, net, order, _alike_together(beside))


def _alike_together(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Add up steps of one name; one that stands alone keeps its working."""
    names = dict.fromkeys(step.name for step in steps)
    alike = (tuple(one for one in steps if one.name == name) for name in names)
    return tuple(same[0] if len(same) == 1 else _sum(same) for same in alike)


def _sum(same: tuple[Step, ...]) -> Step:
    whole = sum((Fraction(step.value) for step in same), Fraction(0))
    return given(same[0].name, decimal_of(whole), _CUYD)
