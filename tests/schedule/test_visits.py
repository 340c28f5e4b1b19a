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
    """Five visits from Monday 8 June; on Wednesday the bonding is inspected, nobody comes."""
    (deck,) = (path for path in shop.JOBS if "orchard" in path.name)
    found = [(v.id, v.first_day, v.last_day) for v in shop.example_results(deck).chosen_visits]
    assert found[:3] == [
        ("form", date(2026, 6, 8), date(2026, 6, 9)),
        ("pour", date(2026, 6, 11), date(2026, 6, 11)),
        ("saw", date(2026, 6, 12), date(2026, 6, 12)),
    ]


SAWN = {**shop.PLAIN, "visits": [shop.FORM, shop.POUR, {"visit": "saw", "days": "1"}]}


def _sawn(folder: Path, start: str, finish: shop.Typed = SAWN, use: str = "patio", **more):
    company = yaml.safe_load((EXAMPLES / "company.yaml").read_text(encoding="utf-8"))
    company |= {"closed": more.pop("closed", []), **more.pop("company", {})}
    job = shop.job(shop.placement("20 ft x 10 ft", use=use), start=start, **more)
    book = shop.book(finishes={"plain": finish})
    return shop.results(folder, job, rate_book=book, company=shop.as_yaml(company)).chosen_visits


@pytest.mark.parametrize(
    ("start", "closed", "pour", "saw", "held"),
    [
        ("2026-06-08", (), "06-10", "06-11", False),  # Monday: pour on Wednesday, saw on Thursday
        ("2026-06-10", (), "06-15", "06-16", True),  # not on Friday, to be cut on Monday
        ("2026-06-08", ("2026-06-11",), "06-15", "06-16", True),  # nor before a closed day
        ("2026-06-11", (), "06-15", "06-16", False),  # the forms end on Friday anyway
    ],
)
def test_no_free_day_parts_pour_and_saw(tmp_path, start, closed, pour, saw, held):
    """Joints are cut on the day after the pour: on the calendar of 2026, Monday to Friday."""
    _, poured, sawn = _sawn(tmp_path, start, closed=list(closed))
    assert (f"{poured.last_day:%m-%d}", f"{sawn.first_day:%m-%d}") == (pour, saw)
    assert poured.held_for_saw is held


def test_without_a_saw_a_friday_will_do(tmp_path):
    """Where joints are cut or tooled on the day of the pour, nothing holds the pour back."""
    poured = _sawn(tmp_path, "2026-06-10", shop.PLAIN)[-1]
    assert (poured.first_day, poured.held_for_saw) == (date(2026, 6, 12), False)


def test_each_pour_has_its_day_and_they_follow_each_other(tmp_path):
    """Two pours and the saw take three days in a row: not from Thursday, but from Monday on."""
    visits = _sawn(tmp_path, "2026-06-09", pours="2")
    assert [(v.id, v.part, v.parts, f"{v.first_day:%m-%d}") for v in visits[1:]] == [
        ("pour-1", 1, 2, "06-15"), ("pour", 2, 2, "06-16"), ("saw", 1, 1, "06-17")]  # fmt: skip


def test_a_pool_deck_waits_a_working_day_for_its_inspection(tmp_path):
    """Forms to Tuesday, inspection on Wednesday; over a weekend it is a Monday, not a Saturday."""
    (tmp_path / "monday").mkdir()
    early = _sawn(tmp_path / "monday", "2026-06-08", use="pool deck")[1]
    late = _sawn(tmp_path, "2026-06-11", shop.PLAIN, use="pool deck")[1]
    assert (early.first_day, late.first_day) == (date(2026, 6, 11), date(2026, 6, 16))
