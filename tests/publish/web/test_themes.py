"""A theme is templates, styles and fonts; one may build on another; the company chooses."""

import re

import pytest

from quotegen.publish.web import themes
from quotegen.publish.web.contrast import LEAST_FOR_TEXT, contrast
from quotegen.publish.web.html import styles_of
from quotegen.resources import theme_names, themes_folder
from tests.publish.web.test_html import source

THEMES = themes_folder()
EVERY_THEME = pytest.mark.parametrize("name", theme_names())
MAY_HOLD = {".j2", ".css", ".yaml", ".woff2", ".txt", ".js"}


def set_in(css: str) -> dict[str, str]:
    """Return every custom property that a style sheet sets; its last value counts."""
    return dict(re.findall(r"(--[\w-]+):\s*([^;]+);", css))


def test_there_are_two():
    """Two themes prove that the look is no part of the program."""
    assert len(theme_names()) >= 2


@EVERY_THEME
def test_a_theme_is_no_code(name: str):
    """Its folder holds templates, styles, fonts, their license, and a script that looks up."""
    files = [path for path in (THEMES / name).rglob("*") if path.is_file()]
    assert files
    assert {path.suffix for path in files} <= MAY_HOLD
    for path in files:
        if path.suffix in {".j2", ".css"}:
            assert "javascript:" not in path.read_text(encoding="utf-8")


@EVERY_THEME
def test_a_font_has_its_license_beside_it(name: str):
    """Each folder of fonts has the open license under which they may be passed on (SIL OFL 1.1)."""
    fonts = THEMES / name / "fonts"
    assert list(fonts.glob("*.woff2"))
    text = (fonts / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
    assert "Copyright" in text


@EVERY_THEME
def test_each_listed_style_sheet_is_there(name: str):
    """A theme lists, for every template that has styles, sheets that it or the one below has."""
    theme = THEMES / name
    for template in themes.settings(theme, "styles"):
        assert themes.find(theme, template).is_file()
        for size in ("letter", "A4"):
            styles = styles_of(template, theme, size)
            assert len(styles.page) > 1
            for sheet in (*styles.page, *styles.paper):
                assert themes.find(theme, f"styles/{sheet}").is_file()


def test_what_a_theme_lacks_comes_from_the_one_below():
    """The notebook brings its own title block, and takes the quote from the shop."""
    book = THEMES / "notebook"
    assert themes.find(book, "title-block.html.j2") == book / "title-block.html.j2"
    assert themes.find(book, "quote.html.j2") == THEMES / "shop" / "quote.html.j2"
    with pytest.raises(FileNotFoundError):
        themes.find(book, "no-such.html.j2")


def test_no_template_stands_twice():
    """A theme that builds on another repeats none of its files."""
    book, shop = THEMES / "notebook", THEMES / "shop"
    for path in book.rglob("*.j2"):
        below = shop / path.relative_to(book)
        assert source(path) != source(below) if below.is_file() else True


@EVERY_THEME
def test_every_size_and_line_is_a_token(name: str):
    """Colors stand among the tokens alone, and each token that is used is set."""
    theme = THEMES / name
    sheets = {path.name: path.read_text(encoding="utf-8") for layer in ("shop", name)
              for path in (THEMES / layer / "styles").glob("*.css")}  # fmt: skip
    for sheet, text in sheets.items():
        if sheet != "tokens.css":
            assert re.findall(r"#[0-9a-fA-F]{3,8}\b(?=[^{]*[;}])", text) == [], sheet
    known = set(set_in("\n".join(sheets.values())))
    used = {name for text in sheets.values() for name in re.findall(r"var\((--[\w-]+)\)", text)}
    assert used <= known
    assert known - used <= {"--touch"}, theme


def test_the_specimen_shows_every_space_and_line():
    """`quotegen specimen` draws each step between things and each line by its name."""
    sheet = source(THEMES / "shop" / "specimen.html.j2")
    tokens = set_in((THEMES / "shop" / "styles" / "tokens.css").read_text(encoding="utf-8"))
    drawn = [name for name in tokens if name.startswith(("--space-", "--line-"))]
    assert len(drawn) > 8
    assert [name for name in drawn if f'"{name.removeprefix("--")}"' not in sheet] == []


@EVERY_THEME
def test_inks_survive_a_photocopy(name: str):
    """Text in each ink is at AA by lightness alone, so it reads in black and white (WCAG 1.4.3)."""
    theme = THEMES / name
    sheets = styles_of("quote.html.j2", theme, "letter").page
    css = "\n".join(themes.read(theme, f"styles/{sheet}") for sheet in sheets)
    values = set_in(re.sub(r"^@media print \{.*?^\}", "", css, flags=re.DOTALL | re.MULTILINE))
    for ink in ("--ink", "--soft"):
        assert contrast(values[ink], values["--ground"]) >= LEAST_FOR_TEXT
    assert contrast(values["--hair"], values["--ground"]) >= 2
