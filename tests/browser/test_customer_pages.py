"""What the homeowner opens: silent, safe, readable on a small phone, whole without scripts."""

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from tests.browser.conftest import opened


def customer_pages(packages: Path) -> list[Path]:
    """Return every quote, and of each other kind of page that a homeowner gets the longest."""
    quotes = sorted(packages.glob("*/customer/quote.html"))
    assert len(quotes) == len(list(packages.glob("*")))
    kinds: dict[str, Path] = {}
    for path in sorted(packages.glob("*/customer/*.html")):
        kind = path.stem.rstrip("-0123456789")
        longest = kinds.setdefault(kind, path)
        kinds[kind] = max(longest, path, key=lambda page: page.stat().st_size)
    assert {"quote", "compare-bids", "past-job", "final-measurement", "changes"} <= {*kinds}
    return [*quotes, *(path for kind, path in kinds.items() if kind != "quote")]


def test_nothing_is_asked_of_the_network(packages: Path, browser: Browser):
    """A customer page is one file: opening it makes no request but for itself."""
    for path in customer_pages(packages):
        with opened(browser, path) as seen:
            seen.page.wait_for_timeout(300)
            asked = [url for url in seen.requests if not url.startswith("data:")]
            assert asked == [path.as_uri()]


def test_the_page_keeps_its_security_policy(packages: Path, browser: Browser):
    """A policy stands in the head before anything it governs, and nothing on the page breaks it."""
    for path in customer_pages(packages):
        with opened(browser, path) as seen:
            policies = seen.page.locator(
                "head > meta[http-equiv='Content-Security-Policy' i]:not(style ~ *, script ~ *)"
            )
            assert policies.count() == 1, path.name
            policy = policies.get_attribute("content") or ""
            assert "default-src 'none'" in policy
            assert "'unsafe-" not in policy
            for switch in seen.page.locator("summary, input, button").all():
                switch.dispatch_event("click")
            seen.page.wait_for_timeout(100)
            assert seen.complaints == [], path.name


@pytest.mark.parametrize("width", [360, 320])
def test_no_sideways_scroll_on_a_phone(packages: Path, browser: Browser, width: int):
    """Even on the narrowest phone, or at 400 % zoom, a line of text ends inside the screen."""
    for path in customer_pages(packages):
        with opened(browser, path, width=width) as seen:
            wide = seen.page.evaluate("document.documentElement.scrollWidth")
            assert wide <= width, path.name


def test_all_is_there_without_javascript(packages: Path, browser: Browser):
    """Scripts only help: what a reader sees with them is there without them."""
    for path in customer_pages(packages):
        with opened(browser, path) as with_scripts:
            expected = {*with_scripts.page.locator("body").inner_text().splitlines()}
        with opened(browser, path, javascript=False) as without:
            assert expected <= {*without.page.locator("body").inner_text().splitlines()}
        assert any(expected)


@pytest.mark.parametrize("width", [360, 1280])
def test_axe_finds_nothing(packages: Path, browser: Browser, width: int):
    """The accessibility checker axe-core reports no violation on phone or desktop."""
    for path in customer_pages(packages):
        with opened(browser, path, width=width, policy_off=True) as seen:
            result = Axe().run(seen.page)
            assert result.violations_count == 0, f"{path.name}\n{result.generate_report()}"


@pytest.mark.parametrize("width", [768, 1000])
def test_nothing_hangs_out_at_the_left(packages: Path, browser: Browser, width: int):
    """On a tablet, where names stand in a side column, none begins left of the page."""
    outside = """() => [...document.querySelectorAll("main *")]
      .filter((one) => one.checkVisibility() && !one.closest("thead, .skip") &&
        one.getBoundingClientRect().left < -1 && one.innerText)
      .map((one) => one.innerText.slice(0, 40))"""
    for path in customer_pages(packages):
        with opened(browser, path, width=width) as seen:
            assert seen.page.evaluate(outside) == [], path.name


def test_no_number_is_broken_over_two_lines(packages: Path, browser: Browser):
    """On the narrowest phone each number stays on one line, with its hyphen, its sign, its unit."""
    broken = r"""() => {
      const unit = "(?:sq\\sft|cu\\syd|days|in|ft|m²?|%)(?!\\w)";
      const wanted =
        new RegExp(`\\d+(?:-\\d[\\d/]*)+|[+−][^\\w\\s]\\d[\\d.,]*|\\d[\\d.,]*\\s${unit}`, "gu");
      const main = document.querySelector("main");
      const texts = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
      const found = [];
      while (texts.nextNode()) {
        const text = texts.currentNode;
        for (const one of text.data.matchAll(wanted)) {
          const range = document.createRange();
          range.setStart(text, one.index);
          range.setEnd(text, one.index + one[0].length);
          const lines = new Set([...range.getClientRects()].map((box) => Math.round(box.top)));
          if (!text.parentElement.closest("svg") && lines.size > 1) found.push(text.data.trim());
        }
      }
      return found;
    }"""
    for path in customer_pages(packages):
        with opened(browser, path, width=320) as seen:
            assert seen.page.evaluate(broken) == [], path.name
