"""What the concrete must be, beyond the published cases."""

from datetime import date
from decimal import Decimal

import pytest

from quotegen.trade import mix
from quotegen.trade.mix import Weathering
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_frost_asks_for_air() -> None:
    """Air is asked where weathering is moderate or severe, and not where it is negligible."""
    assert mix.air_percent(Weathering.NEGLIGIBLE, RULES, ON) is None
    assert mix.air_percent(Weathering.SEVERE, RULES, ON) == mix.air_percent(
        Weathering.MODERATE, RULES, ON
    )


def test_salt_is_what_limits_water() -> None:
    """No salt, no limit; salt before the edition that set one has no answer."""
    assert mix.water_cement_max(deicers=False, rules=RULES, on=ON) is None
    with pytest.raises(LookupError, match="deicer_water_cement starts on 2020-01-01"):
        mix.water_cement_max(deicers=True, rules=RULES, on=date(2019, 12, 31))


def test_weather_limits_are_not_passed_when_met() -> None:
    """40 °F air is not cold yet, and 95 °F concrete is not too hot yet."""
    assert not mix.is_cold(Decimal(40), RULES, ON)
    assert mix.is_cold(Decimal("39.9"), RULES, ON)
    assert not mix.is_too_hot(Decimal(95), RULES, ON)
    assert mix.is_too_hot(Decimal("95.1"), RULES, ON)
