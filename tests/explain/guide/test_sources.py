"""Where the figures of the guide come from, and what its words mean."""

from pathlib import Path

import pytest
import yaml

from quotegen.explain.guide.guide import guide_of
from quotegen.explain.guide.sources import glossary_rows
from quotegen.explain.sheets.agreement_sheet import agreement_sheet
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.words.no_break import NO_BREAK
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop
from tests.world import EXAMPLES


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
    assert "at most 1/8 in wide, and 1/4 in in step" in short.html.replace(NO_BREAK, " ")


def test_the_companys_own_standard_is_a_source_of_its_own(strict):
    """What the company promises by itself is not laid to a publication."""
    (own,) = [row for row in guide_of(strict).sources if row.name.startswith("Our own promise")]
    assert "1/8 in" in own.text


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
