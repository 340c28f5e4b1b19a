"""What the price leaves out and who does it: what the job contains, and it has the last word."""

from pathlib import Path

import yaml

from quotegen.explain.sheets.responsibilities import excluded_rows
from quotegen.reading.files.job import Responsibility
from tests.pricing import shop
from tests.world import EXAMPLES

DECK = shop.placement("40 ft x 30 ft")
POOL = {**DECK, "take_away": [{"rectangle": "20 ft x 10 ft", "at": ["9 ft", "9 ft"], "is": "pool"}]}
PERMIT = {"p": shop.rate("$90 lump", "permits")}


def test_each_responsibility_has_its_page():
    """A responsibility that can be typed has a page in content/, and each page can be typed."""
    assert set(shop.shared().content.responsibilities) == set(Responsibility)


def test_the_grid_follows_the_job(tmp_path: Path):
    """A deck at a pool has its electrician and fence builder; a patio has not."""

    def rows(placement) -> dict[str, str]:
        results = shop.results(tmp_path, shop.job(placement), rate_book=shop.book())
        return {row.name: row.text for row in excluded_rows(results)}

    assert "licensed electrician" in rows(POOL)["Bonding of the pool deck"]
    assert "Bonding of the pool deck" not in rows(DECK)


def test_a_way_in_has_its_mailbox_and_neighbors(tmp_path: Path):
    """A walk or a drive may block a neighbor or a mailbox; a patio behind the house does not."""

    def names(use: str) -> set[str]:
        placed = shop.placement("40 ft x 10 ft") | {"use": use}
        results = shop.results(tmp_path, shop.job(placed), rate_book=shop.book())
        return {row.mark for row in excluded_rows(results)}

    assert "shared_way" in names("walk")
    assert "shared_way" not in names("patio")


def test_what_the_price_covers_is_ours(tmp_path: Path):
    """Permits are not left out where a line covers them, unless the company says otherwise."""
    typed = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    company = shop.as_yaml({**typed, "not_included": []})

    def permits(rates) -> str | None:
        results = shop.results(tmp_path, shop.job(DECK), rate_book=shop.book(rates),
                               company=company)  # fmt: skip
        return {row.name: row.text for row in excluded_rows(results)}.get("Permits and approvals")

    assert permits(PERMIT) is None
    assert str(permits({})).startswith("You")


def test_the_job_has_the_last_word(tmp_path: Path):
    """A responsibility that the job gives to somebody stands once, in the job's words."""
    said = [{"what": "Bonding", "who": "Volt and Sons, 555-0163", "responsibility": "bonding"}]
    results = shop.results(tmp_path, shop.job(POOL, not_included=said), rate_book=shop.book())
    bonding = [row for row in excluded_rows(results) if "onding" in row.name]
    assert [row.text for row in bonding] == ["Volt and Sons, 555-0163."]


def test_what_we_wait_for_has_its_day(tmp_path: Path):
    """Forms on Monday and Tuesday, June 8 and 9, and the pour on Wednesday: each its own day."""
    results = shop.results(tmp_path, shop.job(POOL), rate_book=shop.book())
    said = {row.name: row.text for row in excluded_rows(results)}
    assert said["Pool pipes tested"].endswith("Done before Mon, Jun 8.")
    assert said["Bonding of the pool deck"].endswith("Done before Wed, Jun 10.")
    assert "Done before" not in said["The joint at the pool sealed"]
