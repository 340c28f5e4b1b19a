"""What the concrete must be, beyond the published cases."""

from datetime import date
from decimal import Decimal

from quotegen.trade import mix
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_weather_limits_are_not_passed_when_met() -> None:
    """40 °F air is not cold yet, and 95 °F concrete is not too hot yet."""
    assert not mix.is_cold(Decimal(40), RULES, ON)
    assert mix.is_cold(Decimal("39.9"), RULES, ON)
    assert not mix.is_too_hot(Decimal(95), RULES, ON)
    assert mix.is_too_hot(Decimal("95.1"), RULES, ON)
