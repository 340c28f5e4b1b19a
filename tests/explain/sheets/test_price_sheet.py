"""The price sheet: by when to sign so that work starts on its day."""

from pathlib import Path

import pytest

from quotegen.explain.sheets.price_sheet import payments_line, price_sheet, say_by
from quotegen.explain.sheets.views import CustomerView
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop

# Work starts on Monday, June 8, 2026. Who signs on Wednesday, June 3 may cancel until Saturday,
# the 6th; who signs on Thursday may cancel until that Monday.


@pytest.mark.parametrize(
    ("quoted", "holds_days", "asked"),
    [
        ("2026-05-14", "30", True),
        ("2026-06-02", "30", True),
        ("2026-06-03", "30", True),  # on the day of the quote itself
        ("2026-06-04", "30", False),  # too late already
        ("2026-05-14", "21", True),  # the offer holds one day longer than that
        ("2026-05-14", "20", False),  # it ends on that day anyway
    ],
)
def test_sign_by(tmp_path, quoted: str, holds_days: str, *, asked: bool):
    """The day is named from the quote date on, where the offer itself holds longer."""
    job = shop.job(date=quoted, holds_days=holds_days)
    results = shop.results(tmp_path, job, rate_book=shop.book())
    told = say_by(results)
    assert ("Say yes by Wed, Jun 3 to keep these days" in told) == asked
    assert told.endswith("to keep the price.")


def test_who_has_signed_is_not_asked_to(tmp_path):
    """Once the quote is accepted no day to sign is named, but the one when it was."""
    job = shop.job(accepted={"date": "2026-05-20"})
    results = shop.results(tmp_path, job, rate_book=shop.book())
    assert say_by(results) == "You said yes on May 20, 2026."


def test_a_discount_and_a_tax_are_said_as_such(followed_view: CustomerView):
    """Sheet 1 names them; what each comes to stands with its line on sheet 4."""
    said = followed_view.price.tax
    assert "The discount is taken off: Neighbors pour together." in said
    assert "Sales tax is in the total." in said
    assert "$" not in said


def test_what_a_foot_moves_the_price_by(followed_view: CustomerView):
    """7.3688475 is told as about $7.37, before the tax and the rounding that come on top."""
    first = followed_view.price.can_change[0]
    assert first == (
        "The measured area moves it: about $7.37 for each square foot more or less, "
        "before tax and rounding."
    )


def test_each_sentence_on_what_can_change_is_one(winter_view: CustomerView):
    """Each begins with a capital and ends with a full stop."""
    for said in winter_view.price.can_change:
        assert said[0].isupper(), said
        assert said.endswith("."), said


def test_payments_are_told_in_a_line(tmp_path):
    """A sum and its event, a share of what it leaves, and the rest; the events are on sheet 5."""
    company = shop.company(payments=[
        {"id": "deposit", "when": "when you sign", "amount": "$50"},
        {"id": "pour", "when": "at the pour", "share": "60 %"},
        {"id": "last", "when": "at the end"},
    ])  # fmt: skip
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(), company=company)
    assert payments_line(results) == (
        "3 payments: $50.00 when you sign, 60% of what then remains, and the rest, by sheet 5."
    )


@EVERY_EXAMPLE
def test_the_plan_of_sheet_1_has_a_scale(job_file: Path):
    """On paper a ruler reads it; a phone has a drawing of its own."""
    plan = example_view(job_file).price.plan
    assert plan.wide.scale
    assert plan.wide != plan.narrow


def test_the_smallest_job_says_so(tmp_path):
    """Where the minimum is the price, a foot moves nothing."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(minimum="$900"))
    assert price_sheet(results).can_change[0].startswith("This is our smallest job, $900.00.")
