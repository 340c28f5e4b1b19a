"""Weights of steel for flatwork."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.trade.book import RuleBook


def wire_area_sqin_per_ft(style: str, rules: RuleBook, on: date) -> Decimal:
    """Steel area each way of a wire style such as `6x6 W1.4` (ASTM A1064).

    Raises:
        KeyError: the style is not in the table.
    """
    return rules.table("wire_area", on)[style]


def wire_weight_lb_per_100_sqft(style: str, rules: RuleBook, on: date) -> Decimal:
    """Published weight of a wire style, overhangs counted, laps not (ASTM A1064)."""
    return rules.table("wire_weight", on)[style]


def bar_weight_lb(bar: str, length_ft: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Weight in pounds of a length of bar such as `#4` (ASTM A615 Table 1). Laps not counted."""
    return Fraction(rules.table("bar_weight", on)[bar]) * length_ft


def wire_lap_in(mesh_in: Fraction, rules: RuleBook, on: date) -> Fraction:
    """Lap of plain wire mesh in inches: one mesh and 2 in (ACI 318-19 25.5.4; WRI manual)."""
    return mesh_in + rules.exact("wire_lap_past_mesh", on)


def bar_lap_in(bar: str, rules: RuleBook, on: date) -> Fraction:
    """Lap of a bar such as `#4` in inches: 40 diameters (practice; a code may ask more)."""
    return Fraction(rules.table("bar_diameter", on)[bar]) * rules.exact("bar_lap_diameters", on)


def supports_needed(area_sqft: Decimal, rules: RuleBook, on: date) -> int:
    """Chairs that hold mesh up: one for each square of the widest spacing (3 ft, FBC 1909.3)."""
    return ceil(Fraction(area_sqft) / rules.exact("wire_support_spacing", on) ** 2)


def drag_steel_sqin_per_ft(
    thickness_in: Fraction, spacing_ft: Fraction, stress_psi: Fraction, rules: RuleBook, on: date
) -> Fraction:
    """Steel in sq in per ft of width that holds a crack closed (subgrade drag, CRSI).

    Friction times spacing times weight, over twice the working stress. Not for carrying loads.

    Args:
        thickness_in: slab thickness in inches.
        spacing_ft: from joint or free edge to the next, in feet.
        stress_psi: at which the steel works, such as `wire_stress_psi`.
        rules: the rule book.
        on: the quote date.
    """
    weight = rules.exact("slab_weight", on) * thickness_in
    return rules.exact("drag_friction", on) * spacing_ft * weight / (2 * stress_psi)


def wire_stress_psi(rules: RuleBook, on: date) -> Fraction:
    """Working stress of plain wire in psi: two thirds of its yield strength (CRSI)."""
    return rules.exact("wire_yield", on) * rules.exact("drag_stress_share", on)
