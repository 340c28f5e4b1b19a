"""The owner's law checklist, and the notice of cancellation. Not legal advice."""

from pathlib import Path

import pytest
import yaml

from quotegen.explain.papers.cancellation_form import cancellation_form
from quotegen.explain.private.law_checklist import LawSheet, law_sheet
from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import agreement_sheet, notice_of_cancellation
from quotegen.pipeline import figure
from quotegen.publish.web.html import render
from quotegen.resources import themes_folder
from quotegen.trade.contract_law import load_laws
from tests.pricing import shop
from tests.publish.built import page_text
from tests.world import EXAMPLES, write_world

SITE = {"address": "1 Test Lane", "town": "Harrow Bend"}


def _results(folder: Path, state: str | None = None, **company: object) -> Results:
    typed = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    typed.update(company)
    kept = {key: value for key, value in typed.items() if value is not None}
    site = {**SITE, "state": state} if state else SITE
    job = shop.job(site=site)
    return shop.results(folder, job, rate_book=shop.book(), company=shop.as_yaml(kept))


def _sheet(folder: Path, state: str | None = None, **company: object) -> LawSheet:
    return law_sheet(_results(folder, state, **company), load_laws())


def test_a_known_state_has_its_list(tmp_path: Path):
    """Connecticut's list names each clause; the federal rule follows it."""
    laws = _sheet(tmp_path, "CT").laws
    assert [law.name.split(",")[0] for law in laws] == [
        "Connecticut General Statutes 20-429 (as posted)", "FTC Cooling-Off Rule"]  # fmt: skip
    assert all(row.clause and row.sure and row.where for law in laws for row in law.rows)


@pytest.mark.parametrize("state", ["TX", "MI", "OH", None])
def test_an_unknown_state_has_the_superset_as_advice(tmp_path: Path, state: str | None):
    """Where no list applies the owner gets all that any law asks for, without a clause."""
    advice = _sheet(tmp_path, state).laws[0]
    assert advice.link == ""
    assert len(advice.rows) == len(load_laws().superset())
    assert {row.clause for row in advice.rows} == {""}


def test_it_says_what_it_is(tmp_path: Path):
    """Not legal advice, and the day it was checked, stand at its head."""
    about = _sheet(tmp_path).about
    assert about.startswith("Not legal advice; checked on November 28, 2026")


def test_what_nobody_typed_is_missing(tmp_path: Path):
    """Without a license number its row says so; where no law asks for one, nothing is warned of."""
    results = _results(tmp_path, None, license=None)  # a job that must be without any problem
    rows = law_sheet(results, load_laws()).laws[0].rows
    (row,) = [one for one in rows if "license" in one.what]
    assert row.where.startswith("Missing")


def test_a_post_box_is_no_street(tmp_path: Path):
    """A post box alone fails the address that the federal rule wants on the copy."""
    typed = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    files = {"rate_book": shop.book(), "company": shop.as_yaml({**typed, "address": "P.O. Box 12"})}
    (problem,) = shop.faults(write_world(tmp_path, shop.job(), **files))
    assert problem.code == "law-missing"
    assert "429.1(a)" in problem.message


def test_the_notice_comes_twice_with_its_words(tmp_path: Path):
    """16 CFR 429.1(b): two copies, the seller, and blank days until the quote is signed."""
    results = _results(tmp_path)
    theme = themes_folder() / "shop"
    page = render("cancellation.html.j2", cancellation_form(results), results.words, theme)
    assert page.count("I HEREBY CANCEL THIS TRANSACTION.") == 2
    assert page.count("within THREE BUSINESS DAYS from the above date") == 2
    assert (
        page_text(page).count("18 Kiln Lane, Harrow Bend, OH, NOT LATER THAN MIDNIGHT OF ____") == 2
    )


def test_subcontractors_stand_in_the_contract(tmp_path: Path):
    """Pennsylvania asks for names and addresses (as reported): typed in the job, they are on it."""
    others = [{"name": "Tamsin Rook", "does": "sawing", "address": "4 Mill Row, Ashwick"}]
    job = shop.job(site={**SITE, "state": "PA"}, subcontractors=others)
    made = figure(write_world(tmp_path, job, rate_book=shop.book()), shop.shared())
    assert made.results is not None
    (row,) = [row for row in agreement_sheet(made.results).parties if row.name == "With us"]
    assert row.text == "Tamsin Rook, sawing, 4 Mill Row, Ashwick"
    asked = {row.what: row.where for row in law_sheet(made.results, load_laws()).laws[0].rows}
    without = {row.what: row.where for row in _sheet(tmp_path, "PA").laws[0].rows}
    (what,) = [what for what in asked if "subcontractors" in what]
    assert asked[what] != without[what]


@pytest.mark.parametrize(
    ("state", "deposit", "at_home"),
    [
        ("OH", "Ohio Revised Code, chapter 4722", "Ohio Revised Code 1345.21"),
        ("MI", "Not known for this state", "Michigan Compiled Laws 445.111"),
        ("CT", "The law that we read names no largest deposit", "Connecticut General Statutes"),
        ("TX", "Not known for this state", "Not known for this state. The federal rule"),
        (None, "Not known for this state", "Not known for this state. The federal rule"),
    ],
)
def test_it_says_what_is_known(tmp_path: Path, state: str | None, deposit: str, at_home: str):
    """Of deposits and of sales made at home: known and dated, or not known, for any state."""
    first, second = _sheet(tmp_path, state).answers
    assert deposit in first.text
    assert at_home in second.text
    assert "November 28, 2026" in second.text


@pytest.mark.parametrize(("side", "reached"), [("245 ft", True), ("200 ft", False)])
def test_a_law_that_more_area_would_reach_is_on_it(tmp_path: Path, side: str, *, reached: bool):
    """At $1 a square foot $24,500 would pass Ohio's $25,000 with a tenth more; $20,000 not."""
    job = shop.job(shop.placement(f"{side} x 100 ft"), site={**SITE, "state": "OH"})
    made = figure(write_world(tmp_path, job, rate_book=shop.book()), shop.shared()).results
    assert made is not None
    names = [part.name for part in law_sheet(made, load_laws()).laws]
    said = "from $25,000.00, which ten percent more area would reach"
    assert any(said in one for one in names) == reached


def test_the_notice_of_a_buyer_of_65_in_california(tmp_path: Path):
    """Five business days instead of three, and their last day (as reported; Saturday left out)."""
    job = shop.job(
        site={**SITE, "state": "CA"},
        customer={"name": "Wren Abernathy", "email": "wren@post.example", "over_65": "yes"},
        accepted={"date": "2026-06-10"},
    )
    made = figure(write_world(tmp_path, job, rate_book=shop.book()), shop.shared()).results
    assert made is not None
    form = notice_of_cancellation(made)
    assert (form.days, form.last_day) == ("FIVE BUSINESS DAYS", "June 17, 2026")
