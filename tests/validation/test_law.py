"""Dates and caps of consumer law, against the statutes' own arithmetic. Not legal advice.

16 CFR Part 429 (FTC Cooling-Off Rule), 429.0 and 429.1(a); 5 USC 6103 (federal holidays).
California B&P 7159.5(a)(3); 10 MRS 1487(5); Md. Bus. Reg. 8-617; M.G.L. c.142A s.2(a)(6);
73 P.S. 517.9 (as summarised by a law publisher); R.C. 4722.03 of Ohio (as reported by two law
offices).
"""

from datetime import date, timedelta
from decimal import Decimal

import pytest

from quotegen.money import Money
from quotegen.trade.cancellation import cancel_by, sale_at_home, sign_by
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
            ("OH", "25000", "0", "2500.00"),
            ("OH", "30000", "2000", "4500.00"),  # 10 % and 75 % of the special order
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
            ("OH", "24999.99"),
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
        # Counted by hand on a calendar: Saturdays, Sundays, Thanksgiving and Labor Day left out.
        [("2026-05-14", "2026-05-21"), ("2026-11-25", "2026-12-03"), ("2026-09-04", "2026-09-14"),
         ("2026-10-09", "2026-10-19")],
    )  # fmt: skip
    def test_five_days_in_california(self, signed: str, last_day: str):
        """A buyer of 65 or over has five (Bus. and Prof. Code 7159(e)(6), as reported).

        Writers differ on Saturday (a construction law office says that it is no business day), so
        the later day is given. October 12, 2026 is Columbus Day.
        """
        found = cancel_by(date.fromisoformat(signed), RULES, "CA", over_65=True)
        assert (found.day.isoformat(), found.is_the_later_count) == (last_day, True)

    def test_three_days_in_california(self):
        """Signed on Wednesday: Thu, Fri, and Mon, as the Saturday may not count there."""
        found = cancel_by(date(2026, 3, 4), RULES, "CA")
        assert (found.day, found.is_the_later_count) == (date(2026, 3, 9), True)

    def test_elsewhere_age_changes_nothing(self):
        """Ohio's own law gives three business days to anyone (R.C. 1345.22, text of 2006)."""
        signed = date(2026, 3, 4)
        assert cancel_by(signed, RULES, "OH", over_65=True) == cancel_by(signed, RULES)

    def test_a_notice_by_email(self):
        """California from January 1, 2026 (AB 1327 of 2025, by its digest); not known elsewhere."""
        assert sale_at_home("CA").by_email(date(2026, 1, 1))
        assert not sale_at_home("CA").by_email(date(2025, 12, 31))
        assert not sale_at_home("OH").by_email(date(2026, 5, 1))


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
