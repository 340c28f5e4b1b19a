"""A walk over content/: no number without a rule, no dead reference, no shouting, easy to read."""

import re
from collections.abc import Iterator
from datetime import date
from functools import cache
from pathlib import Path

import pytest
import textstat
import yaml

from quotegen.reading.content.content import Content, read_content
from quotegen.reading.files.rate_book import FinishKind
from quotegen.resources import content_folder
from quotegen.trade.rules import Certainty, load_rules

ON = date(2026, 11, 25)
FOLDER = content_folder()
PAGES = sorted(FOLDER.rglob("*.md"))
VALUE = re.compile(r"\{\w+\}")
PLACEHOLDER = re.compile(r"\{\{ (rule|terms)\.(\w+) \}\}")
NAMES_WITH_DIGITS = re.compile(r"\b[89]11\b|\b2x4\b|\b[Ss]heets? \d( to \d)?")
"""A telephone number, the name of a board and of a sheet, which are no figures of the trade."""

SENTENCES_WITH_DIGITS = {
    "sure_area": "95 times in 100, the level of area_coverage_factor",
    "broken_ratio": "a ratio is said as so much to 1",
    "number_strength": "strength is by definition that at 28 days",
    "evaporation_said": "the square of a unit, m²",
    "rule_unit_lb_per_100_sq_ft": "the name of a unit",
    "rule_unit_cup_every_20_minutes": "the name of a unit",
    "rule_unit_to_1": "the name of a unit",
    "cancel_form_4": "the wording of 16 CFR 429.1(b)",
    "cancel_rule": "the number of the federal rule",
    "cancel_until": "the number of the federal rule",
    "law_about": "the number of the federal rule",
    "law_at_home_known": "the number of the federal rule",
    "law_at_home_federal": "the number of the federal rule",
}
"""Fixed texts that hold a figure, each with the reason."""

GRADE = 8
READS_HARDER = {
    "responsibilities/barrier": "one cell of a table, and long names of trades",
    "responsibilities/bonding": "five words, one of them `electrician`",
}
"""Pages over grade 8, each with the reason."""

TRADE_WORDS = (
    "bonding", "curing", "efflorescence", "grit", "isolation joint", "mesh", "nominal",
    "penetrating sealer", "release", "sealant", "silica", "slurry", "ticket",
)  # fmt: skip


@cache
def _content() -> Content:
    content = read_content(content_folder())
    assert isinstance(content, Content), content
    return content


def _parts(page: Path) -> tuple[dict[str, object], str]:
    _, front, body = page.read_text(encoding="utf-8").split("---\n", 2)
    return yaml.load(front, Loader=yaml.BaseLoader), body


def _prose(page: Path) -> Iterator[str]:
    """Yield all that a page says: its texts in front, then its body."""
    front, body = _parts(page)
    for key, value in front.items():
        if isinstance(value, str) and key not in {"id", "order"}:
            yield value
    yield body


def _name(page: Path) -> str:
    return f"{page.parent.name}/{page.stem}"


def _filled(text: str) -> str:
    def said(found: re.Match[str]) -> str:
        return load_rules().text(found[2], ON) if found[1] == "rule" else "ten percent"

    return PLACEHOLDER.sub(said, text)


@pytest.mark.parametrize("page", PAGES, ids=_name)
def test_no_number_is_typed_into_prose(page: Path):
    """A figure in a page comes from a rule or a term; the core gives it, and it has a source."""
    for text in _prose(page):
        bare = NAMES_WITH_DIGITS.sub("", PLACEHOLDER.sub("", text))
        assert re.findall(r"\d[\d.,/]*", bare) == []


@pytest.mark.parametrize("file", ["sentences.yaml", "labels.yaml", "glossary.yaml"])
def test_no_number_is_typed_into_a_fixed_text(file: str):
    """Fixed texts take their figures as values, but for those that are named with a reason."""
    texts = yaml.load((FOLDER / file).read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    bare = {key: NAMES_WITH_DIGITS.sub("", VALUE.sub("", text)) for key, text in texts.items()}
    found = {key for key, text in bare.items() if re.search(r"\d", text)}
    assert found <= set(SENTENCES_WITH_DIGITS)


@pytest.mark.parametrize("page", PAGES, ids=_name)
def test_a_page_is_read_by_an_eighth_grader(page: Path):
    """The grade after Flesch and Kincaid, syllables by dictionary, is 8 at most.

    Figures count as one short word, and an item of a list as a sentence.
    """
    _, body = _parts(page)
    plain = re.sub(r"(?m)^#.*$|^- ", "", _filled(body))
    plain = re.sub(r"\d[\w.,/-]*", "ten", plain)
    grade = textstat.flesch_kincaid_grade(plain)
    assert grade <= GRADE or _name(page) in READS_HARDER


def test_a_hard_text_would_be_found():
    """A sentence of an insurance policy is far over grade 8."""
    hard = (
        "Notwithstanding any contrary stipulation contained hereinafter, remuneration "
        "attributable to supplementary operations constitutes a separate obligation."
    )
    assert textstat.flesch_kincaid_grade(hard) > 2 * GRADE


@pytest.mark.parametrize("page", PAGES, ids=_name)
def test_a_page_is_calm(page: Path):
    """No exclamation mark, no word in capitals but a name of letters, nothing that presses."""
    text = " ".join(_prose(page))
    assert "!" not in text
    assert re.findall(r"\b[A-Z]{4,}\b", text) == []
    assert (
        re.findall(r"(?i)\b(hurry|guarantee[sd]? that|never worry|disaster strikes)\b", text) == []
    )


@pytest.mark.parametrize("page", PAGES, ids=_name)
def test_what_a_page_points_to_is_there(page: Path):
    """A name in quotation marks is the title of a page or a heading of a sheet."""
    content = _content()
    titles = {content.labels[key] for key in content.labels}
    titles |= {p.front.title for p in content.clauses.values()}
    for text in _prose(page):
        for named in re.findall(r'"([^"]+)"', text):
            assert named in titles
        if "care dates" in text:
            assert content.labels["care_dates"].startswith("Care dates")


def test_front_matter_names_what_exists():
    """Scope items, finishes and rules that pages name are there."""
    content = _content()
    kinds = {"all", *FinishKind}
    for care in content.care.values():
        assert set(care.front.finishes) <= kinds
    for responsibility in content.responsibilities.values():
        assert set(responsibility.front.ours) <= set(content.scope)
    for page in PAGES:
        front, _ = _parts(page)
        rules = front["rules"]
        assert isinstance(rules, list)
        assert set(rules) <= set(load_rules().rules)
        stem = re.sub(r"^\d+-", "", page.stem)
        assert front["id"] == stem, _name(page)


@pytest.mark.parametrize("page", PAGES, ids=_name)
def test_no_page_rests_on_a_figure_that_nobody_looked_up(page: Path):
    """A figure that a customer reads was read in its source, or is common practice and said so."""
    for kind, rule_id in PLACEHOLDER.findall(page.read_text(encoding="utf-8")):
        if kind == "rule":
            assert load_rules().rule(rule_id).sure is not Certainty.MEMORY


def test_every_safety_page_defers_or_says_what_to_do():
    """No caution is empty, and what a licensed trade or an official decides is left to them."""
    deferring = ("pool_bonding", "pool_power", "pool_barrier", "pool_edge", "house_fall",
                 "steps_guards", "pool_water", "vehicles")  # fmt: skip
    for name in deferring:
        text = _content().safety[name].markdown
        assert re.search(r"electrician|inspector|building office|pool builder|city or county", text)


def test_trade_words_are_explained():
    """Each word of the trade that a page uses stands in the glossary, in plain words."""
    glossary = _content().glossary
    everything = " ".join(text for page in PAGES for text in _prose(page)).lower()
    for word in TRADE_WORDS:
        assert word in everything
        assert word in glossary
    for word, meaning in glossary.items():
        assert word in everything, word
        assert word not in meaning.lower().split()
