"""Dates and caps of consumer law, against the statutes' own arithmetic. Not legal advice.

16 CFR Part 429 (FTC Cooling-Off Rule), 429.0 and 429.1(a); 5 USC 6103 (federal holidays).
California B&P 7159.5(a)(3); 10 MRS 1487(5); Md. Bus. Reg. 8-617; M.G.L. c.142A s.2(a)(6);
73 P.S. 517.9 (the last as summarised by a law publisher).
"""

from datetime import date, timedelta
from decimal import Decimal

import pytest

from quotegen.money import Money
from quotegen.trade.cancellation import LONGER_AT_65, cancel_by, sign_by
from quotegen.trade.deposits import deposit_cap
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 5, 14)


class TestDepositCaps:
    """The cap is rounded down to the cent, so that it is never passed by a part of one."""

    @pytest.mark.parametrize(
        ("state", "price", "special_order", "most"),
        [
            ("CA", "8500", "0", "850.00"),
            ("CA", "10000", "0", "1000.00"),
            ("CA", "24000", "0", "1000.00"),
            ("CA", "24000", "9000", "1000.00"),  # special orders are no exception there
            ("MD", "10000", "0", "3333.33"),
            ("ME", "10000", "0", "3333.33"),
            ("MA", "24000", "9000", "9000.00"),
            ("MA", "24000", "5000", "8000.00"),
            ("PA", "24000", "2500", "10500.00"),
        ],
    )
    def test_cap(self, state: str, price: str, special_order: str, most: str):
        """Each state's worked figure comes out to the cent, and cites the statute."""
        cap = deposit_cap(state, Money(Decimal(price)), Decimal(special_order), RULES, ON)
        assert cap is not None
        assert str(cap.most) == most
        assert cap.reference.clause

    @pytest.mark.parametrize(
        ("state", "price"),
        [
            ("PA", "4800"),
            ("PA", "5000"),
            ("ME", "3000"),
            ("MA", "1000"),
            ("OH", "24000"),
            ("", "1"),
        ],
    )
    def test_no_cap(self, state: str, price: str):
        """At or under a state's threshold, and in a state without a known cap, there is none."""
        assert deposit_cap(state, Money(Decimal(price)), Decimal(0), RULES, ON) is None

    def test_just_over_the_threshold(self):
        """One dollar over $5,000 brings the cap of Pennsylvania: $1,667.00."""
        cap = deposit_cap("PA", Money(Decimal(5001)), Decimal(0), RULES, ON)
        assert cap is not None
        assert str(cap.most) == "1667.00"


class TestCancellation:
    """ "Business day": any calendar day except Sunday or a federal holiday (16 CFR 429.0)."""

    @pytest.mark.parametrize(
        ("signed", "last_day"),
        [
            ("2026-03-02", "2026-03-05"),  # Monday: Tue, Wed, Thu
            ("2026-03-04", "2026-03-07"),  # Wednesday: Saturday counts
            ("2026-03-06", "2026-03-10"),  # Friday: Sat, Mon, Tue
            ("2026-03-07", "2026-03-11"),  # Saturday
            ("2026-03-08", "2026-03-11"),  # Sunday
            ("2026-05-21", "2026-05-26"),  # Memorial Day between
            ("2026-06-18", "2026-06-23"),  # Juneteenth, a Friday
            ("2026-09-04", "2026-09-09"),  # Labor Day
            ("2026-11-09", "2026-11-13"),  # Veterans Day
            ("2026-11-25", "2026-11-30"),  # Thanksgiving
            ("2026-12-23", "2026-12-28"),  # Christmas Day
            ("2027-01-15", "2027-01-20"),  # Martin Luther King Jr. Day
        ],
    )
    def test_last_day(self, signed: str, last_day: str):
        """Three business days after the day of signing, Saturday counted, holidays not."""
        found = cancel_by(date.fromisoformat(signed), RULES)
        assert (found.day.isoformat(), found.is_the_later_count) == (last_day, False)

    def test_observed_holiday(self):
        """4 July 2026 is a Saturday, observed on Friday: the rule is silent, the later holds."""
        found = cancel_by(date(2026, 7, 2), RULES)
        assert (found.day, found.is_the_later_count) == (date(2026, 7, 8), True)

    @pytest.mark.parametrize(
        ("signed", "last_day"),
        # Counted by hand on a calendar: Sundays, Thanksgiving and Labor Day left out.
        [("2026-05-14", "2026-05-20"), ("2026-11-25", "2026-12-02"), ("2026-09-04", "2026-09-11")],
    )
    def test_five_days_in_california(self, signed: str, last_day: str):
        """A buyer of 65 or over has five (Bus. and Prof. Code 7159(e)(6), from memory)."""
        found = cancel_by(date.fromisoformat(signed), RULES, LONGER_AT_65["CA"])
        assert found.day.isoformat() == last_day


@pytest.mark.parametrize(
    ("start", "last"),
    # A Wednesday; a Sunday, whose three days are Monday to Wednesday; Thanksgiving Day itself.
    [("2026-06-08", "2026-06-03"), ("2026-07-09", "2026-07-05"), ("2026-12-01", "2026-11-26")],
)
def test_sign_by(start: str, last: str):
    """Counted by hand: Sundays, July 4 (also as observed) and Thanksgiving do not count."""
    day = date.fromisoformat(start)
    found = sign_by(day, RULES)
    assert found.isoformat() == last
    assert cancel_by(found, RULES).day < day <= cancel_by(found + timedelta(days=1), RULES).day
