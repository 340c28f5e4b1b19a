"""Fonts of a page: its own letters, and always the same bytes."""

from io import BytesIO
from pathlib import Path

from fontTools.ttLib import TTFont

from quotegen.publish.web.fonts import subset
from quotegen.resources import themes_folder

FONT = Path(str(themes_folder())) / "shop" / "fonts" / "next-400.woff2"


def test_a_font_keeps_the_letters_of_the_page_and_its_even_figures():
    """The letters asked for are there, others are not; figures can stand in columns."""
    cut = TTFont(BytesIO(subset(FONT.read_bytes(), "$19az")))
    assert set(map(chr, cut.getBestCmap())) == set("$19az")
    assert {one.FeatureTag for one in cut["GSUB"].table.FeatureList.FeatureRecord} >= {"tnum"}


def test_it_is_small_and_the_same_each_time():
    """A few letters weigh a part of the font, and come out alike without the cache."""
    whole = FONT.read_bytes()
    first = subset(whole, "abc")
    subset.cache_clear()
    assert subset(whole, "abc") == first
    assert len(first) < len(whole) / 4
