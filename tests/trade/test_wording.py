"""Numbers and units of rules in words."""

from decimal import Decimal

import pytest

from quotegen.trade.wording import number_text, unit_key, with_unit


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        ("0.25", "in", "1/4"),
        ("7.75", "in", "7-3/4"),
        ("4", "in", "4"),
        ("0.3", "in", "0.3"),
        ("0.25", "ft", "0.25"),
        ("4500", "psi", "4,500"),
        ("1.50", "times", "1.5"),
    ],
)
def test_numbers(value: str, unit: str, text: str):
    """Fractions where a tape or a plant has them, decimals elsewhere."""
    assert number_text(Decimal(value), unit) == text


@pytest.mark.parametrize(
    ("number", "unit", "text"),
    [("2", "%", "2%"), ("1", "day", "1 day"), ("2", "day", "2 days"), ("0.45", "ratio", "0.45")],
)
def test_units(number: str, unit: str, text: str):
    """Counted units take an s, a ratio stands alone."""
    assert with_unit(number, unit, one=number == "1") == text


@pytest.mark.parametrize(
    ("unit", "key"), [("in per ft", "in_per_ft"), ("%", "percent"), ("°F", "fahrenheit")]
)
def test_a_unit_is_a_key_of_content(unit: str, key: str):
    """Letters and digits only."""
    assert unit_key(unit) == key
