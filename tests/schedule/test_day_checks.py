"""Warnings of dates: by the calendar of 2026."""

from pathlib import Path
from typing import Any

import yaml

from quotegen.pipeline import figure
from tests.pricing import shop
from tests.world import EXAMPLES, write_world

WINTER = "pour-in-winter"
SAW = {"visit": "saw", "days": "1"}


def _said(folder: Path, days: list[str], start: str = "2026-06-08", **job: str) -> list[str]:
    company = yaml.safe_load((EXAMPLES / "company.yaml").read_text(encoding="utf-8"))
    company |= {"working_days": days, "closed": []}
    finish = {**shop.PLAIN, "visits": [shop.POUR, SAW]}
    world = write_world(folder, shop.job(start=start, **job), company=shop.as_yaml(company),
                        rate_book=shop.book(finishes={"plain": finish}))  # fmt: skip
    found = figure(world, shop.shared()).problems
    return [one.message for one in found if one.code in {"saw-late", "start-moved"}]


def test_a_company_that_never_works_two_days_in_a_row(tmp_path: Path):
    """No day suits, so the pour stays on its Monday and the owner is told of Wednesday's saw."""
    (said,) = _said(tmp_path, ["Monday", "Wednesday"])
    assert said.startswith(
        "at the finish `plain` joints are cut on 2026-06-10, a Wednesday, 2 days"
    )


def test_a_start_on_a_free_day_is_said(tmp_path: Path):
    """Saturday June 6 begins on Monday; from Monday on nothing is said."""
    week = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"]
    (tmp_path / "on").mkdir()
    (said,) = _said(tmp_path, week, "2026-06-06")
    assert said == "nobody works on 2026-06-06, a Saturday; the work starts on 2026-06-08, a Monday"
    assert _said(tmp_path / "on", week) == []


def _winter(folder: Path, state: str, **book: Any) -> list[str]:
    site = {"address": "1 Test Lane", "town": "Harrow Bend", "state": state}
    job = shop.job(date="2026-11-16", start="2026-12-07", site=site)
    world = write_world(folder, job, rate_book=shop.book(**book))
    return [one.code for one in figure(world, shop.shared()).problems if one.code == WINTER]


def test_a_pour_in_december_is_warned_of_where_it_freezes(tmp_path: Path):
    """In Michigan, whose weathering is severe; not in Texas, nor where a season is priced."""
    cold = {"name": "Winter care", "covers": ["protection"], "rate": "$300 lump",
            "season": {"first": "11-15", "last": "03-15"}}  # fmt: skip
    for name in ("mi", "tx", "priced"):
        (tmp_path / name).mkdir()
    assert _winter(tmp_path / "mi", "MI") == [WINTER]
    assert _winter(tmp_path / "tx", "TX") == []
    assert _winter(tmp_path / "priced", "MI", rates={"cold": cold}) == []
