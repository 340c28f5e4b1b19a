"""Sheet 5: what is seen while we work, only where the job contains it."""

from pathlib import Path

import pytest

from quotegen.explain.sheets.day_sheet import day_sheet
from quotegen.reading.content.content import When
from tests.pricing import shop

DECK = shop.placement("40 ft x 30 ft")
STAMPED = {"plain": {**shop.FANCY, "brings": []}}


def _seen(folder: Path, **more) -> set[str]:
    results = shop.results(folder, shop.job(DECK), rate_book=shop.book(**more))
    return {row.seen for row in day_sheet(results).site_observations}


def _titles(when: When) -> set[str]:
    pages = shop.shared().content.site_observations.values()
    return {p.front.title for p in pages if when in p.front.applies}


@pytest.mark.parametrize("when", [When.STAMPED, When.SAW])
def test_an_observation_comes_with_its_work(tmp_path: Path, when: When):
    """Powder and seams come with stamps, slurry with a saw, and a bare deck has neither."""
    there = {When.STAMPED: {"finishes": STAMPED},
             When.SAW: {"rates": {"s": shop.rate("$1 / sq ft", "joints")}}}[when]  # fmt: skip
    assert _titles(when)
    assert _titles(when) <= _seen(tmp_path, **there)
    assert _titles(when) & _seen(tmp_path) == set()


def test_every_observation_says_when_to_speak_up():
    """Each one says what is normal that day, what it looks like later, and when to call."""
    for page in shop.shared().content.site_observations.values():
        assert page.markdown
        assert page.front.later
        assert page.front.speak_up
