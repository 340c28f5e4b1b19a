"""Prices, depths and dates: what is asked about, at each edge of what is usual."""

from pathlib import Path

import pytest

from tests.reading.changed import codes_after

SLAB, BROOM, START = "rate: $4.20 / sq ft", "rate: $1.90 / sq ft", "start: 2026-06-08"
PAID = "paid: [{payment: deposit, date: 2026-05-20, amount: $10}]"
STEPS = "by_thickness: [{thickness: 4 in, rate: $42 / sq ft}, {thickness: 5 in, rate: $52 / sq ft}]"


@pytest.mark.parametrize(
    ("before", "after", "codes"),
    [
        (SLAB, "rate: $42.00 / sq ft", ["price-unusual"]),
        (SLAB, "rate: $0.42 / sq ft", ["price-unusual"]),
        (BROOM, "rate: $0 / sq ft", ["price-of-nothing"]),  # no slip, and no price
        (BROOM, "rate: $1450 / sq ft", ["price-unusual"]),
        (BROOM, f"{BROOM}, reseal: $70 / sq ft", ["price-unusual"]),
        (SLAB, STEPS, ["price-unusual"]),  # one cause, said once
        ("thickness: 4 in", "thickness: 4 ft", ["depth-unusual"]),
    ],
)
def test_the_book(tmp_path: Path, before: str, after: str, codes: list[str]):
    """A point slipped in a rate and feet typed for inches are each asked about once."""
    assert codes_after(tmp_path, rate_book=(before, after)) == codes


def test_a_book_that_prices_no_concrete_has_it_in_the_finish(tmp_path: Path):
    """A finish at $9 with no rate for the slab is the price of the slab too, and no slip."""
    rates = "slab: {name: Concrete, covers: [slab], rate: $4.20 / sq ft}"
    other = "stone: {name: Stone, covers: [base], rate: $2.00 / sq ft}"
    text = Path("tests/messages/good/rate-book.yaml").read_text(encoding="utf-8")
    book = text.replace(rates, other).replace(BROOM, "rate: $9.00 / sq ft")
    assert "price-unusual" not in codes_after(tmp_path, rate_book=(text, book))


@pytest.mark.parametrize(
    ("after", "codes"),
    [
        ("start: 2027-05-14", []),  # 365 days
        ("start: 2027-05-15", ["start-far-off"]),
        (f"{START}\naccepted: {{date: 2026-06-13}}", []),  # the last of 30 days
        (f"{START}\naccepted: {{date: 2026-06-14}}", ["accepted-late"]),
        (f"{START}\naccepted: {{date: 2026-05-20}}\n{PAID}", []),
        (f"{START}\naccepted: {{date: 2026-05-21}}\n{PAID}", ["paid-early"]),
        (f"{START}\n{PAID}", ["paid-early"]),
        (f"{START}\nholds_days: 60\naccepted: {{date: 2026-06-14}}", []),
    ],
)
def test_the_dates_of_a_job(tmp_path: Path, after: str, codes: list[str]):
    """Work within a year, an acceptance while the offer holds, and money after it are usual."""
    assert codes_after(tmp_path, job=(START, after)) == codes


@pytest.mark.parametrize(
    ("quoted", "codes"), [("2029-01-31", []), ("2029-02-01", ["book-old"])]
)  # fmt: skip
def test_an_old_book(tmp_path: Path, quoted: str, codes: list[str]):
    """1,095 days after 2026-02-01 is 2029-01-31; from then on the book is asked about."""
    dates = f"date: {quoted}\nstart: 2029-06-08"
    assert codes_after(tmp_path, job=(f"date: 2026-05-14\n{START}", dates)) == codes


@pytest.mark.parametrize(
    ("fall", "codes"),
    [("3 in per ft", []), ("25 %", []), ("25.1 %", ["fall-unusual"]), ("100 %", ["fall-unusual"])],
)
def test_a_steep_fall(tmp_path: Path, fall: str, codes: list[str]):
    """3 in per ft is one in four, or 25 %; from there on the unit is asked about."""
    falls = ("fall: 1/4 in per ft", f"fall: {fall}")
    assert codes_after(tmp_path, job=falls) == codes
