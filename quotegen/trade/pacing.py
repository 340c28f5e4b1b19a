"""How rough a ballpark price is."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.trade.book import PER_CENT, RuleBook


def paced_factors(rules: RuleBook, on: date) -> tuple[Fraction, Fraction]:
    """Return the factors from a paced side to the shortest and longest it may be: 0.95 and 1.05.

    Common practice, for sides paced on open, fairly level ground.
    """
    spread = rules.exact("paced_side_spread", on) * PER_CENT
    return 1 - spread, 1 + spread


def rough_step(rules: RuleBook, on: date) -> Decimal:
    """Return the dollars that a ballpark price is rounded out to, such as 100. Common practice."""
    return rules.number("rough_price_step", on)
