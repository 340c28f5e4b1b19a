"""What is seen while we work, and who does the work beside ours: only what the job contains."""

from pathlib import Path

import pytest
import yaml

from quotegen.explain.sheets.day_sheet import day_sheet
from quotegen.explain.sheets.responsibilities import responsibility_rows
from quotegen.reading.content.content import When
from quotegen.reading.files.job import Responsibility
from tests.pricing import shop
from tests.world import EXAMPLES

DECK = shop.placement("40 ft x 30 ft")
POOL = {**DECK, "take_away": [{"rectangle": "20 ft x 10 ft", "at": ["9 ft", "9 ft"], "is": "pool"}]}
STAMPED = {"plain": {**shop.FANCY, "brings": []}}
PERMIT = {"p": shop.rate("$90 lump", "permits")}


def _seen(folder: Path, **more) -> set[str]:
    results = shop.results(folder, shop.job(DECK), rate_book=shop.book(**more))
    return {row.seen for row in day_sheet(results).site_observations}


def _titles(when: When) -> set[str]:
    pages = shop.shared().content.site_observations.values()
    return {p.front.title for p in pages if when in p.front.applies}


@pytest.mark.parametrize("when", [When.STAMPED, When.SAW])
def test_a_observation_comes_with_its_work(tmp_path: Path, when: When):
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


def test_only_a_stamped_deck_is_explained_in_parts(tmp_path: Path):
    """Why a deck may be poured in parts concerns stamped work alone."""
    plain = shop.results(tmp_path, shop.job(DECK), rate_book=shop.book())
    assert day_sheet(plain).crew == ()
    stamped = shop.results(tmp_path, shop.job(DECK), rate_book=shop.book(finishes=STAMPED))
    assert [page.id for page in day_sheet(stamped).crew] == ["in_parts"]


def test_each_responsibility_has_its_page():
    """A responsibility that can be typed has a page in content/, and each page can be typed."""
    assert set(shop.shared().content.responsibilities) == set(Responsibility)


def test_the_grid_follows_the_job(tmp_path: Path):
    """A deck at a pool has its electrician and fence builder; a patio has not."""

    def rows(placement) -> dict[str, str]:
        results = shop.results(tmp_path, shop.job(placement), rate_book=shop.book())
        return {row.name: row.text for row in responsibility_rows(results)}

    assert "licensed electrician" in rows(POOL)["Bonding of the pool deck"]
    assert "Bonding of the pool deck" not in rows(DECK)


def test_what_the_price_covers_is_ours(tmp_path: Path):
    """Permits are ours where a line covers them, unless the company says otherwise."""
    typed = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    company = shop.as_yaml({**typed, "not_included": []})

    def permits(rates) -> str:
        results = shop.results(tmp_path, shop.job(DECK), rate_book=shop.book(rates),
                               company=company)  # fmt: skip
        return {row.name: row.text for row in responsibility_rows(results)}["Permits and approvals"]

    assert permits(PERMIT).startswith("We")
    assert permits({}).startswith("You")


def test_the_job_has_the_last_word(tmp_path: Path):
    """A responsibility that the job gives to somebody stands once, in the job's words."""
    said = [{"what": "Bonding", "who": "Volt and Sons, 555-0163", "responsibility": "bonding"}]
    results = shop.results(tmp_path, shop.job(POOL, not_included=said), rate_book=shop.book())
    bonding = [row for row in responsibility_rows(results) if "onding" in row.name]
    assert [row.text for row in bonding] == ["Volt and Sons, 555-0163."]
