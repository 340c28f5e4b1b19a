"""Choosing on the page, in a real browser: by keyboard, by link, aloud, and never by a sum."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from tests.browser.conftest import Opened, opened

POOL_DECK, PATIO = "2026-041", "2026-043"
CLAY_AND_DRAIN = "choose=ashlar,clay+charcoal,trench_drain"


def page_of(packages: Path, quote: str) -> Path:
    """Return the quote as a web page."""
    return packages / quote / "customer" / "quote.html"


def figures(packages: Path, quote: str) -> dict[str, Any]:
    """Return the figures that the core worked out for a quote."""
    text = (packages / quote / "private" / "figures.json").read_text(encoding="utf-8")
    return dict(json.loads(text))


def combination(packages: Path, quote: str, finish: str, *extras: str) -> dict[str, Any]:
    """Return the figures of one way to choose, in the colors of the quote."""
    return next(
        one
        for one in figures(packages, quote)["combinations"]
        if (one["finish"], tuple(one["extras"]), one["colors"]) == (finish, extras, [])
    )


def money(amount: str) -> str:
    """Write an amount as a homeowner reads it."""
    return f"${float(amount):,.2f}"


def said(page: Page) -> str:
    """Return what the live region says, on one line."""
    return re.sub(r"\s+", " ", page.locator("[role=status]").inner_text())


def payments(page: Page) -> list[str]:
    """Return the amounts of the payments."""
    return page.locator("[data-rows=payments] > tr > :last-child").all_inner_texts()


def follow(seen: Opened, fragment: str) -> Page:
    """Go to another address of the same page, as a link in it would."""
    seen.page.evaluate("hash => { location.hash = hash }", fragment)
    seen.page.wait_for_timeout(50)
    return seen.page


def keys(packages: Path, quote: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield the key of every combination, put together anew from the figures."""
    told = figures(packages, quote)
    parts = dict.fromkeys(one["placement"] for one in told["alternates"])
    for one in told["combinations"]:
        choice = [one["finish"], *(one["alternates"].get(part, "") for part in parts)]
        if told["colors"]:
            choice.append("+".join(one["colors"]))
        yield ",".join((*choice, "+".join(one["extras"]))), one


def test_a_keyboard_is_enough_to_choose(packages: Path, browser: Browser):
    """From the link on sheet 1: arrows change the finish, the space bar adds an extra.

    Total, finish, payments and the reply follow at once, the live region says them, and the
    address keeps them.
    """
    with opened(browser, page_of(packages, POOL_DECK)) as seen:
        page = seen.page
        page.locator("#price a[href='#choose']").focus()
        page.keyboard.press("Enter")
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.value") == "ashlar"
        page.keyboard.press("ArrowDown")
        page.keyboard.press("ArrowDown")
        broom = combination(packages, POOL_DECK, "broom")
        assert said(page) == f"Total {money(broom['total'])} Broom"
        page.keyboard.press("Tab")
        page.keyboard.press("Tab")
        page.keyboard.press("Space")
        both = combination(packages, POOL_DECK, "broom", "trench_drain")
        assert said(page) == f"Total {money(both['total'])} Broom; with trench drain"
        assert page.locator("#price [data-slot=total]").inner_text() == money(both["total"])
        assert payments(page) == [money(amount) for amount in both["payments"]]
        assert "choose=broom,,trench_drain" in page.evaluate("location.hash")
        reply = page.locator("#agreement a[data-reply]").get_attribute("href") or ""
        assert f"Broom%3B%20with%20trench%20drain%2C%20%24{both['total'][:2]}%2C" in reply
        assert seen.complaints == []


def test_what_a_finish_does_not_take_is_off(packages: Path, browser: Browser):
    """Colors go with some finishes; with another they are off, and come back with the first."""
    with opened(browser, page_of(packages, POOL_DECK)) as seen:
        clay = seen.page.locator("input[value='clay+charcoal']")
        clay.check()
        seen.page.locator("input[value=broom]").check()
        assert clay.is_disabled()
        assert not clay.is_checked()
        assert said(seen.page).endswith("Broom")
        seen.page.locator("input[value=ashlar]").check()
        assert clay.is_enabled()


@pytest.mark.parametrize("quote", [POOL_DECK, PATIO])
def test_each_combination_shows_its_figures(packages: Path, browser: Browser, quote: str):
    """By its link, every combination shows the total, payments and subtotals of the figures."""
    with opened(browser, page_of(packages, quote)) as seen:
        for key, one in keys(packages, quote):
            page = follow(seen, f"choose={key}")
            total = money(one["total"])
            shown = page.locator("[data-slot=total]").all_text_contents()
            assert set(shown) == {total}, key
            assert payments(page) == [money(amount) for amount in one["payments"]]
            for rows in ("placements", "scopes"):
                amounts = page.locator(f"[data-rows={rows}] > tr > td").all_text_contents()
                cents = sum(int(re.sub(r"\D", "", amount)) for amount in amounts)
                assert cents == int(re.sub(r"\D", "", total)), (key, rows)
            assert page.locator("[data-plan]:not([hidden])").count() == 1
        assert seen.complaints == []


def test_a_link_carries_the_choice_and_the_sheet(packages: Path, browser: Browser):
    """Opened anew, a link with a sheet and a choice shows both; a wrong one shows the quote."""
    path = page_of(packages, POOL_DECK)
    with opened(browser, path) as seen:
        quoted = said(seen.page)
        for fragment, words in (
            (f"#days&{CLAY_AND_DRAIN}", "Clay red with charcoal; with trench drain"),
            (f"#{CLAY_AND_DRAIN.replace('+', '%2B')}", "Clay red with charcoal"),
        ):
            seen.page.goto("about:blank")
            seen.page.goto(f"{path.as_uri()}{fragment}")
            assert words in said(seen.page)
        page = follow(seen, "plan")
        assert page.evaluate("location.hash").startswith("#plan&choose=ashlar")
        seen.page.goto("about:blank")
        seen.page.goto(f"{path.as_uri()}#choose=marble,,")
        assert said(seen.page) == quoted
        assert seen.complaints == []


def test_nothing_leaves_the_page_while_choosing(packages: Path, browser: Browser):
    """Choosing makes no request and breaks no rule of the policy."""
    path = page_of(packages, POOL_DECK)
    with opened(browser, path) as seen:
        for box in seen.page.locator("#choose input").all():
            box.dispatch_event("click")
        seen.page.wait_for_timeout(100)
        assert [url for url in seen.requests if not url.startswith("data:")] == [path.as_uri()]
        assert seen.complaints == []


def test_without_javascript_each_total_is_on_the_page(packages: Path, browser: Browser):
    """With scripts off no control stands there that does nothing, and a table has each total."""
    for quote in (POOL_DECK, PATIO):
        with opened(browser, page_of(packages, quote), javascript=False) as seen:
            text = seen.page.locator("#finishes").inner_text()
            assert all(money(one["total"]) in text for _, one in keys(packages, quote))
            assert not any(box.is_visible() for box in seen.page.locator("#choose input").all())
            assert seen.page.locator("[role=status]").is_visible()


@pytest.mark.parametrize("width", [320, 640])
def test_no_sideways_scroll_with_a_choice(packages: Path, browser: Browser, width: int):
    """On a narrow phone, and on a desktop of 1280 px at 200 %, a long choice breaks its lines."""
    with opened(browser, page_of(packages, POOL_DECK), width=width) as seen:
        follow(seen, CLAY_AND_DRAIN)
        assert seen.page.evaluate("document.documentElement.scrollWidth") <= width


def test_the_total_covers_no_text(packages: Path, browser: Browser):
    """The sticky total ends the page: at its foot the last words stand above it."""
    with opened(browser, page_of(packages, POOL_DECK), width=360) as seen:
        seen.page.evaluate("scrollTo(0, document.body.scrollHeight)")
        bar = seen.page.locator("footer").bounding_box()
        last = seen.page.locator("main").bounding_box()
        assert bar is not None
        assert last is not None
        assert last["y"] + last["height"] <= bar["y"] + 1
        assert bar["height"] <= 120


@pytest.mark.parametrize("width", [360, 1280])
def test_axe_finds_nothing_with_a_choice(packages: Path, browser: Browser, width: int):
    """With a finish, colors and an extra chosen the checker still finds no violation."""
    path = page_of(packages, POOL_DECK)
    with opened(browser, path, width=width, policy_off=True) as seen:
        follow(seen, CLAY_AND_DRAIN)
        seen.page.locator("input[value=broom]").check()
        result = Axe().run(seen.page)
        assert result.violations_count == 0, result.generate_report()
