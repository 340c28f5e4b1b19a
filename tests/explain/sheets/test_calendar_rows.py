"""The calendar of sheet 5: in the order of the days, and with every payment once."""

import re
from decimal import Decimal
from pathlib import Path

from quotegen.explain.sheets.calendar_rows import calendar_rows
from quotegen.explain.sheets.views import CustomerView, DayRow
from tests.explain.examples import EVERY_EXAMPLE
from tests.pricing import shop


def _rows(folder: Path, **more: object) -> list[DayRow]:
    files = {"company": shop.company(payments=more.pop("payments"))} if "payments" in more else {}
    return list(
        calendar_rows(shop.results(folder, shop.job(**more), rate_book=shop.book(), **files))
    )


def _paid(rows: list[DayRow]) -> list[tuple[str, str]]:
    return [(row.day, row.amount) for row in rows if row.amount]


@EVERY_EXAMPLE
def test_the_payments_add_up_to_the_price(job_file: Path):
    """Each payment stands in one row, in the order in which it is due, and together they are it."""
    results = shop.example_results(job_file)
    amounts = [part for row in calendar_rows(results) for part in row.amount.split(" + ") if part]
    assert amounts == [results.words.money(one.amount) for one in results.quote.payments]
    cents = (Decimal(re.sub(r"[$,]", "", amount)) for amount in amounts)
    assert sum(cents) == results.quote.chosen.total


@EVERY_EXAMPLE
def test_each_visit_and_each_opening_has_its_day(job_file: Path):
    """Every visit by its name, every use by its day, and what the homeowner has to do."""
    results = shop.example_results(job_file)
    words, rows = results.words, list(calendar_rows(results))
    for visit in results.chosen_visits:
        days = words.days(visit.first_day, visit.last_day)
        assert any(row.day == days and visit.name in row.we for row in rows), visit.name
    for opened in results.openings:
        said, day = words(f"opening_{opened.use.value}"), words.days(opened.day, opened.day)
        assert any(row.day == day and said in row.you for row in rows), said


def test_until_it_is_signed_the_first_row_asks_for_a_yes(tmp_path):
    """200 sq ft at $1.00, a deposit of 10 %: it is paid by the day that keeps the days."""
    payments = [{"id": "deposit", "when": "when you sign", "share": "10 %"},
                {"id": "last", "when": "at the end"}]  # fmt: skip
    rows = _rows(tmp_path, payments=payments)
    assert rows[0].day == "By Wed, Jun 3"
    assert (rows[0].pay, rows[0].amount) == ("When you sign.", "$20.00")
    assert _paid(rows)[-1] == ("Last of all", "$180.00")


def test_once_it_is_signed_the_deposit_stands_on_that_day(tmp_path):
    """Signed on Wednesday, May 20: nobody is asked to sign, and the deposit comes first."""
    payments = [{"id": "deposit", "when": "when you sign", "share": "10 %"},
                {"id": "last", "when": "at the end"}]  # fmt: skip
    rows = _rows(tmp_path, payments=payments, accepted={"date": "2026-05-20"})
    assert _paid(rows) == [("Wed, May 20", "$20.00"), ("Last of all", "$180.00")]
    assert rows[0].day == "Wed, May 20"
    assert not any("Say yes" in row.you for row in rows)


def test_one_payment_alone_is_not_asked_for_at_signing(tmp_path):
    """Who pays all at the end pays nothing with the signature."""
    rows = _rows(tmp_path, payments=[{"id": "all", "when": "at the end"}])
    assert rows[0].amount == ""
    assert _paid(rows) == [("Last of all", "$200.00")]


def test_one_payment_alone_stays_one_once_it_is_signed(tmp_path):
    """The day of the signature is not the day of a payment that is due at the end."""
    payments = [{"id": "all", "when": "at the end"}]
    rows = _rows(tmp_path, payments=payments, accepted={"date": "2026-05-20"})
    assert _paid(rows) == [("Last of all", "$200.00")]


def test_a_sum_at_signing(followed_view: CustomerView):
    """$500 as a sum, 60 % of the 1290 that it leaves, and the rest: 1790 together."""
    amounts = [row.amount for row in followed_view.days.rows if row.amount]
    assert amounts == ["$500.00", "$774.00", "$516.00"]


def test_a_wish_stands_on_its_day(tmp_path):
    """What the homeowner asked for is on the calendar by its day."""
    rows = _rows(tmp_path, wish={"what": "a party", "by": "2026-07-04"})
    assert [row.day for row in rows if "a party" in row.you] == ["Sat, Jul 4"]
