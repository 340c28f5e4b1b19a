"""Openings: from when the new slab may be used."""

from datetime import date, timedelta
from pathlib import Path

import pytest

from quotegen.schedule.openings import Opening
from quotegen.trade import opening
from tests.pricing import shop

SEALED = {
    **shop.PLAIN,
    "visits": [*shop.FANCY["visits"], {"visit": "seal", "days": "1", "wait_days": "28"}],
}


def _opened(folder: Path, use: str, finish: shop.Typed = SEALED) -> dict[Opening, int]:
    """Return the days from the visit that each way to use the slab waits for."""
    one = shop.job(shop.placement("20 ft x 10 ft", use=use))
    results = shop.results(folder, one, rate_book=shop.book(finishes={"plain": finish}))
    last = {visit.id: visit.last_day for visit in results.chosen_visits}
    found = {}
    for opened in results.openings:
        sealed = opened.use.value.endswith("_after_sealer")
        found[opened.use] = (opened.day - last["seal" if sealed else "pour"]).days
    return found


def test_each_waits_the_days_of_its_rule(tmp_path):
    """The days come from the dated rules of the trade, counted from the pour or the sealer."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    rules, on = results.rules, results.job.quote_date
    assert _opened(tmp_path, "drive") == {
        Opening.WALK: opening.walk_days(rules, on),
        Opening.DRIVE: opening.drive_days(rules, on),
        Opening.WALK_AFTER_SEALER: opening.sealer_walk_days(rules, on),
        Opening.DRIVE_AFTER_SEALER: opening.sealer_load_days(rules, on),
    }
    assert _opened(tmp_path, "patio") == {
        Opening.WALK: opening.walk_days(rules, on),
        Opening.FURNISH: opening.furniture_days(rules, on),
        Opening.WALK_AFTER_SEALER: opening.sealer_walk_days(rules, on),
        Opening.LOAD_AFTER_SEALER: opening.sealer_load_days(rules, on),
    }


@pytest.mark.parametrize(
    ("wait", "days"),
    [
        # Poured on Wednesday, June 10. Sealed next day: on foot on the 12th in any case, furniture
        # after 7 days, which is later than 3 days after the sealer.
        ("0", {Opening.WALK: "06-12", Opening.FURNISH: "06-17"}),
        # Sealed on Tuesday, June 16: opened to feet before it, so closed and opened again; the
        # furniture waits for the sealer, comes once, and is put back by nobody.
        ("5", {Opening.WALK: "06-12", Opening.WALK_AFTER_SEALER: "06-17",
               Opening.FURNISH: "06-19"}),
        # Sealed on Friday, June 12, on which the slab would open: nobody walks on it that day.
        ("1", {Opening.WALK: "06-13", Opening.FURNISH: "06-17"}),
    ],
)  # fmt: skip
def test_sealed_early(tmp_path, wait: str, days: dict[Opening, str]):
    """What is still closed when the sealer goes on opens once, after both waits."""
    seal = {"visit": "seal", "days": "1", "wait_days": wait}
    finish = {**shop.PLAIN, "sealer": "film", "visits": [shop.FORM, shop.POUR, seal]}
    job = shop.job(start="2026-06-08")
    made = shop.results(tmp_path, job, rate_book=shop.book(finishes={"plain": finish}))
    assert made.chosen_visits[1].last_day == date(2026, 6, 10)
    assert {one.use: f"{one.day:%m-%d}" for one in made.openings} == days


@pytest.mark.parametrize(("use", "driven"), [("drive", True), ("patio", False), ("walk", False)])
def test_only_a_drive_is_driven_on(tmp_path, use: str, driven: bool):
    """A patio has no day from which to drive on it."""
    assert (Opening.DRIVE in _opened(tmp_path, use)) == driven


@pytest.mark.parametrize(("use", "filled"), [("pool deck", True), ("patio", False)])
def test_only_round_a_pool_is_a_pool_filled(tmp_path, use: str, filled: bool):
    """A pool deck has a day from which to fill the pool, a patio has none."""
    assert (Opening.FILL in _opened(tmp_path, use)) == filled


def test_without_a_sealer_nothing_waits_for_it(tmp_path):
    """A finish without a sealing visit has no days after the sealer."""
    assert set(_opened(tmp_path, "patio", shop.PLAIN)) == {Opening.WALK, Opening.FURNISH}


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_openings_of_the_examples(job_file: Path):
    """They stand in the order of the calendar, and none is before the pour."""
    results = shop.example_results(job_file)
    days = [opened.day for opened in results.openings]
    (pour,) = (v for v in results.chosen_visits if v.id == "pour")
    assert days == sorted(days)
    assert days[0] >= pour.last_day + timedelta(days=1)
