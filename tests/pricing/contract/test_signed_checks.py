"""What both signed does not move: 200 sq ft for $1,100, held against what the files come to."""

from pathlib import Path
from typing import Any

import pytest

from quotegen.pipeline import figure
from quotegen.problem import Problem, Severity
from tests.pricing import shop
from tests.pricing.signed import BOOK, QUOTED, RATES, measured
from tests.publish.built import build
from tests.world import write_world

STEP = {"number": "1", "date": "2026-06-10", "what": "a step", "asked_by": "you", "rate": "step",
        "quantity": "1"}  # fmt: skip
DEARER = shop.book(RATES, {"plain": {**shop.PLAIN, "rate": "$1.50 / sq ft"}})
"""The same book with $0.50 a square foot more: 200 sq ft come to $1,200."""


def accepted(total: str | None = f"${QUOTED}", **more: Any) -> dict[str, Any]:
    """Return an acceptance as typed."""
    return {"date": "2026-05-20", **more} | ({"total": total} if total else {})


def said(folder: Path, book: str = BOOK, **more: Any) -> list[Problem]:
    """Return what is said of the signed totals of a job."""
    job = write_world(folder, shop.job(**more), rate_book=book)
    problems = figure(job, shop.shared()).problems
    return [one for one in problems if one.code in {"signed-drifted", "accepted-without-total"}]


@pytest.mark.parametrize("total", ["$1,100.00", "$1100", "$1,100"])
def test_a_total_that_comes_out(tmp_path: Path, total: str):
    """However the sum is written, nothing is said of a price that stands."""
    assert said(tmp_path, accepted=accepted(total)) == []


@pytest.mark.parametrize("total", ["$1,099.99", "$1,100.01"])
def test_a_cent_is_an_error(tmp_path: Path, total: str):
    """A signed price holds to the cent, in both directions, and no results come of another."""
    job = write_world(tmp_path, shop.job(accepted=accepted(total)), rate_book=BOOK)
    made = figure(job, shop.shared())
    assert [one.code for one in made.problems if one.severity is Severity.ERROR] == [
        "signed-drifted"
    ]
    assert made.results is None


def test_a_total_for_the_finish_and_extras_that_were_taken(tmp_path: Path):
    """Fancy for 200 sq ft more than plain by $1, rinsed and filmed by $0.30, a third trip, a step.

    By hand: 1,100 + 200 + 60 + 50 + 200 = 1,610.
    """
    book = shop.book(RATES | shop.RINSE_AND_FILM, {"plain": shop.PLAIN, "fancy": shop.FANCY})
    offer: dict[str, Any] = {"compare": ["fancy"], "extras": {"step": "1"}}
    taken: dict[str, Any] = {"finish": "fancy", "extras": ["step"]}
    assert said(tmp_path, book, accepted=accepted("$1,610.00", **taken), **offer) == []
    (problem,) = said(tmp_path, book, accepted=accepted(**taken), **offer)
    assert problem.message == (
        "the quote at `fancy` with `step` was signed for $1,100.00; today's files come to $1,610.00"
    )


def test_without_a_total_the_line_is_said(tmp_path: Path):
    """A warning has the line to type, and the line typed is silent."""
    extras = {"step": "1"}
    (problem,) = said(tmp_path, accepted=accepted(None, extras=["step"]), extras=extras)
    assert problem.severity is Severity.WARNING
    line = "accepted: {date: 2026-05-20, extras: [step], total: $1300.00}"
    assert f"`{line}`" in problem.hint
    job = write_world(tmp_path, shop.job(extras=extras) + line, rate_book=BOOK)
    assert shop.faults(job) == ()


def test_a_quote_that_nobody_signed_is_asked_nothing(tmp_path: Path):
    """Before acceptance a price may move as it likes."""
    assert said(tmp_path, DEARER) == []


@pytest.mark.parametrize(("total", "codes"), [("$1130", []), ("$1,100", ["signed-drifted"])])
def test_the_total_after_measuring(tmp_path: Path, total: str, codes: list[str]):
    """10 sq ft more at $3 are $30: the price that both signed on the set forms is held too."""
    again = measured("210") | {"total": total}
    problems = said(tmp_path, accepted=accepted(), measured=again)
    assert [one.code for one in problems] == codes
    assert [one.path for one in problems] == ["measured.total"] * len(codes)


def test_a_step_that_became_dearer_after_it_was_signed(tmp_path: Path):
    """Its rate is in no line of the quote, so the change alone moves: $1,300 became $1,350."""
    dearer = shop.book({**RATES, "step": shop.rate("$250 each", "steps", applies="asked")})
    signed: dict[str, Any] = {"accepted": accepted(), "changes": [STEP | {"total": "$1,300"}]}
    assert said(tmp_path, **signed) == []
    (problem,) = said(tmp_path, dearer, **signed)
    assert problem.path == "changes[0].total"
    assert problem.message == (
        "the contract after change 1 was signed for $1,300.00; today's files come to $1,350.00"
    )


def test_the_first_that_moved_is_said_alone(tmp_path: Path):
    """A moved quote moves all that starts from it, which is no news."""
    changes = [STEP | {"total": "$1,300"}]
    (problem,) = said(tmp_path, DEARER, accepted=accepted(), changes=changes)
    assert problem.path == "accepted.total"


def test_a_change_that_was_signed_before_measuring(tmp_path: Path):
    """Its total of that day holds: 1,100 + 200, and then 10 sq ft at $3 more."""
    early = STEP | {"date": "2026-06-01", "total": "$1,300"}
    forms = measured("210") | {"total": "$1,330"}
    assert said(tmp_path, accepted=accepted(), measured=forms, changes=[early]) == []
    forms = measured("210") | {"total": "$1,130"}
    (problem,) = said(tmp_path, accepted=accepted(), measured=forms, changes=[early])
    assert problem.path == "measured.total"


@pytest.mark.usefixtures("unprinted")
def test_a_rate_book_that_is_edited_after_signing(tmp_path: Path):
    """The edit is refused with both figures; a second book beside the first gives the same papers.

    The story of an owner: quote, signature with its total, a change order; new prices in July.
    """
    job_text = shop.job(accepted=accepted(), changes=[STEP | {"total": "$1,300"}])
    job = write_world(tmp_path, job_text, rate_book=BOOK)
    before = build((job,), shop.shared()).packages["T-1"].files
    assert any(path.startswith("customer/changes") for path in before)

    (tmp_path / "rate-book.yaml").write_text(DEARER, encoding="utf-8")
    edited = build((job,), shop.shared())
    (problem,) = (one for one in edited.problems if one.code == "signed-drifted")
    assert not edited.packages
    assert problem.message == (
        "the quote at `plain` was signed for $1,100.00; today's files come to $1,200.00"
    )

    (tmp_path / "rate-book.yaml").write_text(BOOK, encoding="utf-8")
    july = DEARER.replace("2026-01-01", "2026-07-01")
    (tmp_path / "rate-book-2026-07.yaml").write_text(july, encoding="utf-8")
    assert shop.faults(job) == ()
    assert build((job,), shop.shared()).packages["T-1"].files == before


BARE = shop.book({"slab": shop.rate("$10 / sq ft", "slab")})


@pytest.mark.parametrize(("second", "places"), [("0.00", []), ("0.01", ["changes[1]"])])
def test_a_price_under_nothing(tmp_path, second: str, places: list[str]):
    """The first change takes off the whole price; a cent more is an error at that change."""
    slab = shop.placement("20 ft x 10 ft")
    priced = shop.quote(tmp_path, shop.job(slab), rate_book=BARE).chosen.total
    changes = [
        {"number": n, "date": "2026-06-01", "what": "less", "asked_by": "us", "amount": f"-${off}"}
        for n, off in ((1, priced), (2, second))
    ]
    typed = shop.job(slab, accepted={"date": "2026-05-20"}, changes=changes)
    job = write_world(tmp_path, typed, rate_book=BARE)
    found = figure(job, shop.shared()).problems
    assert [one.path for one in found if one.code == "price-under-nothing"] == places


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
