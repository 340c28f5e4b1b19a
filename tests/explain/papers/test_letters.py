"""The letters: one for each stage of the job, short, and with every day to answer by."""

from pathlib import Path

import pytest

from quotegen.explain.papers.letters import Letter, letters_of
from quotegen.explain.sheets.price_sheet import date_rows, say_by
from tests.explain.examples import EVERY_EXAMPLE
from tests.pricing import shop

MOST_WORDS = 250


def _letters(folder: Path, **more: object) -> dict[str, Letter]:
    results = shop.results(folder, shop.job(**more), rate_book=shop.book())
    return {letter.name: letter for letter in letters_of(results)}


@EVERY_EXAMPLE
def test_the_letter_of_the_quote_has_price_days_and_payments(job_file: Path):
    """The total, every day that a homeowner waits for, and by when to say yes."""
    results = shop.example_results(job_file)
    letter = letters_of(results)[0]
    assert letter.name == ""
    assert any(results.words.money(results.quote.chosen.total) in line for line in letter.lines)
    assert letter.rows == tuple(date_rows(results))
    assert say_by(results) in letter.last
    assert letter.attached == results.job.company.attach


@EVERY_EXAMPLE
def test_every_letter_is_short_and_can_be_answered(job_file: Path):
    """Each greets, names a phone, and is read in a minute."""
    results = shop.example_results(job_file)
    for letter in letters_of(results):
        said = " ".join((letter.greeting, *letter.lines, *letter.last))
        assert len(said.split()) <= MOST_WORDS, letter.name
        assert results.job.company.phone in said, letter.name
        assert results.job.quote in letter.subject or letter.name, letter.name
        assert letter.head.title == letter.subject


def test_an_open_quote_has_a_reminder(tmp_path):
    """Until it is accepted a second letter reminds of the day; then it is not written."""
    assert set(_letters(tmp_path)) == {"", "reminder"}
    assert set(_letters(tmp_path, accepted={"date": "2026-05-20"})) == {""}


CHANGE = {"number": "1", "date": "2026-06-10", "what": "two steps", "asked_by": "you",
          "amount": "$90"}  # fmt: skip
MEASURED = {"date": "2026-06-08",
            "placements": {"patio": {"add": [{"rectangle": "20 ft x 10 ft"}]}}}  # fmt: skip


@pytest.mark.parametrize(("name", "typed", "attached"), [
    ("measured", {"measured": MEASURED}, "final-measurement.pdf"),
    ("changes", {"changes": [CHANGE]}, "changes.pdf"),
    ("care", {"completed": {"date": "2026-07-10", "poured": "2026-07-01"}}, "care.pdf"),
])  # fmt: skip
def test_each_later_paper_has_its_letter(tmp_path, name: str, typed: dict[str, object],
                                         attached: str):  # fmt: skip
    """The measurement, a change and the hand-over go out with the paper that they are about."""
    letters = _letters(tmp_path, accepted={"date": "2026-05-20"}, **typed)
    assert set(letters) == {"", name}
    assert letters[name].attached == (attached,)


def test_it_greets_by_first_names_where_they_are_typed(tmp_path):
    """Else by the name as it stands on the quote."""
    named = {"name": "Wren Abernathy", "email": "wren@post.example"}
    plain = _letters(tmp_path, customer=named)[""].greeting
    first = _letters(tmp_path, customer={**named, "first_names": "Wren"})[""].greeting
    assert "Wren Abernathy" in plain
    assert "Wren" in first
    assert "Abernathy" not in first


def test_the_companys_own_greeting_comes_first(tmp_path):
    """What the company writes to everyone opens the letter."""
    company = shop.company(greeting="Thank you for showing us the garden.")
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(), company=company)
    assert letters_of(results)[0].lines[0] == "Thank you for showing us the garden."
