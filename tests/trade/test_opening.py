"""Waits after the pour, in whole days."""

from datetime import date

from quotegen.trade import opening
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_the_longer_wait_counts_for_walking() -> None:
    """24 to 48 hours to walk is two days in the plan."""
    assert opening.walk_days(RULES, ON) == 2


def test_waits_grow_with_the_load() -> None:
    """Feet come before furniture, furniture not after cars, cars before trucks."""
    walk, furniture = opening.walk_days(RULES, ON), opening.furniture_days(RULES, ON)
    drive, truck = opening.drive_days(RULES, ON), opening.truck_days(RULES, ON)
    assert walk < furniture <= drive < truck
    assert (drive, truck) == (7, 28)


def test_waits_after_sealing_round_up_to_days() -> None:
    """24 hours are one day and 72 hours are three."""
    assert opening.sealer_walk_days(RULES, ON) == 1
    assert opening.sealer_load_days(RULES, ON) == 3


def test_a_pool_is_filled_when_its_deck_has_cured() -> None:
    """The deck has its curing days before the pool is filled."""
    assert opening.fill_days(RULES, ON) == opening.cure_days(RULES, ON)
