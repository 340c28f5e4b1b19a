"""Where the figures of the guide come from, and what its words mean."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
import yaml

from quotegen.explain.guide.guide import guide_of
from quotegen.explain.guide.sources import glossary_rows
from quotegen.explain.sheets.agreement_sheet import agreement_sheet
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.words.no_break import NO_BREAK
from quotegen.trade.rules import load_rules
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop
from tests.world import EXAMPLES

STATE_TITLE = (
    "California|Florida|Jersey|Maine|Maryland|Massachusetts|Ohio|Pennsylvania|Rhode Island"
)


@pytest.fixture(name="strict")
def _strict(tmp_path: Path):
    """A company that promises cracks of at most 1/8 in."""
    company = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    company["standards"] = {"crack_width": "1/8 in"}
    files = {"rate_book": shop.book(), "company": shop.as_yaml(company)}
    return shop.results(tmp_path, shop.job(shop.placement("40 ft x 30 ft")), **files)


def test_the_companys_own_standard_is_printed(strict):
    """A tighter figure stands on sheet 6 and in the terms, the others as published."""
    (full,) = [clause for clause in customer_view(strict).terms if clause.id == "promised"]
    short = agreement_sheet(strict).promised
    assert "none wider than 1/8 in" in full.html.replace(NO_BREAK, " ")
    assert "more than 1/4 in higher" in full.html.replace(NO_BREAK, " ")
    assert "none over 1/8 in wide, or 1/4 in uneven" in short.html.replace(NO_BREAK, " ")


def test_the_companys_own_standard_is_a_source_of_its_own(strict):
    """What the company promises by itself is not laid to a publication."""
    (own,) = [row for row in guide_of(strict).sources if row.name.startswith("Our own promise")]
    assert "1/8 in" in own.text


@pytest.mark.parametrize(("state", "named"), [("NJ", True), ("OH", False)])
def test_another_states_code_is_no_source_here(state: str, named: bool):
    """A crack of 1/4 in stands in New Jersey's code; elsewhere it is the practice of the trade."""
    results = shop.example_results(shop.JOBS[0])
    typed = results.job.typed
    site = typed.site.model_copy(update={"state": state})
    moved = replace(results.job, typed=typed.model_copy(update={"site": site}))
    sources = guide_of(replace(results, job=moved)).sources
    assert any(row.name.startswith("New Jersey") for row in sources) is named
    (practice,) = [row for row in sources if row.name == "Common practice in the trade"]
    assert ("Crack width over which we repair: 1/4 in." in practice.text) is not named


def test_each_publication_of_a_state_is_known_as_one():
    """What a state's own code, statutes or regulations say has its two letters, and no more."""
    references = [v.reference for rule in load_rules().rules.values() for v in rule.values]
    of_a_state = {one.title for one in references if re.search(STATE_TITLE, one.title)}
    assert len(of_a_state) > 10
    assert of_a_state == {one.title for one in references if one.state}


@EVERY_EXAMPLE
def test_each_source_is_named_once_and_says_what_it_states(job_file: Path):
    """No source is left blank, and none stands there twice."""
    sources = example_view(job_file).guide.sources
    assert sources
    assert all(row.name and row.text for row in sources)
    assert len({row.name for row in sources}) == len(sources)


def test_the_glossary_has_the_words_that_are_used_and_no_others():
    """Upper or lower case, alone or in the plural; a word that no text uses is left out."""
    results = shop.example_results(shop.JOBS[0])
    every = results.content.glossary
    used, unused = min(every), max(every)
    rows = glossary_rows(results, f"Of {used.upper()}s.")
    assert [row.text for row in rows if row.name == used] == [every[used]]
    assert unused not in {row.name for row in rows}
