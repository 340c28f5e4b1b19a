"""How much concrete a slab takes, and how much to order."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.quantity import CUFT_PER_CUYD
from quotegen.trade.book import RuleBook


def sqft_per_cuyd(thickness_in: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Area in square feet that one cubic yard covers at a thickness in inches.

    324 divided by the thickness: an identity (27 cubic feet of 12 inches each). For a slab of
    even thickness; thickened edges are added apart.
    """
    return rules.exact("sqft_inches_per_cubic_yard", on) / thickness_in


def net_volume_cuyd(
    area_sqft: Decimal, thickness_in: Fraction, rules: RuleBook, on: date
) -> Fraction:
    """Exact volume in cubic yards of a slab, before any allowance.

    Area in square feet times thickness in inches, divided by 324. Nothing is rounded here.
    """
    return Fraction(area_sqft) / sqft_per_cuyd(thickness_in, rules, on)


def order_cuyd(net_cuyd: Fraction, allowance: Fraction, increment_cuyd: Fraction) -> Fraction:
    """Quantity to order in cubic yards.

    The net volume and its allowance, rounded up once to the plant's step (NRMCA Concrete in
    Practice 8 gives 4 to 10 % over; the step is the supplier's). A quantity that stands on a
    step already stays. It is what we order, never what we bill by.

    Args:
        net_cuyd: exact net volume.
        allowance: share to add, such as 7/100.
        increment_cuyd: step in which the plant sells, such as 1/4.
    """
    return ceil(net_cuyd * (1 + allowance) / increment_cuyd) * increment_cuyd


def thickness_allowed(thickness_in: Fraction, rules: RuleBook, on: date) -> bool:
    """Say whether a slab is as thick as the residential code asks (3.5 in, IRC R506.1).

    Written for floors on the ground in dwellings; local code may ask more for walks and drives.
    """
    return thickness_in >= rules.exact("slab_thickness_min", on)


def truck_loads(order_cuyd: Fraction, truck_cuyd: Fraction) -> tuple[int, Fraction]:
    """How many trucks an order takes, and what the last one brings in cubic yards."""
    loads = ceil(order_cuyd / truck_cuyd)
    return loads, order_cuyd - (loads - 1) * truck_cuyd


def yield_cuyd(batch_lb: Decimal, unit_weight_lb_per_cuft: Decimal) -> Fraction:
    """Cubic yards that a batch fills: its weight over 27 times its unit weight (NRMCA CIP 8).

    The unit weight is the mean of three tests from three trucks (ASTM C138 under C94).
    """
    return Fraction(batch_lb) / (CUFT_PER_CUYD * Fraction(unit_weight_lb_per_cuft))
