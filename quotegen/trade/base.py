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


def base_loose_cuyd(compacted_cuyd: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the loose volume that a truck brings, in cubic yards.

    1.17 for one compacted (FM 5-434 Table 1-1, sand).
    """
    return compacted_cuyd * rules.exact("base_loose_factor", on)
