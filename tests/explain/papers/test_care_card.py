"""The care hand-over: its days count from what was done, and it is for what was accepted."""

from pathlib import Path
from typing import Any

from quotegen.explain.papers.care_card import CareCard, care_card
from tests.pricing import shop


def _card(folder: Path, completed: dict[str, Any], **more: Any) -> CareCard:
    job = shop.job(accepted={"date": "2026-05-20"}, completed=completed, **more)
    results = shop.results(folder, job, rate_book=shop.book())
    assert results.job.typed.completed is not None
    return care_card(results, results.job.typed.completed)


def test_its_days_count_from_the_pour_that_was(tmp_path: Path):
    """The plan said June; poured on July 1, the color is judged two weeks later, on July 15."""
    dates = {
        row.text: row.name
        for row in _card(tmp_path, {"date": "2026-07-10", "poured": "2026-07-01"}).care_dates
    }
    assert "Pour. Keep everyone off, and touch nothing" not in dates  # it is over
    assert dates["Judge the color, if it has been warm and dry"] == "Wed, Jul 15"
    assert dates["Sand only, no deicing salt"] == "Winter 2026 to 2027"


def test_without_a_sealer_there_is_no_next_coat(tmp_path: Path):
    """Neither a day after the sealer nor a year for the next coat stands on it."""
    card = _card(tmp_path, {"date": "2026-07-20", "poured": "2026-07-01"})
    assert not any("sealer" in row.text for row in card.care_dates)
    assert [row.name for row in card.built][-1] == "Poured"


def test_the_sealer_is_named_for_the_next_coat(tmp_path: Path):
    """The day and what it says on the can stand among what was built."""
    completed = {"date": "2026-09-01", "poured": "2026-07-01", "sealed": "2026-08-28",
                 "sealer": "Larkfield S-40"}  # fmt: skip
    (last,) = _card(tmp_path, completed).built[-1:]
    assert (last.name, last.text) == ("Sealed", "August 28, 2026, Larkfield S-40")


def test_what_is_over_is_left_out(tmp_path: Path):
    """Handed over the day after the pour it tells of the first day; weeks later it does not."""
    soon = _card(tmp_path, {"date": "2026-07-02", "poured": "2026-07-01"})
    late = _card(tmp_path, {"date": "2026-08-02", "poured": "2026-07-01"})
    assert [page.title for page in soon.care][:3] == [
        "The first day", "The first week", "The first month"]  # fmt: skip
    assert late.care[0].title == "Winter"


def test_salt_and_whom_to_call_stand_first(tmp_path: Path):
    """Salt costs the most slabs, and the warranty covers none: it is said before anything else."""
    said = _card(tmp_path, {"date": "2026-07-20", "poured": "2026-07-01"}).verdict
    assert "no deicing salt of any kind in any winter" in said
    assert "call 740-555-0117" in said


def test_it_is_for_the_finish_that_was_accepted(tmp_path: Path):
    """Quoted plain, accepted fancy: the card speaks of the fancy one."""
    job = shop.job(
        compare=["fancy"],
        accepted={"date": "2026-05-20", "finish": "fancy"},
        completed={"date": "2026-07-20", "poured": "2026-07-01"},
    )
    book = shop.book(finishes={"plain": shop.PLAIN, "fancy": {**shop.PLAIN, "name": "Fancy"}})
    results = shop.results(tmp_path, job, rate_book=book)
    assert results.job.typed.completed is not None
    card = care_card(results, results.job.typed.completed)
    (finish,) = [row.text for row in card.built if row.name == "Finish"]
    assert finish == "Fancy"


def test_accepted_extras_are_among_what_was_built(tmp_path: Path):
    """A step that was offered, and accepted with the quote, stands on the card."""
    step = shop.rate("$200 each", covers="steps", applies="asked")
    job = shop.job(
        extras={"step": "1"},
        accepted={"date": "2026-05-20", "extras": ["step"]},
        completed={"date": "2026-07-20", "poured": "2026-07-01"},
    )
    results = shop.results(tmp_path, job, rate_book=shop.book({"step": step}))
    assert results.job.typed.completed is not None
    assert "Steps" in {row.name for row in care_card(results, results.job.typed.completed).built}
