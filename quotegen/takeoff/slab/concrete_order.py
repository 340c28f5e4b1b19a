"""The volume of a slab and the concrete to order for it, with the working."""

from dataclasses import dataclass
from datetime import date
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
        uneven_cuyd: what an uneven base takes up: ordered, but not part of the slab.
    """

    deep_edges: tuple[Step, ...]
    net_cuyd: Fraction
    uneven_cuyd: Fraction
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
    uneven_in = order.uneven_base.inches if order.uneven_base else Fraction(0)
    uneven_cuyd = net_volume_cuyd(area.value, uneven_in, rules, on) if uneven_in else Fraction(0)
    ordered = order_cuyd(net_cuyd + uneven_cuyd, order.allowance, order.round_up_to)
    volume = _with_deep_edges(flat, deep_edges, net_cuyd)
    return Concrete(
        deep_edges=deep_edges,
        net_cuyd=net_cuyd,
        uneven_cuyd=uneven_cuyd,
        volume_step=volume,
        order_step=order_step(volume, ordered, order, uneven_cuyd),
    )


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
    volume: Step, ordered_cuyd: Fraction, order: Order, uneven_cuyd: Fraction = Fraction(0)
) -> Step:
    """Return the working of an order."""
    uneven = given(UNEVEN_BASE, decimal_of(uneven_cuyd), _CUYD)
    return Step(
        name="Concrete to order",
        formula="volume and the allowance, rounded up once to the step that the plant sells by",
        inputs=(
            volume,
            *((uneven,) if uneven_cuyd else ()),
            given("Allowance", rounded(order.allowance * 100, _SHARE_PLACES), "%"),
            given("Step", decimal_of(order.round_up_to), _CUYD),
        ),
        value=decimal_of(ordered_cuyd),
        unit=_CUYD,
        rules=(_ALLOWANCE_RULE, _INCREMENT_RULE),
    )


def job_order_steps(
    volumes: tuple[Step, ...],
    net: Fraction,
    ordered: Fraction,
    order: Order,
    uneven: Fraction = Fraction(0),
) -> tuple[Step, ...]:
    """Return the working of the order for all placements together."""
    volume = Step(
        name="Volume of the job",
        formula="sum of the volumes of all placements",
        inputs=volumes,
        value=decimal_of(net),
        unit=_CUYD,
    )
    return volume, order_step(volume, ordered, order, uneven)
