"""Openings: from when the new slab may be used."""

from datetime import timedelta
from pathlib import Path

import pytest

from quotegen.schedule.openings import Opening
from quotegen.trade import opening
from tests.pricing import shop

SEALED = {**shop.PLAIN, "visits": [*shop.FANCY["visits"], {"visit": "seal", "days": "1"}]}


def _opened(folder: Path, use: str, finish: shop.Typed = SEALED) -> dict[Opening, int]:
    """Return the days from the visit that each way to use the slab waits for."""
    one = shop.job(shop.placement("20 ft x 10 ft", use=use))
    results = shop.results(folder, one, rate_book=shop.book(finishes={"plain": finish}))
    last = {visit.id: visit.last_day for visit in results.chosen_visits}
    found = {}
    for opened in results.openings:
        sealed = opened.use in {Opening.WALK_AFTER_SEALER, Opening.LOAD_AFTER_SEALER}
        found[opened.use] = (opened.day - last["seal" if sealed else "pour"]).days
    return found


def test_each_waits_the_days_of_its_rule(tmp_path):
    """The days come from the dated rules of the trade, counted from the pour or the sealer."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    rules, on = results.rules, results.job.quote_date
    assert _opened(tmp_path, "drive") == {
        Opening.WALK: opening.walk_days(rules, on),
        Opening.FURNISH: opening.furniture_days(rules, on),
        Opening.DRIVE: opening.drive_days(rules, on),
        Opening.WALK_AFTER_SEALER: opening.sealer_walk_days(rules, on),
        Opening.LOAD_AFTER_SEALER: opening.sealer_load_days(rules, on),
    }


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
