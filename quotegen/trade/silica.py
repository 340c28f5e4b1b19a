"""Dust from cutting concrete: what 29 CFR 1926.1153, Table 1, asks of a saw with water."""

from datetime import date
from decimal import Decimal
from enum import StrEnum

from quotegen.trade.book import RuleBook


class Saw(StrEnum):
    """The saws of the table, each with water to its blade."""

    WALK_BEHIND = "walk-behind saw"
    HANDHELD = "handheld saw"
    DRIVABLE = "drivable saw"


def respirator_factor(
    saw: Saw, *, outdoors: bool, hours_a_day: Decimal, rules: RuleBook, on: date
) -> int | None:
    """Protection factor of the respirator for a saw with water, 0 for none.

    29 CFR 1926.1153(c), Table 1 (ii), (iv), (v). None where the table does not allow the tool:
    a drivable saw indoors. A dry early-entry saw is not in it and follows 1926.1153(d).
    """
    table = rules.table("silica_respirator", on)
    row = f"{saw.value} {'outdoors' if outdoors else 'indoors'}"
    if hours_a_day > rules.number("silica_short_shift", on) and f"{row} over limit" in table:
        row = f"{row} over limit"
    return int(table[row]) if row in table else None
