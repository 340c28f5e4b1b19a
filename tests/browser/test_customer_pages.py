"""What the homeowner opens: silent, safe, readable on a small phone, whole without scripts."""

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from tests.browser.conftest import opened
from tests.pricing.shop import JOBS
from tests.publish.built import built

KINDS = {
    "customer": {"quote", "compare-bids", "past-jobs", "final-measurement", "changes"},
    "private": {"cost-sheet", "phone-sheet", "order-list", "law-checklist"},
}


def longest_of_each_kind(packages: Path, room: str = "customer") -> list[Path]:
    """Of each kind of page in a room of a package the longest."""
    kinds: dict[str, Path] = {}
    for path in sorted(packages.glob(f"*/{room}/*.html")):
        kind = path.stem.rstrip("-0123456789")
        longest = kinds.setdefault(kind, path)
        kinds[kind] = max(longest, path, key=lambda page: page.stat().st_size)
    assert KINDS[room] <= {*kinds}
    return list(kinds.values())


def customer_pages(packages: Path) -> list[Path]:
    """Every quote, and of each other kind of page the longest."""
    quotes = sorted(packages.glob("*/customer/quote.html"))
    assert len(quotes) == len(list(packages.glob("*")))
    return [*quotes, *(path for path in longest_of_each_kind(packages) if path not in quotes)]


def test_a_page_is_silent_and_keeps_its_policy(packages: Path, browser: Browser):
    """A customer page is one file: it asks the network for nothing, whatever is clicked.

    A policy stands in the head before anything it governs, and nothing on the page breaks it.
    """
    for path in customer_pages(packages):
        with opened(browser, path) as seen:
            policies = seen.page.locator(
                "head > meta[http-equiv='Content-Security-Policy' i]:not(style ~ *, script ~ *)"
            )
            assert policies.count() == 1, path.name
            policy = policies.get_attribute("content") or ""
            assert "default-src 'none'" in policy
            assert "'unsafe-" not in policy
            clicked = seen.page.locator("summary, input, button").evaluate_all(
                "(all) => all.filter((one) => one.dispatchEvent("
                "new MouseEvent('click', {bubbles: true, cancelable: true})) || true).length"
            )
            assert clicked > 0 or path.stem != "quote"
            seen.page.wait_for_timeout(300)
            assert seen.complaints == [], path.name
            asked = [url for url in seen.requests if not url.startswith("data:")]
            assert asked == [path.as_uri()]


HANGING_LEFT = """() => [...document.querySelectorAll("main *")]
  .filter((one) => one.checkVisibility() && !one.closest("thead, .skip") &&
    one.getBoundingClientRect().left < -1 && one.innerText)
  .map((one) => one.innerText.slice(0, 40))"""
BROKEN_NUMBERS = r"""() => {
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


def test_a_page_fits_every_screen(packages: Path, browser: Browser):
    """No page scrolls sideways on the narrowest phone, or at 400 % zoom.

    There each number stays on one line, with its hyphen, its sign, its unit. On a tablet, where
    names stand in a side column, none begins left of the page.
    """
    for path in customer_pages(packages):
        with opened(browser, path, width=320) as seen:
            assert seen.page.evaluate(BROKEN_NUMBERS) == [], path.name
            for width in (320, 360, 768, 1000):
                seen.page.set_viewport_size({"width": width, "height": 800})
                wide = seen.page.evaluate("document.documentElement.scrollWidth")
                assert wide <= width, (path.name, width)
                assert seen.page.evaluate(HANGING_LEFT) == [], (path.name, width)


LYING_ON_OTHERS = r"""() => {
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), lines = [];
  while (texts.nextNode()) {
    const text = texts.currentNode, within = text.parentElement, range = document.createRange();
    const apart = (one) =>
      one && (getComputedStyle(one).clipPath !== "none" || apart(one.parentElement));
    if (!text.data.trim() || !within.checkVisibility() || within.closest(".bar, svg")) continue;
    if (apart(within)) continue;
    range.selectNodeContents(text);
    for (const box of range.getClientRects()) lines.push([box, text.data.trim().slice(0, 40)]);
  }
  lines.sort(([one], [other]) => one.top - other.top);
  const found = [];
  lines.forEach(([one, said], n) => {
    for (let next = n + 1; next < lines.length && lines[next][0].top < one.bottom; next++) {
      const [other, also] = lines[next];
      const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      const down = Math.min(one.bottom, other.bottom) - other.top;
      if (across > 2 && down > 0.4 * Math.min(one.height, other.height)) found.push([said, also]);
    }
  });
  return found;
}"""
"""Two texts in one place; what only a screen reader gets and the bar that floats are no fault."""


def test_no_words_lie_on_others(packages: Path, browser: Browser):
    """On no page, the owner's own too, does a line of words cover another."""
    for path in [*longest_of_each_kind(packages), *longest_of_each_kind(packages, "private")]:
        with opened(browser, path) as seen:
            for width in (1280, 360):
                seen.page.set_viewport_size({"width": width, "height": 800})
                assert seen.page.evaluate(LYING_ON_OTHERS) == [], (path.name, width)


MOST_PX, SCREEN_PX, CALENDAR_SCREENS = 12_000, 800, 10
TAP_PX, CLOSE_PX = 44, 24
SMALL_TARGETS = """() => [...document.querySelectorAll("a, summary, input, label.opt")]
  .filter((one) => one.checkVisibility() && !one.closest(".skip"))
  .map((one) => [one, (one.closest("label") ?? one).getBoundingClientRect()])
  .filter(([one, box]) => box.height < (one.closest("p, td, th, li, .small") &&
    !one.closest(".touch, nav") ? CLOSE : TAP) - 0.5)
  .map(([one, box]) => `${Math.round(box.height)} px: ${one.textContent.trim().slice(0, 40)}`)"""


@pytest.mark.parametrize("job_file", JOBS, ids=lambda path: path.stem)
def test_a_phone_is_not_scrolled_for_ever(tmp_path: Path, browser: Browser, job_file: Path):
    """With all details closed a quote is 12,000 px at most on a phone of 360 px.

    The calendar begins within the first ten screens of 800 px.
    """
    path = tmp_path / "quote.html"
    path.write_bytes(built(job_file)["customer/quote.html"])
    with opened(browser, path, width=360) as seen:
        tall = seen.page.evaluate("document.documentElement.scrollHeight")
        begins = seen.page.evaluate(
            "document.querySelector('.calendar').getBoundingClientRect().top"
        )
    assert tall <= MOST_PX
    assert begins <= CALENDAR_SCREENS * SCREEN_PX


def test_a_thumb_hits_what_it_aims_at(packages: Path, browser: Browser):
    """A control is 44 px high on a phone, and one in a line of text or a table 24 px.

    WCAG 2.2: 2.5.5 (enhanced) has 44 CSS px, 2.5.8 has 24 and leaves out links in sentences.
    """
    for path in sorted(packages.glob("*/customer/quote.html")):
        with opened(browser, path, width=360) as seen:
            asked = SMALL_TARGETS.replace("CLOSE", str(CLOSE_PX)).replace("TAP", str(TAP_PX))
            assert seen.page.evaluate(asked) == [], path.parent.parent.name


def test_all_is_there_without_javascript(packages: Path, browser: Browser):
    """Scripts only help: what a reader of any kind of page sees with them is there without them."""
    for path in longest_of_each_kind(packages):
        with opened(browser, path) as with_scripts:
            expected = {*with_scripts.page.locator("body").inner_text().splitlines()}
        with opened(browser, path, javascript=False) as without:
            assert expected <= {*without.page.locator("body").inner_text().splitlines()}
        assert any(expected)


def test_axe_finds_nothing_on_a_phone(packages: Path, browser: Browser):
    """The accessibility checker axe-core reports no violation on the longest page of each kind."""
    for path in longest_of_each_kind(packages):
        axe_finds_nothing(browser, path, width=360)


def test_axe_finds_nothing_on_a_desktop(packages: Path, browser: Browser):
    """Nor on a wide screen, where only the layout differs."""
    for path in longest_of_each_kind(packages):
        axe_finds_nothing(browser, path, width=1280)


def axe_finds_nothing(browser: Browser, path: Path, *, width: int) -> None:
    """Run axe-core on a page at a width in px."""
    with opened(browser, path, width=width, policy_off=True) as seen:
        result = Axe().run(seen.page)
        assert result.violations_count == 0, f"{path.name}\n{result.generate_report()}"
