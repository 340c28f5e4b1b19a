"""How much concrete a slab takes, and how much to order."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.trade.book import RuleBook


def sqft_per_cuyd(thickness_in: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the area in square feet that one cubic yard covers at a thickness in inches.

    324 divided by the thickness: an identity (27 cubic feet of 12 inches each). For a slab of
    even thickness; thickened edges are added separately.
    """
    return rules.exact("sqft_inches_per_cubic_yard", on) / thickness_in


def net_volume_cuyd(
    area_sqft: Decimal | Fraction, thickness_in: Fraction, rules: RuleBook, on: date
) -> Fraction:
    """Return the exact volume of a slab in cubic yards, before any allowance.

    Area in square feet times thickness in inches, divided by 324. Nothing is rounded here.
    """
    return Fraction(area_sqft) / sqft_per_cuyd(thickness_in, rules, on)


def order_cuyd(net_cuyd: Fraction, allowance: Fraction, increment_cuyd: Fraction) -> Fraction:
    """Return the quantity to order, in cubic yards.

    The net volume plus its allowance, rounded up once to the plant's increment (NRMCA Concrete in
    Practice 8 gives 4 to 10 % over; the increment is the supplier's). A quantity already on an
    increment stays. It is what we order, never what we bill by.

    Args:
        net_cuyd: exact net volume.
        allowance: share to add, such as 7/100.
        increment_cuyd: the increment that the plant sells by, such as 1/4.
    """
    return ceil(net_cuyd * (1 + allowance) / increment_cuyd) * increment_cuyd


def truck_loads(order_cuyd: Fraction, truck_cuyd: Fraction) -> tuple[int, Fraction]:
    """Return how many trucks an order takes, and what the last one brings in cubic yards."""
    loads = ceil(order_cuyd / truck_cuyd)
    return loads, order_cuyd - (loads - 1) * truck_cuyd
