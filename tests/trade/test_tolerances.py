"""How near is near enough."""

from datetime import date
from decimal import Decimal

import pytest

from quotegen.trade.rules import load_rules
from quotegen.trade.tolerances import crack_is_repaired

RULES = load_rules()
ON = date(2026, 11, 24)


@pytest.mark.parametrize(
    ("width", "step", "repaired"),
    [
        ("0.25", "0", False),
        ("0.26", "0", True),
        ("0.03", "0.25", False),
        ("0.03", "0.3125", True),
    ],
)
def test_a_crack_is_repaired_over_either_limit(width: str, step: str, repaired: bool) -> None:
    """A crack at the limit is normal; over it in width or in height it is repaired."""
    assert crack_is_repaired(Decimal(width), Decimal(step), RULES, ON) is repaired
