"""The font of the drawings is that of the theme, as wide as its file says."""

import re

import pytest
from fontTools.ttLib import TTFont

from quotegen.publish.web.drawing_font import font_of
from quotegen.publish.web.themes import settings
from quotegen.resources import theme_names, themes_folder

FONT = themes_folder() / "shop" / "fonts" / "sans-400.woff2"


@pytest.mark.parametrize(("face", "file"), [("plain", "sans-400"), ("bold", "sans-600")])
@pytest.mark.parametrize("text", ["Pool deck", "HOUSE", "A & B, (walk)", "Façade", "il.,:;'"])
def test_a_text_is_as_wide_as_the_advances_of_its_letters(face: str, file: str, text: str):
    """The drawings measure a text by the widths in the font file itself (OpenType `hmtx`)."""
    font = TTFont(FONT.with_name(f"{file}.woff2"))
    glyphs = font.getBestCmap()
    advance = sum(font["hmtx"][glyphs[ord(letter)]][0] for letter in text)
    measured = font_of(themes_folder() / "shop").width(text, 13, face=face)
    assert measured == pytest.approx(advance / font["head"].unitsPerEm * 13)


@pytest.mark.parametrize("figure", "0123456789")
def test_a_figure_has_room_in_either_form(figure: str):
    """A page sets figures of one width and print sets them as drawn: the wider one counts."""
    font = TTFont(themes_folder() / "notebook" / "fonts" / "serif-400.woff2")
    name = font.getBestCmap()[ord(figure)]
    drawn, even = (font["hmtx"][glyph][0] for glyph in (name, f"{name}.tf"))
    assert font_of(themes_folder() / "notebook").width(figure, 1000) == max(drawn, even)


def test_figures_of_the_shop_are_of_one_width():
    """So amounts line up under one another in print too, where no feature makes them even."""
    widths = font_of(themes_folder() / "shop").plain
    assert len({widths[figure] for figure in "0123456789"}) == 1


@pytest.mark.parametrize("theme", theme_names())
def test_a_drawing_is_lettered_in_the_font_of_its_theme(theme: str):
    """Family and files are those that the theme's own type.css declares, in both weights."""
    font = font_of(themes_folder() / theme)
    css = (themes_folder() / theme / "styles" / "type.css").read_text(encoding="utf-8")
    assert css.count(f'font-family: "{font.family}"') == 2
    named = settings(themes_folder() / theme, "font")
    for weight, face in ((400, "plain"), (700, "bold")):
        assert re.search(rf"font-weight: {weight};\s+src: url\({named[face]}\)", css)
    assert font.width("Patio", 12, face="bold") > font.width("Patio", 12)
