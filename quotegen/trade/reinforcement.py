"""Weights of steel for flatwork."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

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
