"""The days for both calendars: what stands in them before the yes, after it, and at the end."""

from datetime import date
from pathlib import Path
from typing import Any

from quotegen.explain.papers.calendar_days import (
    CalendarDay,
    calendar_days,
    changes_so_far,
    last_changed,
)
from quotegen.explain.results import Results
from tests.pricing import shop


def _results(folder: Path, **more: Any) -> Results:
    return shop.results(folder, shop.job(**more), rate_book=shop.book())


def _days(folder: Path, **more: Any) -> dict[str, CalendarDay]:
    days = calendar_days(_results(folder, **more))
    assert len({day.id for day in days}) == len(days)
    return {day.id: day for day in days}


def test_before_the_yes_it_says_by_when(tmp_path: Path):
    """The last day to say yes, the visits, the first day on the slab: nothing of it is off."""
    days = _days(tmp_path)
    assert {"yes", "pour", "use-walk", "care-color"} <= days.keys()
    assert not any(day.is_off for day in days.values())
    assert days["yes"].last_day < days["pour"].first_day
    assert days["use-walk"].first_day > days["pour"].last_day
    assert [day.id for day in days.values() if day.is_visit] == [
        visit.id for visit in _results(tmp_path).chosen_visits
    ]


def test_after_the_yes_the_last_day_for_it_is_off(tmp_path: Path):
    """The file takes away what it put there; a payment at signing has the day of the yes."""
    days = _days(tmp_path, accepted={"date": "2026-05-20"})
    assert [day.id for day in days.values() if day.is_off] == ["yes"]


def test_days_count_from_the_real_pour(tmp_path: Path):
    """Poured on July 1, the color is judged on July 15, whatever was planned."""
    days = _days(
        tmp_path,
        accepted={"date": "2026-05-20"},
        completed={"date": "2026-07-10", "poured": "2026-07-01"},
    )
    assert days["care-color"].first_day == date(2026, 7, 15)


def test_each_step_wins_over_the_one_before(tmp_path: Path):
    """Acceptance, a change and a revision raise the number by which a calendar knows the latest."""
    change = {"number": 1, "date": "2026-05-25", "what": "a step", "asked_by": "you",
              "amount": "$100"}  # fmt: skip
    accepted = {"date": "2026-05-20"}
    steps = [
        _results(tmp_path),
        _results(tmp_path, accepted=accepted),
        _results(tmp_path, accepted=accepted, changes=[change]),
    ]
    assert [changes_so_far(one) for one in steps] == [1, 2, 3]
    assert [last_changed(one) for one in steps][1:] == [date(2026, 5, 20), date(2026, 5, 25)]
    assert changes_so_far(_results(tmp_path, revision=2)) == 2
