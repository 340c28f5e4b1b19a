"""How rough a first price is."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.trade.book import PER_CENT, RuleBook


def paced_factors(rules: RuleBook, on: date) -> tuple[Fraction, Fraction]:
    """Return by what a paced side may be too long and too short: 0.95 and 1.05 of it.

    Common practice; for sides paced on open, fairly level ground.
    """
    spread = rules.exact("paced_side_spread", on) * PER_CENT
    return 1 - spread, 1 + spread


def rough_step(rules: RuleBook, on: date) -> Decimal:
    """Return the dollars that a rough price is opened out to, such as 100. Common practice."""
    return rules.number("rough_price_step", on)
