"""The price sheet: by when to sign so that work starts on its day."""

import pytest

from quotegen.explain.sheets.price_sheet import price_sheet
from quotegen.explain.sheets.views import CustomerView
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
    told = price_sheet(results).keep_dates.replace("\N{NO-BREAK SPACE}", " ")
    assert ("Wed, Jun 3" in told, told != "") == (asked, asked)


def test_who_has_signed_is_not_asked_to(tmp_path):
    """Once the quote is accepted no day to sign is named."""
    job = shop.job(accepted={"date": "2026-05-20"})
    results = shop.results(tmp_path, job, rate_book=shop.book())
    assert price_sheet(results).keep_dates == ""


def test_a_discount_is_said_as_such(followed_view: CustomerView):
    """Sheet 1 names the discount and what it takes off."""
    said = "A discount of $50.91 is taken off: Neighbors pour together."
    assert said in followed_view.price.sentence
