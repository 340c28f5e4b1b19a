"""Concrete: the volume of a slab and what to order, with the working."""

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from quotegen.problem import Source
from quotegen.quantity import Length, decimal_of, rounded
from quotegen.spec.rate_book import Order
from quotegen.trade.concrete import net_volume_cuyd, order_cuyd
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

_CUYD = "cu yd"
_GIVEN_PLACES = 4
_SHARE_PLACES = 2
_VOLUME_RULE = "sqft_inches_per_cubic_yard"
_ALLOWANCE_RULE = "concrete_order_allowance"
_INCREMENT_RULE = "concrete_order_increment"


@dataclass(frozen=True, slots=True, kw_only=True)
class Concrete:
    """The concrete of one slab, exact, with its working."""

    net_cuyd: Fraction
    order_cuyd: Fraction
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
) -> Concrete:
    """Return the volume and the order of one slab.

    Args:
        area: in square feet as printed, so that a reader can work the volume out again.
        thickness: of the slab.
        thickness_source: where the thickness stands in the job file.
        order: how the company orders concrete.
        rules: of the trade.
        on: the quote date.
    """
    net_cuyd = net_volume_cuyd(area.value, thickness.inches, rules, on)
    volume = Step(
        name="Volume",
        formula="area in square feet x thickness in inches, over the square feet that one cubic"
        " yard covers one inch thick",
        inputs=(
            area,
            given("Thickness", rounded(thickness.inches, _GIVEN_PLACES), "in", thickness_source),
            given("One cubic yard", rules.number(_VOLUME_RULE, on), "sq ft x in"),
        ),
        value=decimal_of(net_cuyd),
        unit=_CUYD,
        rules=(_VOLUME_RULE,),
    )
    ordered = order_cuyd(net_cuyd, order.allowance, order.round_up_to)
    return Concrete(
        net_cuyd=net_cuyd,
        order_cuyd=ordered,
        volume_step=volume,
        order_step=order_step(volume, ordered, order),
    )


def order_step(volume: Step, ordered_cuyd: Fraction, order: Order) -> Step:
    """Return the working of an order."""
    return Step(
        name="Concrete to order",
        formula="volume and the allowance, rounded up once to the step that the plant sells by",
        inputs=(
            volume,
            given("Allowance", rounded(order.allowance * 100, _SHARE_PLACES), "%"),
            given("Step", decimal_of(order.round_up_to), _CUYD),
        ),
        value=decimal_of(ordered_cuyd),
        unit=_CUYD,
        rules=(_ALLOWANCE_RULE, _INCREMENT_RULE),
    )


def job_order_steps(
    volumes: tuple[Step, ...], net: Fraction, ordered: Fraction, order: Order
) -> tuple[Step, ...]:
    """Return the working of the order for all placements together."""
    volume = Step(
        name="Volume of the job",
        formula="sum of the volumes of all placements",
        inputs=volumes,
        value=decimal_of(net),
        unit=_CUYD,
    )
    return volume, order_step(volume, ordered, order)
