"""The guide explains what the job has: neither more nor less."""

from pathlib import Path

import pytest

from quotegen.explain.guide.guide import guide_of
from quotegen.explain.guide.views import Guide
from quotegen.pricing.quoted.no_work import AFTER_THE_PRICE
from quotegen.reading.content.content import When
from quotegen.reading.files.shapes import EdgeKind
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop

STAMPED = {"plain": {**shop.FANCY, "brings": []}}
DECK = shop.placement("40 ft x 30 ft")
POOL = {**DECK, "take_away": [{"rectangle": "20 ft x 10 ft", "at": ["9 ft", "9 ft"], "is": "pool"}]}
HOLE = {**DECK, "take_away": [{"rectangle": "20 ft x 10 ft", "at": ["9 ft", "9 ft"]}]}
AT_THE_HOUSE = {**DECK, "add": [{"rectangle": "40 ft x 30 ft", "against_house": "bottom"}]}
SEALED = {"plain": {**shop.PLAIN, "sealer": "film"}}


def _guide(folder: Path, placement: shop.Typed = DECK, *, rates: shop.Typed | None = None,
           finishes: shop.Typed | None = None, **more) -> Guide:  # fmt: skip
    return guide_of(shop.results(
        folder, shop.job(placement, **more), rate_book=shop.book(rates, finishes)))  # fmt: skip


def _ids(guide: Guide) -> set[str]:
    return {page.id for page in guide.safety}


def _about(when: When) -> set[str]:
    """Return the cautions that are printed for one thing and not on every job."""
    pages = shop.shared().content.safety.values()
    return {p.front.id for p in pages if when in p.front.applies and
            When.ALWAYS not in p.front.applies}  # fmt: skip


@pytest.mark.parametrize(
    ("when", "placement", "rates", "finishes"),
    [
        (When.POOL, POOL, None, None),
        (When.HOUSE, AT_THE_HOUSE, None, None),
        (When.STEPS, DECK, {"s": shop.rate("$265 lump", "steps")}, None),
        (When.SAW, DECK, {"s": shop.rate("$1 / sq ft", "joints")}, None),
        (When.SAW, DECK, {"s": shop.rate("$1 / sq ft", "demolition")}, None),
        (When.SEALER, DECK, None, SEALED),
        (When.DRIVE, {**DECK, "use": "drive"}, None, None),
        (When.DIGGING, DECK, {"s": shop.rate("$1 / sq ft", "dig_out")}, None),
    ],
)
def test_a_caution_comes_with_what_it_is_about(tmp_path, when: When, placement, rates, finishes):
    """With the thing its cautions are printed; the bare deck has none of them."""
    bare = _ids(_guide(tmp_path))
    there = _ids(_guide(tmp_path, placement, rates=rates, finishes=finishes))
    assert _about(when)
    assert _about(when) <= there
    assert _about(when) & bare == set()


def test_the_bare_deck_has_what_always_applies(tmp_path):
    """Wet concrete, open work and hot or wet surfaces concern every job."""
    always = {p.front.id for p in shop.shared().content.safety.values()
              if When.ALWAYS in p.front.applies}  # fmt: skip
    assert always
    assert _ids(_guide(tmp_path)) == always


def test_a_hole_is_no_pool(tmp_path):
    """An opening for a tree brings no note on pools."""
    assert _about(When.POOL) & _ids(_guide(tmp_path, HOLE)) == set()


@EVERY_EXAMPLE
class TestItems:
    """What the price covers is explained item by item."""

    def test_they_follow_the_scope_of_the_lines(self, job_file: Path):
        """Each scope item that a line pays for has its page, in the order of the pages.

        What follows the price of the work, such as a discount, has none.
        """
        results = shop.example_results(job_file)
        covered = {item for line in results.quote.chosen.lines for item in line.scope}
        covered -= AFTER_THE_PRICE
        if not any(p.edges_ft[EdgeKind.ISOLATED] for p in results.takeoff.placements):
            covered.discard("isolation")  # an all-in price covers it, and this job has none
        ids = [item.id for item in example_view(job_file).guide.items]
        assert set(ids) == covered
        assert ids == [item for item in results.content.scope if item in covered]

    def test_each_has_its_four_parts(self, job_file: Path):
        """What, why, how to check and what is normal: none of them is empty."""
        for item in example_view(job_file).guide.items:
            assert item.title
            assert item.what_html
            assert item.why_html
            assert item.check_html
            assert item.normal_html

    def test_none_says_what_it_costs(self, job_file: Path):
        """What an item costs stands with its line on sheet 4, and nowhere else."""
        items = example_view(job_file).guide.items
        assert not any("$" in row.text for item in items for row in item.numbers)

    def test_each_finish_on_offer_is_told_in_words(self, job_file: Path):
        """The finishes of sheet 3 have a page each, in the same order."""
        view = example_view(job_file)
        pages = [page.id.removeprefix("finish-") for page in view.guide.finishes]
        assert pages == [column.id for column in view.finishes.columns]


def test_what_is_not_asked_for_is_not_explained(tmp_path):
    """A job without steps, drain or demolition does not speak of them."""
    assert {item.id for item in _guide(tmp_path).items} == {"finish", "slab"}


def test_care_follows_the_finish(tmp_path):
    """Care for a film sealer is not given to who has none, and the other way round."""
    fancy = {"plain": {**shop.FANCY, "brings": []}}
    stamped = {page.id for page in _guide(tmp_path, finishes=fancy).care}
    broom = {page.id for page in _guide(tmp_path).care}
    pages = shop.shared().content.care.values()
    assert stamped == {p.front.id for p in pages
                       if {"all", "stamped_texture"} & set(p.front.finishes)}  # fmt: skip
    assert broom == {p.front.id for p in pages if {"all", "broom"} & set(p.front.finishes)}
    assert stamped != broom


def _seen(folder: Path, **more) -> set[str]:
    return {row.seen for row in _guide(folder, **more).site_observations}


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


def test_a_question_comes_with_what_it_is_about(tmp_path: Path):
    """Who else works at a pool is asked at a pool alone; what applies always is on every job."""
    pages = shop.shared().content.questions.values()
    at_pools = {p.front.id for p in pages if When.ALWAYS not in p.front.applies}
    bare = {page.id for page in _guide(tmp_path).questions}
    assert bare == {p.front.id for p in pages} - at_pools
    assert {page.id for page in _guide(tmp_path, POOL).questions} == {p.front.id for p in pages}
