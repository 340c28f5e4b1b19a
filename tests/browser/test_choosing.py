"""Choosing on the page, in a real browser: by keyboard, by link, aloud, and never by a sum."""

import json
import re
from collections.abc import Iterable, Iterator
from itertools import chain
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from quotegen.explain.sheets.choices import ROWS
from tests.browser.conftest import Opened, opened

POOL_DECK, PATIO = "2026-041", "2026-043"
AMOUNT = re.compile(r"[+\N{MINUS SIGN}]?\$[\d,]+(?:\.\d+)?")
PLACES = """() => {
  const said = (cell) => cell.dataset.said ?? (cell.querySelector("summary") ?? cell).textContent;
  const cells = (row) => (row.children.length ? [...row.children] : [row]);
  return {
    texts: [...document.querySelectorAll("[data-slot]")].map((one) =>
      [one.dataset.slot, one.textContent]),
    rows: [...document.querySelectorAll("[data-rows]")].map((one) =>
      [one.dataset.rows, [...one.children].map((row) => cells(row).map(said))]),
  };
}"""
"""What stands in each place that follows the choice."""
SEEN = """() => {
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found = [];
  while (texts.nextNode()) {
    const above = texts.currentNode.parentElement;
    if (above.checkVisibility() && !above.closest("script, style, #choose, .compare"))
      found.push(texts.currentNode.data);
  }
  return found;
}"""
"""Every text that is seen, but for the options, each of which has its own price."""
SHOWN = """(all) =>
  all.filter((one) => one.checkVisibility() && getComputedStyle(one).display !== "none")"""
"""Parts of a drawing count as visible for `checkVisibility` though they are not displayed."""
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
    """Return the amounts of the payments, which stand in the calendar."""
    amounts = page.locator("[data-rows=days] > tr > .num").all_inner_texts()
    return [amount for amount in amounts if amount]


def amounts_in(texts: Iterable[str]) -> set[str]:
    """Return every amount of money in some texts."""
    return set(AMOUNT.findall(" ".join(texts)))


def cents(amount: str) -> int:
    """Read an amount, which may be a credit."""
    number = int(re.sub(r"\D", "", amount))
    return -number if amount.startswith("\N{MINUS SIGN}") else number


def looked_up(page: Page) -> dict[str, tuple[dict[str, str], dict[str, list[list[str]]]]]:
    """Return the texts and the rows of every combination, as the data in the page has them."""
    data = json.loads(page.locator("#combinations").text_content() or "")
    text, rows, lists = data["text"], data["rows"], data["lists"]
    found = {}
    for key, places in data["combinations"].items():
        at = dict(zip(data["names"], places, strict=True))
        lines = {
            name: [[text[cell] for cell in rows[row]] for row in lists[at[name]]]
            for name in at.keys() & {*ROWS}
        }
        found[key] = ({name: text[at[name]] for name in at.keys() - {*ROWS}}, lines)
    return found


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

    Total, finish, payments and the letter that asks follow at once, the live region says them,
    and the address keeps them.
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
        link = page.locator("#agreement a[data-ask]").get_attribute("href") or ""
        letter = parse_qs(link.partition("?")[2])
        assert letter["subject"] == [
            f"Please send new sheets for quote {POOL_DECK}: Broom; with trench drain"
        ]
        assert f"Broom; with trench drain, shown on the page at {money(both['total'])}" in " ".join(
            letter["body"][0].split()
        )
        assert seen.complaints == []


def test_what_a_finish_does_not_take_is_off(packages: Path, browser: Browser):
    """Colors go with some finishes; with another they are off, and come back with the first."""
    with opened(browser, page_of(packages, POOL_DECK)) as seen:
        clay = seen.page.locator("input[value='clay+charcoal']")
        clay.check()
        seen.page.locator("input[value=broom]").check()
        assert clay.is_disabled()
        assert not clay.is_checked()
        beside = seen.page.locator("label", has=clay).locator("[data-amount]")
        assert beside.inner_text() == "not with this finish"
        assert said(seen.page).endswith("Broom")
        seen.page.locator("input[value=ashlar]").check()
        assert clay.is_enabled()
        assert AMOUNT.fullmatch(beside.inner_text())


EVERY_CHOICE = pytest.mark.parametrize("quote", [POOL_DECK, PATIO])


@EVERY_CHOICE
def test_each_combination_shows_its_figures(packages: Path, browser: Browser, quote: str):
    """By its link, every combination shows the total, the payments and the lines of the figures."""
    with opened(browser, page_of(packages, quote)) as seen:
        for key, one in keys(packages, quote):
            page = follow(seen, f"choose={key}")
            total = money(one["total"])
            shown = page.locator("[data-slot=total]").all_text_contents()
            assert set(shown) == {total}, key
            assert payments(page) == [money(amount) for amount in one["payments"]], key
            lines = page.locator("[data-rows=lines] > tr > :nth-child(6)").all_text_contents()
            assert sum(map(cents, lines)) == cents(total), key
        assert seen.complaints == []


@EVERY_CHOICE
def test_every_place_follows_a_choice(packages: Path, browser: Browser, quote: str):
    """Each text and each list says what the combination's data says, and none has no place."""
    with opened(browser, page_of(packages, quote)) as seen:
        for key, (texts, rows) in looked_up(seen.page).items():
            places = follow(seen, f"choose={key}").evaluate(PLACES)
            for name, text in places["texts"]:
                assert text == texts[name], (key, name)
            assert dict(places["rows"]) == rows, key
            placed = {name for name, _ in places["texts"]}
            assert placed | {"ask_subject"} >= {name for name, text in texts.items() if text}


@EVERY_CHOICE
def test_what_binds_is_the_quote_alone(packages: Path, browser: Browser, quote: str):
    """Signatures, the yes and the cut-open slab go with another choice, and the asking comes.

    The patio is signed already, so that no page of it has a place to sign.
    """
    with opened(browser, page_of(packages, quote)) as seen:
        assert seen.page.locator(".signatures").count() == (quote == POOL_DECK)
        quoted, *others = looked_up(seen.page)
        for key in (*others, quoted):
            page = follow(seen, f"choose={key}")
            for mark, is_shown in (("data-quoted", key == quoted), ("data-differs", key != quoted)):
                parts = page.locator(f"[{mark}]")
                assert parts.count() > 0, mark
                hidden = parts.evaluate_all("all => all.map((one) => one.hasAttribute('hidden'))")
                assert set(hidden) == {not is_shown}, (key, mark)
                visible = parts.evaluate_all(SHOWN)
                assert bool(visible) == is_shown, (key, mark)
            for bound in page.locator(".signatures, #yes > :first-child, figure.cut-open").all():
                assert bound.is_visible() == (key == quoted), key
            assert page.locator("[data-ask]").is_visible() == (key != quoted), key


@EVERY_CHOICE
@pytest.mark.parametrize("width", [360, 1280])
def test_no_figure_of_the_quote_is_left(packages: Path, browser: Browser, quote: str, width: int):
    """With each combination no amount is seen that is the quote's alone, and its own are.

    On a phone a day of the calendar has no row where nothing happens, and each other has.
    """
    with opened(browser, page_of(packages, quote), width=width) as seen:
        every = looked_up(seen.page)
        figures_of = {
            key: amounts_in((
                *(text for name, text in texts.items() if not name.startswith("adds.")),
                *(cell for row in chain(*rows.values()) for cell in row),
            ))
            for key, (texts, rows) in every.items()
        }  # fmt: skip
        quoted = next(iter(every))
        for key, (texts, rows) in every.items():
            shown = amounts_in(follow(seen, f"choose={key}").evaluate(SEEN))
            assert shown & (figures_of[quoted] - figures_of[key]) == set(), key
            assert amounts_in([texts["total"], *(row[-1] for row in rows["days"])]) <= shown, key
            days = seen.page.locator("[data-rows=days] > tr")
            visible = [row.is_visible() for row in days.all()]
            told = [width > 720 or any(row[-4:]) for row in rows["days"]]
            assert visible == told, key


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


@EVERY_CHOICE
def test_without_javascript_the_options_are_a_plain_list(
    packages: Path, browser: Browser, quote: str
):
    """With scripts off no control stands there that does nothing, and each option has its price."""
    told = figures(packages, quote)
    as_quoted = next(iter(told["combinations"]))
    with opened(browser, page_of(packages, quote), javascript=False) as seen:
        text = seen.page.locator("#choose").inner_text()
        for finish in told["finishes"]:
            assert money(finish["total"]) in text, finish["id"]
        for _, one in keys(packages, quote):
            if (one["finish"], one["extras"]) == (as_quoted["finish"], []):
                assert money(one["total"]) in text, one
            if len(one["extras"]) == 1 and one["finish"] == as_quoted["finish"]:
                more = cents(money(one["total"])) - cents(money(as_quoted["total"]))
                assert f"+{money(str(more / 100))}" in text or one["colors"], one
        assert not any(box.is_visible() for box in seen.page.locator("#choose input").all())
        assert seen.page.locator("[role=status]").is_visible()
        assert not any(part.is_visible() for part in seen.page.locator("[data-differs]").all())


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
