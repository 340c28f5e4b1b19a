"""How much stone to order for the compacted layer under a slab."""

from datetime import date
from fractions import Fraction

from quotegen.trade.book import RuleBook


def base_tons(compacted_cuyd: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the US tons of stone for a compacted volume in cubic yards.

    Compacted volume times compacted density (1.98 ton per cu yd, common practice). A loose density
    of 1.4 to 1.5 belongs to the loose volume, never to this one.
    """
    return compacted_cuyd * rules.exact("base_compacted_density", on)


def base_loose_cuyd(tons: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the loose volume of so many US tons of stone, as a truck brings it, in cubic yards.

    By the lightest loose stone (1.4 ton per cu yd, published), so that a volume is never short.
    """
    return tons / Fraction(rules.range("base_loose_density", on).least)
