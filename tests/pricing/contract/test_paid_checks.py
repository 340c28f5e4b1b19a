"""Money that came in against what was due: $1,100, of which $110 at signing."""

from pathlib import Path
from typing import Any

import pytest

from quotegen.pipeline import figure
from tests.pricing import shop
from tests.pricing.signed import BOOK, measured
from tests.world import write_world

ACCEPTED = {"date": "2026-05-20"}


def _paid(folder: Path, *payments: tuple[str, str], **more: Any) -> list[str]:
    paid = [{"payment": p, "date": "2026-05-20", "amount": amount} for p, amount in payments]
    job = write_world(folder, shop.job(paid=paid, accepted=ACCEPTED, **more), rate_book=BOOK)
    problems = figure(job, shop.shared()).problems
    return [one.message for one in problems if one.code.startswith("paid-")]


def test_more_than_the_deposit(tmp_path):
    """Both sums are said, and the whole price is not said beside it."""
    assert _paid(tmp_path, ("deposit", "$9467")) == [
        "$9,467.00 is paid for `deposit`, and $110.00 is due"
    ]


@pytest.mark.parametrize("amount", ["$95", "$110", "$115"])
def test_a_deposit_as_it_comes(tmp_path, amount: str):
    """Less, just as much, and a check that is rounded up are nothing to ask about."""
    assert _paid(tmp_path, ("deposit", amount)) == []


def test_a_payment_of_the_raised_price(tmp_path):
    """300 sq ft are $1,400: $110 stays, and 40 of the other 90 parts of $1,290 are $573.33."""
    paid = (("deposit", "$110"), ("forms", "$573.33"))
    assert _paid(tmp_path, *paid, measured=measured("300")) == []


def test_more_than_the_price_in_all(tmp_path):
    """Each payment was right when it came; $600 taken off after all were paid is said once."""
    paid = (("deposit", "$110"), ("forms", "$440"), ("pour", "$385"), ("final", "$165"))
    change = {"number": "1", "date": "2026-07-25", "what": "no edge", "asked_by": "you",
              "amount": "-$600"}  # fmt: skip
    assert _paid(tmp_path, *paid, changes=[change]) == [
        "$1,100.00 is paid in all, and the price is $500.00"
    ]
