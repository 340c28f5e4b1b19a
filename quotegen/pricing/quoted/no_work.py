"""The scopes of lines that pay for no work: no rate covers them."""

MINIMUM = "minimum"
"""What a small job is topped up by. A page explains it."""
DISCOUNT = "discount"
"""What is taken off on purpose."""
TAX = "tax"
"""Collected, and handed on."""
ROUNDING = "rounding"
"""What makes the total round."""

NO_WORK = frozenset({MINIMUM, DISCOUNT, TAX, ROUNDING})
AFTER_THE_PRICE = frozenset({DISCOUNT, TAX, ROUNDING})
"""What follows the price of the work and its minimum: it has no page, only a line."""
