"""What a person types is text: on every page, under its policy and without it."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.injections import INJECTIONS, built_pages, harm
from tests.pricing.shop import shared

SOME = {
    "cutters-row-drive": ("customer/changes.html",),
    "orchard-bend-pool-deck": ("customer/quote.html",),
}
"""Pages with most texts; `./run fuzz` opens all, with each injection in each field."""


@pytest.mark.parametrize("job", SOME)
def test_no_text_acts(tmp_path: Path, browser: Browser, job: str):
    """With an injection in every text of all four files no page acts, asks or has more parts."""
    files, count = built_pages(job, 0, shared())
    clean, _ = built_pages(job, None, shared())
    wrong, loads = harm(browser, files, clean, tmp_path, SOME[job])
    assert wrong == []
    assert (count > 100, loads, len(INJECTIONS)) == (True, 2, 300)


def test_the_canary_sings(tmp_path: Path, browser: Browser):
    """Markup that does get into a page is noticed, so that the test above can fail."""
    page = "customer/compare-bids.html"
    clean = {page: b"<!DOCTYPE html><title>x</title><p>text"}
    files = {page: clean[page] + b"<img src=x onerror=canary()><a href=javascript:canary()>y</a>"}
    wrong, _ = harm(browser, files, clean, tmp_path, (page,))
    assert f"{page}: sang" in wrong
    assert any("made of" in said for said in wrong)
