"""Another language is a folder of the owner's: no fixed text of ours stands anywhere else."""

import email
import email.policy
import re
from collections.abc import Mapping
from html import unescape
from pathlib import Path
from shutil import copytree

import icalendar
import pytest
from playwright.sync_api import Browser

from quotegen.publish.package import Package
from tests.browser.conftest import REPO, opened
from tests.pricing.shop import shared
from tests.publish.built import build, page_text, unprinted
from tests.publish.paper import laid_out, past_the_edge
from tests.publish.pseudo import named_texts, pseudo_content, strangers, typed_texts

EXAMPLES = REPO / "example_jobs" / "itemized"
CHOSEN = ("orchard-bend-pool-deck", "cutters-row-drive")  # all sheets; all papers after signing
SAID = re.compile(r'(?:alt|title|aria-label|data-label|data-page|content)="([^"]*)"')
SILENT = re.compile(
    r'<style>.*?</style>|<meta (?:charset|http-equiv|name="?(?:viewport|color)).*?>|<link.*?>',
    re.DOTALL,
)
WORKING = re.compile(r"<span class=.*?</span>", re.DOTALL)
"""On the order list: what the book calls a material, and the column of working."""


@pytest.fixture(scope="module")
def packages(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, Package]:
    """Return two examples in the made-up language; their papers are laid out where one is read."""
    company = Path(copytree(EXAMPLES, tmp_path_factory.mktemp("company") / "itemized"))
    language = pseudo_content(company / "content").name
    jobs = tuple(company / "jobs" / f"{name}.yaml" for name in CHOSEN)
    for job in jobs:
        with job.open("a", encoding="utf-8") as typed:
            typed.write(f"language: {language}\n")
    with unprinted():
        made = build(jobs, shared())
    assert made.problems == ()
    return dict(zip(CHOSEN, made.packages.values(), strict=True))


@pytest.fixture(scope="module")
def known() -> str:
    """Return the words that need no translation: the owner's own, dates, titles of standards."""
    files = (*EXAMPLES.glob("*.yaml"), *(EXAMPLES / "jobs").glob("*.yaml"))
    return typed_texts(*files) + named_texts()


def test_no_english_is_left_on_a_page(packages: Mapping[str, Package], known: str):
    """Every word of every page, also of labels and alternative texts, is of the language.

    A page that is printed is read as the printer gets it too, with each label written out.
    The order list's column of working is left out: the owner alone reads it, beside the terminal.
    """
    assert set(packages) == set(CHOSEN)
    for package in packages.values():
        pages = {name: data.decode() for name, data in package.files.items()
                 if name.endswith(".html")} | dict(package.printed)  # fmt: skip
        assert len(pages) >= 4
        for name, page in pages.items():
            shown = SILENT.sub("", page)
            if name == "private/order-list.html":
                shown = WORKING.sub("", shown)
            said = "\n".join(map(unescape, SAID.findall(shown)))
            assert strangers(page_text(shown), known) == set(), name
            assert strangers(said, known) == set(), name


def test_no_english_is_left_in_mail_and_calendar(packages: Mapping[str, Package], known: str):
    """Subject, both texts of the mail, and every entry of the calendar are of the language."""
    for package in packages.values():
        mail = email.message_from_bytes(
            package.files["customer/email.eml"], policy=email.policy.default
        )
        plain, rich = mail.get_body(("plain",)), mail.get_body(("html",))
        assert plain is not None
        assert rich is not None
        calendar = icalendar.Calendar.from_ical(package.files["customer/visits.ics"].decode())
        entries = [str(entry[part]) for entry in calendar.walk("VEVENT")
                   for part in ("SUMMARY", "DESCRIPTION", "LOCATION") if part in entry]  # fmt: skip
        assert entries
        for text in (mail["Subject"], plain.get_content(), page_text(rich.get_content()), *entries):
            assert strangers(str(text), known) == set()


def test_dates_and_money_are_those_of_the_locale(packages: Mapping[str, Package]):
    """A date has the month of the language, and the page says which language it is in."""
    page = packages[CHOSEN[0]].printed["quote"]
    assert '<html lang="es">' in page
    assert "14 de mayo de 2026" in page_text(page)
    assert "$20,126.13" in page


def test_longer_words_stay_inside_a_small_phone(
    packages: Mapping[str, Package], browser: Browser, tmp_path: Path
):
    """With every word 40 % longer no page scrolls sideways at 320 px (WCAG 2.2, 1.4.10)."""
    for job, package in packages.items():
        for name, data in package.files.items():
            if name.endswith(".html"):
                path = tmp_path / f"{job}-{Path(name).name}"
                path.write_bytes(data)
                with opened(browser, path, width=320) as seen:
                    wide = seen.page.evaluate("document.documentElement.scrollWidth")
                    assert wide <= 320, path.name


def test_longer_words_stay_on_the_paper(packages: Mapping[str, Package]):
    """No text runs out of the printed part of a sheet, or out of its cell of a table."""
    for package in packages.values():
        for name, paper in package.printed.items():
            assert past_the_edge(laid_out(paper)) == [], name
        for name, data in package.files.items():
            if name.endswith(("/final-measurement.html", "/changes.html")):
                assert past_the_edge(laid_out(data.decode())) == [], name
