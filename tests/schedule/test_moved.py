"""Days that changes add: worked in the visit that is not over, and the later visits follow."""

from pathlib import Path

import pytest

from quotegen.explain.papers.final_measurement import change_orders_view
from quotegen.schedule.moved import Days
from tests.pricing import shop

FINISH = {
    **shop.PLAIN,
    "visits": [
        {"visit": "form", "days": "2"},
        {"visit": "pour", "days": "1"},
        {"visit": "seal", "days": "1", "wait_days": "28"},
    ],
}
# Without a change: form Mon 8 and Tue 9 June, pour Wed 10 June, seal Thu 9 July.


def _days(folder: Path, *changes: tuple[str, int]) -> Days:
    job = shop.job(
        start="2026-06-08",
        accepted={"date": "2026-05-20"},
        changes=[
            {"number": str(number), "date": on, "what": "more", "asked_by": "you",
             "amount": "$10.00", "days": str(days)}
            for number, (on, days) in enumerate(changes, 1)
        ],
    )  # fmt: skip
    book = shop.book(finishes={"plain": FINISH})
    return shop.results(folder, job, rate_book=book).days


def _written(days: Days) -> list[str]:
    return [f"{v.id} {v.first_day:%d.%m.}-{v.last_day:%d.%m.}" for v in days.visits]


@pytest.mark.parametrize(
    ("on", "days", "written"),
    [
        ("2026-06-09", 1, ["form 08.06.-10.06.", "pour 11.06.-11.06.", "seal 10.07.-10.07."]),
        ("2026-06-10", 1, ["form 08.06.-09.06.", "pour 10.06.-11.06.", "seal 10.07.-10.07."]),
        ("2026-06-09", 4, ["form 08.06.-15.06.", "pour 16.06.-16.06.", "seal 15.07.-15.07."]),
        ("2026-07-20", 1, ["form 08.06.-09.06.", "pour 10.06.-10.06.", "seal 09.07.-10.07."]),
        ("2026-06-09", 0, ["form 08.06.-09.06.", "pour 10.06.-10.06.", "seal 09.07.-09.07."]),
    ],
    ids=["while forming", "on the day of the pour", "over a weekend", "after the last", "no day"],
)
def test_a_change_lengthens_the_visit_that_is_not_over(tmp_path, on, days, written):
    """Counted by hand on the calendar of 2026, Monday to Friday."""
    assert _written(_days(tmp_path, (on, days))) == written


def test_each_change_says_what_it_moves(tmp_path):
    """The second change begins with the days that the first has left."""
    days = _days(tmp_path, ("2026-06-08", 1), ("2026-06-09", 0), ("2026-06-11", 1))
    moved = [[move.now.id for move in moves] for moves in days.moves]
    assert moved == [["form", "pour", "seal"], [], ["pour", "seal"]]
    assert days.moves[2][1].was == days.moves[0][2].now
    assert days.moves[2][1].now == days.visits[2]


def test_the_statement_names_the_days(tmp_path):
    """The change order of the example says which day is now which."""
    job_file = next(one for one in shop.JOBS if one.stem == "cutters-row-drive")
    results = shop.example_results(job_file)
    first, second = change_orders_view(results).changes
    assert len(first.moves) > 1
    assert second.moves == ()
    assert second.days == results.words("days_same")
