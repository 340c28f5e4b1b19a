"""Visits: the trips of a finish on the working days of the company."""

from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

import pytest
import yaml

from quotegen.reading.files.company import Weekday
from quotegen.schedule.visits import visits_of
from tests.pricing import shop
from tests.world import EXAMPLES

FINISH = {
    **shop.PLAIN,
    "visits": [
        {"visit": "form", "days": "2"},
        {"visit": "pour", "days": "1"},
        {"visit": "seal", "days": "1", "wait_days": "28"},
    ],
}


def _days(folder: Path, start: str, *, closed: tuple[str, ...] = (), **more) -> list[str]:
    company = yaml.safe_load((EXAMPLES / "company.yaml").read_text(encoding="utf-8"))
    company |= {"closed": list(closed), **more}
    results = shop.results(folder, shop.job(start=start), rate_book=shop.book(
        finishes={"plain": FINISH}), company=shop.as_yaml(company))  # fmt: skip
    return [
        f"{v.first_day:%d.%m.}" + ("" if v.first_day == v.last_day else f"-{v.last_day:%d.%m.}")
        for v in results.chosen_visits
    ]


@pytest.mark.parametrize(
    ("start", "closed", "days"),
    [
        ("2026-06-08", (), ["08.06.-09.06.", "10.06.", "09.07."]),  # a Monday; 28 days clear
        ("2026-06-06", (), ["08.06.-09.06.", "10.06.", "09.07."]),  # a Saturday waits for Monday
        ("2026-06-12", (), ["12.06.-15.06.", "16.06.", "15.07."]),  # two days over a weekend
        ("2026-06-08", ("2026-06-09",), ["08.06.-10.06.", "11.06.", "10.07."]),
        ("2026-06-08", ("2026-06-08",), ["09.06.-10.06.", "11.06.", "10.07."]),
        ("2026-06-08", ("2026-07-09", "2026-07-10"), ["08.06.-09.06.", "10.06.", "13.07."]),
        ("2026-12-30", (), ["30.12.-31.12.", "01.01.", "01.02."]),  # 30.01. is a Saturday
    ],
)
def test_working_days(tmp_path, start: str, closed: tuple[str, ...], days: list[str]):
    """Nobody comes at a weekend or on a closed day; a wait is counted in days of the calendar."""
    assert _days(tmp_path, start, closed=closed) == days


def test_a_company_that_works_on_saturdays(tmp_path):
    """The working days are the company's, not the program's."""
    worked = ["Friday", "Saturday"]
    assert _days(tmp_path, "2026-06-08", working_days=worked) == [
        "12.06.-13.06.",
        "19.06.",
        "18.07.",
    ]


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_visits_of_the_examples(job_file: Path):
    """At every finish visits follow each other on working days, in the order of the book."""
    results = shop.example_results(job_file)
    company, order = results.job.company, list(results.job.rate_book.visits)
    names = tuple(Weekday)
    for finish in results.quote.finishes:
        visits = results.visits[finish.id]
        assert visits == visits_of(results.job, finish.id, results.rules)
        assert len(visits) == finish.visits  # as many as the price charges trips for
        assert [v.id for v in visits] == sorted((v.id for v in visits), key=order.index)
        assert visits[0].first_day >= results.job.typed.start
        for visit in visits:
            for day in (visit.first_day, visit.last_day):
                assert names[day.weekday()] in company.working_days
                assert day not in company.closed
        for before, after in pairwise(visits):
            assert after.first_day > before.last_day + timedelta(days=after.wait_days)


def test_the_pool_deck_is_ready_when_it_was_asked_for():
    """Five visits from Monday 8 June, the closed 19 June and 3 July left out."""
    (deck,) = (path for path in shop.JOBS if "orchard" in path.name)
    found = [(v.id, v.first_day, v.last_day) for v in shop.example_results(deck).chosen_visits]
    assert found[:3] == [
        ("form", date(2026, 6, 8), date(2026, 6, 9)),
        ("pour", date(2026, 6, 10), date(2026, 6, 10)),
        ("saw", date(2026, 6, 11), date(2026, 6, 11)),
    ]
