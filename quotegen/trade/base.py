"""The compacted layer under a slab: how much stone to order."""

from datetime import date
from fractions import Fraction

from quotegen.trade.book import RuleBook


def base_tons(compacted_cuyd: Fraction, rules: RuleBook, on: date) -> Fraction:
    """US tons of stone for a compacted volume in cubic yards.

    Compacted volume times compacted density (1.98 ton per cu yd, practice). A loose density of
    1.4 to 1.5 belongs to the loose volume and never to this one.
    """
    return compacted_cuyd * rules.exact("base_compacted_density", on)


def base_loose_cuyd(compacted_cuyd: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Loose volume in cubic yards, as a truck brings it (FM 5-434 Table 1-1, sand: 1.17)."""
    return compacted_cuyd * rules.exact("base_loose_factor", on)


def delivered_tons(loose_cuyd: Fraction, rules: RuleBook, on: date) -> tuple[Fraction, Fraction]:
    """US tons, least and most, of a loose volume as a truck brings it (1.4 to 1.5 ton per cu yd).

    Never for a compacted volume: that is `base_tons`.
    """
    density = rules.range("base_loose_density", on)
    return loose_cuyd * Fraction(density.least), loose_cuyd * Fraction(density.most)
