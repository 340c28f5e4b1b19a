"""Prose: rule texts and terms set into Markdown, then HTML."""

import re
from html import unescape
from pathlib import Path

import jinja2
import markdown
import pytest
import yaml

from quotegen.explain.results import Results
from quotegen.explain.words.no_break import NO_BREAK
from quotegen.explain.words.prose import (
    as_typed,
    filled,
    html,
    in_a_sentence,
    sections,
    sentence,
)
from tests.pricing import shop
from tests.world import EXAMPLES


@pytest.fixture
def results(tmp_path) -> Results:
    """Return the results of a small job."""
    return shop.results(tmp_path, shop.job(), rate_book=shop.book())


def test_a_rule_is_set_in(results: Results):
    """The number of a rule comes from its dated data, on the date of the quote."""
    on = results.job.quote_date
    said = results.rules.text("call_811_wait", on)
    assert filled("Wait {{ rule.call_811_wait }}.", results) == f"Wait {said}."


@pytest.mark.parametrize(
    "text",
    ["{{ rule.no_such_rule }}", "{{ terms.no_such_term }}", "{{ nothing }}", "{{ rule }}x{{ y }}"],
)
def test_an_unknown_name_is_a_fault(results: Results, text: str):
    """A placeholder that nobody fills is an error, never an empty place in a sentence."""
    with pytest.raises((LookupError, jinja2.UndefinedError)):
        filled(text, results)


@pytest.mark.parametrize(
    "text",
    ["{{ ''.__class__.__mro__ }}", "{{ rule._rules }}", "{% include 'x' %}", "{{ terms.clear() }}"],
)
def test_a_page_reaches_nothing_else(results: Results, text: str):
    """A content page can reach the rules and the terms, and nothing of the program."""
    with pytest.raises((jinja2.TemplateError, LookupError, TypeError, AttributeError)):
        filled(text, results)


def test_the_terms_are_those_of_the_company(tmp_path):
    """The clause names the company's own promises, and a page may name the rounding of areas."""
    company = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    company["adjustment"] = {"no_pour_above": "7.5 %", "reopen_outside": "12 %"}
    for units, step in (("us", "0.1_sq_ft"), ("metric", "0.01_m²")):
        results = shop.results(tmp_path, shop.job(units=units), rate_book=shop.book(),
                               company=shop.as_yaml(company))  # fmt: skip
        clause = html(results.content.clauses["measure_and_adjust"].markdown, results)
        for term in ("7.5%", "12%"):
            assert term in clause
        assert step.replace("_", NO_BREAK) in html("To {{ terms.rounding }}.", results)


def test_what_the_owner_types_is_text(tmp_path):
    """A warranty with angle brackets does not become markup on the customer's page."""
    company = yaml.load((EXAMPLES / "company.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    company["warranty"] = "two years <script>alert(1)</script> & more"
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(),
                           company=shop.as_yaml(company))  # fmt: skip
    made = html("{{ terms.warranty }}", results)
    assert "<script" not in made
    assert "Two years &lt;script&gt;" in made


@pytest.mark.parametrize(
    "typed",
    ["[x](javascript:alert(1))", "![w](https://pictures.example/a.png)", "**two** _years_ `now`",
     "1. One year", "# One", "- one", "+ one", "=one", "> one", "<https://a.example>",
     "\\*one\\*", "[x]: https://a.example", "a_b_c & \"d\" 'e'"],
)  # fmt: skip
def test_markdown_of_the_owner_is_text(typed: str):
    """CommonMark's signs (its spec, 2.4 and 4 to 6) make no tag and read as they were typed."""
    made = markdown.markdown(as_typed(typed), output_format="html")
    assert re.findall("<[^>]*>", made) == ["<p>", "</p>"]
    assert unescape(made) == f"<p>{typed}</p>"


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_every_page_can_be_filled(job_file):
    """No page of any room has a placeholder without an answer, for any example."""
    results = shop.example_results(job_file)
    content = results.content
    rooms = (content.scope, content.finishes, content.care, content.safety, content.clauses,
             content.questions)  # fmt: skip
    for room in rooms:
        for page in room.values():
            made = html(page.markdown, results)
            assert "{{" not in made
            assert "}}" not in made


def test_markdown_becomes_html(results: Results):
    """Headings, lists and emphasis are those of Markdown."""
    assert html("One *two*", results) == "<p>One <em>two</em></p>"


def test_sections():
    """A scope page is cut at its second-level headings, which go."""
    text = "## What\nWe dig.\n\n## Why\nSo.\n### Deeper\nYes.\n\n## Check\nLook."
    assert sections(text) == ("We dig.", "So.\n### Deeper\nYes.", "Look.")
    assert sections("no headings") == ()


@pytest.mark.parametrize(
    ("typed", "read"),
    [("two years", "Two years."), (" Done. ", "Done."), ("why?", "Why?"), ("a", "A."), ("", ".")],
)
def test_sentence(typed: str, read: str):
    """What is typed as a phrase is printed as a sentence."""
    assert sentence(typed) == read


MOST_WORDS_OF_TERMS = 900
"""What fits one page of terms, two columns of small print that can still be read."""


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda job: job.stem)
def test_all_clauses_fit_one_page(job_file: Path):
    """What binds is short enough to be read before it is signed: all clauses of an example."""
    results = shop.example_results(job_file)
    texts = (filled(page.markdown, results) for page in results.content.clauses.values())
    words = [word for text in texts for word in text.split() if word != "-"]
    assert len(words) <= MOST_WORDS_OF_TERMS


@pytest.mark.parametrize(
    ("name", "inside"),
    [("Patio", "patio"), ("Pool deck at Kestrel Court", "pool deck at Kestrel Court"),
     ("A permit", "a permit"), ("L-shaped patio", "L-shaped patio"), ("PVC pipe", "PVC pipe"),
     ("U", "U"), ("Back Patio", "Back Patio"), ("Écluse", "écluse"), ("4 ft walk", "4 ft walk")],
)  # fmt: skip
def test_a_name_inside_a_sentence(name: str, inside: str):
    """Only the capital that begins a plain word becomes small: "your L-shaped patio"."""
    assert in_a_sentence(name) == inside
