"""Sheet 7: a caution is printed when the job contains what it is about."""

from pathlib import Path

import pytest
import yaml

from quotegen.explain.sheets.standard_sheet import standard_sheet
from quotegen.explain.sheets.views import StandardsSheet
from quotegen.explain.words.no_break import NO_BREAK
from quotegen.reading.content.content import When
from tests.pricing import shop
from tests.world import EXAMPLES

DECK = shop.placement("40 ft x 30 ft")
POOL = {**DECK, "take_away": [{"rectangle": "20 ft x 10 ft", "at": ["9 ft", "9 ft"], "is": "pool"}]}
HOLE = {**DECK, "take_away": [{"rectangle": "20 ft x 10 ft", "at": ["9 ft", "9 ft"]}]}
AT_THE_HOUSE = {**DECK, "add": [{"rectangle": "40 ft x 30 ft", "against_house": "bottom"}]}
SEALED = {"plain": {**shop.PLAIN, "sealer": "film"}}


def _sheet(folder: Path, placement: shop.Typed = DECK, *, rates: shop.Typed | None = None,
           finishes: shop.Typed | None = None, **more) -> StandardsSheet:  # fmt: skip
    return standard_sheet(shop.results(
        folder, shop.job(placement, **more), rate_book=shop.book(rates, finishes)))  # fmt: skip


def _ids(sheet: StandardsSheet) -> set[str]:
    return {page.id for page in sheet.safety}


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
    bare = _ids(_sheet(tmp_path))
    there = _ids(_sheet(tmp_path, placement, rates=rates, finishes=finishes))
    assert _about(when)
    assert _about(when) <= there
    assert _about(when) & bare == set()


def test_the_bare_deck_has_what_always_applies(tmp_path):
    """Wet concrete, open work and hot or wet surfaces concern every job."""
    always = {p.front.id for p in shop.shared().content.safety.values()
              if When.ALWAYS in p.front.applies}  # fmt: skip
    assert always
    assert _ids(_sheet(tmp_path)) == always


def test_a_hole_is_no_pool(tmp_path):
    """An opening for a tree brings no note on pools."""
    assert _about(When.POOL) & _ids(_sheet(tmp_path, HOLE)) == set()


def test_the_companys_own_standard_is_printed(tmp_path):
    """A tighter figure stands in the promise and in the sources, the others as published."""
    company = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    company["standards"] = {"crack_width": "1/8 in"}
    files = {"rate_book": shop.book(), "company": shop.as_yaml(company)}
    sheet = standard_sheet(shop.results(tmp_path, shop.job(DECK), **files))
    promised = sheet.promised.html.replace(NO_BREAK, " ")
    assert "none wider than 1/8 in" in promised
    assert "more than 1/4 in higher" in promised
    (own,) = [row for row in sheet.sources if row.name.startswith("Our own promise")]
    assert "1/8 in" in own.text


def test_the_care_card_goes_by_the_calendar(tmp_path):
    """From the pour on, days in their order, then the winter, the yearly look, the next coat."""
    seal = {"visit": "seal", "days": "1", "wait_days": "28"}
    fancy = {**shop.FANCY, "brings": [], "visits": [shop.FORM, shop.POUR, seal]}
    sheet = _sheet(tmp_path, finishes={"plain": fancy})
    names = [row.name for row in sheet.care_dates]
    assert names[-3:] == ["Winter 2026 to 2027", "Each spring from 2027", "About 2028 to 2029"]
    texts = [row.text for row in sheet.care_dates]
    assert texts[0].startswith("Pour.")
    assert texts.index("Walk on it") < texts.index("Judge the color, if it has been warm and dry")


def test_care_follows_the_finish(tmp_path):
    """Care for a film sealer is not given to who has none, and the other way round."""
    fancy = {"plain": {**shop.FANCY, "brings": []}}
    stamped = {page.id for page in _sheet(tmp_path, finishes=fancy).care}
    broom = {page.id for page in _sheet(tmp_path).care}
    pages = shop.shared().content.care.values()
    assert stamped == {p.front.id for p in pages
                       if {"all", "stamped_texture"} & set(p.front.finishes)}  # fmt: skip
    assert broom == {p.front.id for p in pages if {"all", "broom"} & set(p.front.finishes)}
    assert stamped != broom


def test_a_source_for_each_rule(tmp_path):
    """Each source names where it was published and what it says; no source is left blank."""
    sources = _sheet(tmp_path, POOL).sources
    assert sources
    for row in sources:
        assert row.name
        assert row.text
