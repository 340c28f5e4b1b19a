"""Weights, laps and supports of steel for flatwork."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from math import ceil

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


def supports_needed(area_sqft: Decimal, rules: RuleBook, on: date) -> int:
    """Return how many chairs hold mesh up: one for each square of 3 ft (FBC 1909.3)."""
    return ceil(Fraction(area_sqft) / rules.exact("wire_support_spacing", on) ** 2)
