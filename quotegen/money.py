"""Money: Decimal from text, and the only rounding to cents."""

import re
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal
from typing import NewType

Money = NewType("Money", Decimal)

ZERO = Money(Decimal("0.00"))
_CENT = Decimal("0.01")
_MONEY = re.compile(r"\$?(?P<whole>\d{1,3}(?:,\d{3})+|\d+)(?P<part>\.\d+)?")


def to_cents(amount: Decimal) -> Money:
    """Round an amount of dollars half-up to the cent: the rounding of a line, done once."""
    return Money(amount.quantize(_CENT, rounding=ROUND_HALF_UP))


def down_to_cents(amount: Decimal) -> Money:
    """Round an amount of dollars down to the cent: for a part that must not pass its share."""
    return Money(amount.quantize(_CENT, rounding=ROUND_DOWN))


def total(amounts: tuple[Money, ...]) -> Money:
    """Add amounts that are already in cents."""
    return Money(sum(amounts, ZERO))


def parse_money(text: str) -> Decimal | None:
    """Read `$9.50` or `9,500`; None if the text is no sum of money.

    Parts of a cent are kept, since a rate such as `$0.125 / sq ft` may have them.
    """
    match = _MONEY.fullmatch(text.strip())
    if match is None:
        return None
    return Decimal(match["whole"].replace(",", "") + (match["part"] or ""))
