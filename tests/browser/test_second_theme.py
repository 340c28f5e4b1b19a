"""The other theme and the specimen of each: every check that the usual theme passes, once more."""

import re
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from quotegen.resources import theme_names
from tests.browser import test_customer_pages
from tests.browser.conftest import opened

# The same checks: they ask for `packages`, and get those of this module. Scripts, and what a wide
# screen changes, are those of the usual theme.
test_a_page_is_silent_and_keeps_its_policy = (
    test_customer_pages.test_a_page_is_silent_and_keeps_its_policy
)
test_a_page_fits_every_screen = test_customer_pages.test_a_page_fits_every_screen


@pytest.fixture(scope="module")
def packages(second_theme: Path) -> Path:
    """Return the folder of one package in the other theme, with a logo, and of both specimens."""
    return second_theme


def test_the_logo_stands_for_the_name(packages: Path, browser: Browser):
    """The logo is drawn on the page, and its alternative text is the company's name."""
    with opened(browser, packages / "2026-029" / "customer" / "quote.html") as seen:
        logo = seen.page.get_by_role("img", name="Pennywort Flatwork")
        assert logo.count() == 1
        assert logo.evaluate("image => image.naturalWidth") > 0


def test_axe_finds_nothing_on_a_phone(packages: Path, browser: Browser):
    """A theme is inks, sizes and a title block: all of them stand on the quote."""
    page = packages / "2026-029" / "customer" / "quote.html"
    test_customer_pages.axe_finds_nothing(browser, page, width=360)


def test_axe_finds_nothing_on_paper(packages: Path, browser: Browser):
    """What a browser would print has no violation either (axe-core, WCAG 2.2 AA)."""
    for name in ("quote.html", *(f"{theme}.html" for theme in theme_names())):
        path = packages / "2026-029" / "customer" / name
        with opened(browser, path, width=816, policy_off=True) as seen:
            seen.page.emulate_media(media="print")
            result = Axe().run(seen.page)
            assert result.violations_count == 0, f"{name}\n{result.generate_report()}"


def test_both_themes_say_the_same(packages: Path, browser: Browser):
    """A theme changes looks, not words: both specimens hold the same texts but for the tokens."""
    said = []
    for theme in theme_names():
        with opened(browser, packages / "2026-029" / "customer" / f"{theme}.html") as seen:
            texts = seen.page.locator("section:not(#tokens)").all_inner_texts()
            said.append(re.sub(r"\s+", " ", " ".join(texts)))
    assert said[0]
    assert len(set(said)) == 1
