"""Whole days to wait after the pour, or after sealing, in mild weather.

All are common practice. Below about 50 °F they are longer, and a product label comes first.
Where a rule gives a range, the longer wait counts. Hours round up to whole days.
"""

from datetime import date, timedelta
from math import ceil

from quotegen.trade.book import RuleBook


def walk_days(rules: RuleBook, on: date) -> int:
    """Days until people may walk on a new slab (24 to 48 hours)."""
    return _days_of_hours(int(rules.range("walk_wait", on).most))


def furniture_days(rules: RuleBook, on: date) -> int:
    """Days until furniture and grills may stand on a new slab."""
    return int(rules.number("furniture_wait", on))


def drive_days(rules: RuleBook, on: date) -> int:
    """Days until cars may stand on a new slab. Not for trucks, and not on the edges."""
    return int(rules.number("drive_wait", on))


def fill_days(rules: RuleBook, on: date) -> int:
    """Days until a pool inside a new deck may be filled; the pool builder's date comes first."""
    return int(rules.number("fill_wait", on))


def truck_days(rules: RuleBook, on: date) -> int:
    """Days until heavy trucks may stand on a slab that was made for them."""
    return int(rules.number("truck_wait", on))


def cure_days(rules: RuleBook, on: date) -> int:
    """Days for which a new slab is kept from drying out (UFGS 03300N, Type I cement)."""
    return int(rules.number("cure_wait", on))


def color_days(rules: RuleBook, on: date) -> int:
    """Days of warm, dry weather until the color of new concrete may be judged."""
    return timedelta(weeks=int(rules.number("color_wait_warm", on))).days


def sealer_walk_days(rules: RuleBook, on: date) -> int:
    """Days after sealing until people may walk on the slab."""
    return _days_of_hours(int(rules.number("sealer_walk_wait", on)))


def sealer_load_days(rules: RuleBook, on: date) -> int:
    """Days after sealing until furniture or cars may stand on the slab."""
    return _days_of_hours(int(rules.number("sealer_load_wait", on)))


def _days_of_hours(hours: int) -> int:
    return ceil(timedelta(hours=hours) / timedelta(days=1))


def inspection_days(rules: RuleBook, on: date) -> int:
    """Working days between the forms and the pour of a pool deck, for the bonding inspection."""
    return int(rules.number("bonding_inspection", on))
