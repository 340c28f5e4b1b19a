"""The last day to cancel a sale made at home. Not legal advice."""

from calendar import SATURDAY, SUNDAY
from collections.abc import Container, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from importlib.resources import files
from itertools import product
from types import MappingProxyType

from holidays import country_holidays

from quotegen.trade.rules import RuleBook, plain_yaml

FEDERAL_DAYS = "cancel_days"


@dataclass(frozen=True, slots=True, kw_only=True)
class SaleAtHome:
    """How a state's right to cancel a sale made at home differs from the federal rule.

    Attributes:
        longer_at_65: the rule that gives a buyer of 65 or over more days; empty where none does.
        saturday_unsettled: sources differ on whether Saturday is a business day.
        email_from: the day from which a notice may be sent by e-mail, where a law says so.
    """

    longer_at_65: str = ""
    saturday_unsettled: bool = False
    email_from: date | None = None

    def by_email(self, on: date) -> bool:
        """Whether the law lets a notice of cancellation be sent by e-mail on a day."""
        return self.email_from is not None and self.email_from <= on


@dataclass(frozen=True, slots=True, kw_only=True)
class CancelBy:
    """The last day to cancel, and whether the law could also be read as ending sooner."""

    day: date
    is_the_later_count: bool


def sale_at_home(state: str | None) -> SaleAtHome:
    """Return how a state differs; one that is not known to differ is as the federal rule."""
    return _states().get(state or "", SaleAtHome())


def cancel_by(
    signed: date, rules: RuleBook, state: str | None = None, *, over_65: bool = False
) -> CancelBy:
    """Return the day at whose midnight the right to cancel ends (16 CFR 429.0, 429.1(a)).

    Three business days after the day of signing; Saturday counts, Sunday and federal holidays
    (5 USC 6103) do not. Where a holiday falls on a weekend and is observed on a weekday, the
    rule does not say whether that weekday counts, and where sources on a state differ on
    Saturday: the later date is returned and marked as such. A state may start the count later.
    """
    here = sale_at_home(state)
    longer = here.longer_at_65 if over_65 else ""
    days = int(rules.number(longer or FEDERAL_DAYS, signed))
    off = [{SUNDAY}, {SATURDAY, SUNDAY}] if here.saturday_unsettled else [{SUNDAY}]
    counts = {
        _count(signed, days, _holidays(signed.year, observed=observed), weekdays)
        for observed, weekdays in product((False, True), off)
    }
    return CancelBy(day=max(counts), is_the_later_count=len(counts) > 1)


def sign_by(start: date, rules: RuleBook, state: str | None = None) -> date:
    """Return the last day to sign if the right to cancel is to end before work starts."""
    day = start - timedelta(days=1)
    while cancel_by(day, rules, state).day >= start:
        day -= timedelta(days=1)
    return day


@cache
def _states() -> Mapping[str, SaleAtHome]:
    """Read how states differ, once."""
    entry = files("quotegen.trade") / "law" / "sales_at_home.yaml"
    data = plain_yaml(entry.read_text(encoding="utf-8"))
    return MappingProxyType({
        state: SaleAtHome(
            longer_at_65=fields["longer_at_65"],
            saturday_unsettled=fields["saturday_counts"] == "unsettled",
            email_from=date.fromisoformat(fields["by_email"].removeprefix("from ")),
        )
        for state, fields in data.items()
    })  # fmt: skip


@cache  # asked for with every combination of choices, and slow to work out
def _holidays(year: int, *, observed: bool) -> frozenset[date]:
    """Return the federal holidays of a year and the next."""
    return frozenset(country_holidays("US", years=(year, year + 1), observed=observed))


def _count(signed: date, days: int, closed: Container[date], weekdays: Container[int]) -> date:
    day = signed
    while days:
        day += timedelta(days=1)
        if day.weekday() not in weekdays and day not in closed:
            days -= 1
    return day
