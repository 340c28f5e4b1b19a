"""The last day to cancel a sale made at home. Not legal advice."""

from calendar import SUNDAY
from collections.abc import Container
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

from holidays import country_holidays

from quotegen.trade.rules import RuleBook

FEDERAL_DAYS = "cancel_days"
LONGER_AT_65 = {"CA": "cancel_days_ca_65"}
"""By state: the rule that gives a buyer aged 65 or over more days."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CancelBy:
    """The last day to cancel, and whether the law could also be read as ending sooner."""

    day: date
    is_the_later_count: bool


def cancel_by(signed: date, rules: RuleBook, rule_id: str = FEDERAL_DAYS) -> CancelBy:
    """Return the day at whose midnight the right to cancel ends (16 CFR 429.0, 429.1(a)).

    Three business days after the day of signing; Saturday counts, Sunday and federal holidays
    (5 USC 6103) do not. Where a holiday falls on a weekend and is observed on a weekday, the
    rule does not say whether that weekday counts: the later date is returned and marked as such.
    States may give more days, which another rule names, or start the count later.
    """
    days = int(rules.number(rule_id, signed))
    on_the_day = _count(signed, days, _holidays(signed.year, observed=False))
    with_observed = _count(signed, days, _holidays(signed.year, observed=True))
    return CancelBy(
        day=max(on_the_day, with_observed), is_the_later_count=on_the_day != with_observed
    )


def sign_by(start: date, rules: RuleBook) -> date:
    """Return the last day to sign if the right to cancel is to end before work starts."""
    day = start - timedelta(days=1)
    while cancel_by(day, rules).day >= start:
        day -= timedelta(days=1)
    return day


@cache  # asked for with every combination of choices, and slow to work out
def _holidays(year: int, *, observed: bool) -> frozenset[date]:
    """Return the federal holidays of a year and the next."""
    return frozenset(country_holidays("US", years=(year, year + 1), observed=observed))


def _count(signed: date, days: int, closed: Container[date]) -> date:
    day = signed
    while days:
        day += timedelta(days=1)
        if day.weekday() != SUNDAY and day not in closed:
            days -= 1
    return day
