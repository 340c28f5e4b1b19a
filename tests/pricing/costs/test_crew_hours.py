"""Crew hours by the book against the days of the visits: 200 sq ft, form 2 days, pour 1 day."""

from pathlib import Path
from typing import Any

import pytest

from quotegen.pipeline import figure
from tests.pricing import shop
from tests.pricing.costed import COSTS, ORDER, RATES
from tests.world import write_world


def _said(folder: Path, costs: dict[str, Any] | None, size: str = "20 ft x 10 ft", **finish: Any):
    more = {"costs": {**COSTS, "set_up": "0 hours", **costs}} if costs is not None else {}
    book = shop.book(RATES, {"plain": {**shop.PLAIN, **finish}}, order=ORDER, **more)
    job = write_world(folder, shop.job(shop.placement(size)), rate_book=book)
    problems = figure(job, shop.shared()).problems
    return [one.message for one in problems if one.code == "crew-too-small"]


@pytest.mark.parametrize(("hours", "fits"), [("5", True), ("5.25", False)])
def test_the_pour_alone(tmp_path: Path, hours: str, fits: bool):
    """2 people for 8 hours have 16: 3 for each 100 sq ft of slab and 5 of finish just fill them."""
    timed = {"slab": {"work": "3 hours / 100 sq ft"},
             "plain": {"work": f"{hours} hours / 100 sq ft"}}  # fmt: skip
    said = "the pour at the finish `plain` takes 17 crew hours by your book;"
    said += " 2 people on 1 day have 16"
    assert _said(tmp_path, {"hours": timed}) == ([] if fits else [said])


def test_who_comes_to_the_pour(tmp_path: Path):
    """Named people of a visit count before the crew of the finish, and that before the book's."""
    timed = {"hours": {"slab": {"work": "10 hours / 100 sq ft"}}}  # 20 hours
    travel = {**COSTS["travel"], "people": {"pour": "3"}}
    assert _said(tmp_path, timed)
    assert _said(tmp_path, timed, crew="3") == []
    assert _said(tmp_path, {**timed, "travel": travel}, crew="1") == []


@pytest.mark.parametrize(("hours", "fits"), [("48", True), ("49", False)])
def test_all_days_together(tmp_path: Path, hours: str, fits: bool):
    """3 days of 2 people for 8 hours are 48; the way to the site is not among them."""
    said = "all work at the finish `plain` takes 49 crew hours by your book;"
    said += " the days of its visits hold 48"
    timed = {"base": {"fixed": f"{hours} hours"}}
    assert _said(tmp_path, {"hours": timed}) == ([] if fits else [said])


@pytest.mark.parametrize(("size", "fits"), [("40 ft x 20 ft", True), ("52.6 ft x 20 ft", False)])
def test_without_costs(tmp_path: Path, size: str, fits: bool):
    """One person pours 800 sq ft on a day and not 1,052; with no crew typed nobody can say."""
    said = "at the finish `plain` 1,052.0 sq ft are poured by 1 person on 1 day;"
    said += " at most 800 sq ft a day for each is usual"
    assert _said(tmp_path, None, size, crew="1") == ([] if fits else [said])
    assert _said(tmp_path, None, size) == []


def test_pours_in_parts_hold_more_hours(tmp_path: Path):
    """20 hours on a day of 16 are too many; in two pours, on two days of 16, they fit."""
    timed = {**COSTS, "set_up": "0 hours", "hours": {"slab": {"work": "10 hours / 100 sq ft"}}}
    book = shop.book(RATES, {"plain": shop.PLAIN}, order=ORDER, costs=timed)
    hints = []
    for pours in ("1", "2"):
        (tmp_path / pours).mkdir()
        job = write_world(tmp_path / pours, shop.job(pours=pours), rate_book=book)
        hints += [one.hint for one in figure(job, shop.shared()).problems
                  if one.code == "crew-too-small"]  # fmt: skip
    assert [hint.partition("in parts, ")[2] for hint in hints] == ["type `pours: 2` in the job"]
