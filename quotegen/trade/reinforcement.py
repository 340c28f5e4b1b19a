"""Weights, laps and supports of steel for flatwork."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.quantity import LB_PER_TON
from quotegen.trade.book import RuleBook


def wire_weight_lb_per_100_sqft(style: str, rules: RuleBook, on: date) -> Decimal:
    """Return the published weight of a wire style, overhangs included, laps not (ASTM A1064)."""
    return rules.table("wire_weight", on)[style]


def bar_weight_lb(bar: str, length_ft: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the weight in pounds of a length of bar such as `#4` (ASTM A615 Table 1)."""
    return Fraction(rules.table("bar_weight", on)[bar]) * length_ft


def wire_lap_in(mesh_in: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the lap of plain wire mesh in inches: one mesh and 2 in (ACI 318-19 25.5.4; WRI)."""
    return mesh_in + rules.exact("wire_lap_past_mesh", on)


def bar_lap_in(bar: str, rules: RuleBook, on: date) -> Fraction:
    """Return the lap of a bar such as `#4` in inches: 40 diameters (common practice)."""
    return Fraction(rules.table("bar_diameter", on)[bar]) * rules.exact("bar_lap_diameters", on)


def supports_needed(area_sqft: Decimal, spacing_ft: Fraction) -> int:
    """Return how many chairs hold steel up: one for each square of the widest spacing.

    Under mesh 3 ft (FBC 1909.3), under bars as is common practice.
    """
    return ceil(Fraction(area_sqft) / spacing_ft**2)


def tie_wire_lb(bars_lb: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Return the wire in pounds that ties bars of a weight in pounds (common practice)."""
    return bars_lb / LB_PER_TON * rules.exact("tie_wire_dose", on)
