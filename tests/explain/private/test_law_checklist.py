"""The owner's law checklist, and the notice of cancellation. Not legal advice."""

from pathlib import Path

import pytest
import yaml

from quotegen.explain.private.law_checklist import LawSheet, law_sheet
from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import agreement_sheet
from quotegen.explain.sheets.customer import customer_view
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


@pytest.mark.parametrize("state", ["OH", None])
def test_an_unknown_state_has_the_superset_as_advice(tmp_path: Path, state: str | None):
    """Where we know no list the owner gets all that any law asks for, without a clause."""
    advice = _sheet(tmp_path, state).laws[0]
    assert advice.link == ""
    assert len(advice.rows) == len(load_laws().superset())
    assert {row.clause for row in advice.rows} == {""}


def test_it_says_what_it_is(tmp_path: Path):
    """Not legal advice, and the day it was checked, stand at its head."""
    about = _sheet(tmp_path).about
    assert about.startswith("Not legal advice; checked on November 25, 2026")


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
    page = render(
        "quote.html.j2", customer_view(results), results.words, theme, on_paper=True
    )  # fmt: skip
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
