"""Weather beyond the published cases: what lies between two rows, and how many parts to pour."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.trade import weather
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 25)


def test_between_two_rows_hours_run_along_a_line():
    """Halfway from 70 to 90 °F the wait is halfway from 2.75 to 1.75 h."""
    assert weather.float_wait_hours(Decimal(80), RULES, ON) == Decimal("2.25")


def test_outside_a_table_nothing_is_said():
    """Under 30 °F no hours are known, so neither is the window between them."""
    assert weather.set_hours(Decimal(29), RULES, ON) is None
    assert weather.finishing_hours(Decimal(29), RULES, ON) is None


@pytest.mark.parametrize(("area", "parts"), [("600", 1), ("600.1", 2), ("1200", 2), ("100", 1)])
def test_a_slab_is_placed_in_as_many_parts_as_the_window_asks(area: str, parts: int):
    """A crew that finishes 200 sq ft an hour has 600 sq ft in a window of 3 h."""
    assert weather.finished_sqft(Fraction(200), Decimal(3)) == 600
    assert weather.parts_needed(Decimal(area), Fraction(200), Decimal(3)) == parts


def test_winter_is_three_months():
    """From the first of December to the end of February, and only where weathering is severe."""
    days = [date(2026, 11, 30), date(2026, 12, 1), date(2027, 2, 28), date(2027, 3, 1)]
    said = [weather.frost_counted_on(day, "MI", RULES, ON) for day in days]
    assert said == [False, True, True, False]
    assert not any(weather.frost_counted_on(day, state, RULES, ON) for day in days
                   for state in ("TX", ""))  # fmt: skip
