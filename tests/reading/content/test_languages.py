"""A language of the owner's own: a folder in content/ over English, file by file."""

from pathlib import Path

import pytest

from quotegen.explain.words.rule_words import rule_about
from quotegen.pipeline import figure
from quotegen.problem import Problem
from tests.pricing import shop
from tests.publish.pseudo import LOCALE, MARK, pseudo_content
from tests.world import write_world


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A job in the made-up language, whose folder a test may spoil."""
    pseudo_content(tmp_path / "content")
    return write_world(tmp_path, shop.job(language="xx"), rate_book=shop.book())


def _folder(job: Path) -> Path:
    return job.parent / "content" / "xx"


def _spoil(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def _drop(file: Path, key: str) -> None:
    lines = file.read_text(encoding="utf-8").splitlines(keepends=True)
    kept = [line for line in lines if not line.startswith(f"{key}:")]
    assert len(kept) == len(lines) - 1
    file.write_text("".join(kept), encoding="utf-8")


def _lacking(job: Path) -> tuple[Problem, ...]:
    return tuple(one for one in shop.faults(job) if one.code == "language-lacks")


def test_a_whole_language_stands_in_for_english(job: Path):
    """Pages, texts, rules and the way of writing numbers are its own, and nothing is lacking."""
    assert shop.faults(job) == ()
    made = figure(job, shop.shared()).results
    assert made is not None
    assert made.words.locale == LOCALE
    assert MARK in made.words("total")
    assert MARK in made.content.safety["silica"].markdown
    assert MARK in rule_about(made.words, made.rules.rule("walk_wait"))


def test_without_a_key_the_job_is_english(job: Path):
    """A language lies in the folder until a job asks for it, and nobody stumbles over it."""
    _spoil(job, "language: xx\n", "")
    made = figure(job, shop.shared())
    assert made.results is not None
    assert made.results.words.locale == "en_US"
    assert not _lacking(job)


def test_what_is_missing_stays_english_and_is_said(job: Path):
    """A page, a text and a rule that the language lacks are English, and `check` names each."""
    ours, folder = shop.shared().content, _folder(job)
    (folder / "safety" / "silica.md").unlink()
    _drop(folder / "labels.yaml", "total")
    _drop(folder / "rules.yaml", "rule_walk_wait")
    (folder / "glossary.yaml").unlink()
    texts, words, pages = _lacking(job)
    assert {one.code for one in (pages, texts, words)} == {"language-lacks"}
    assert pages.message == "still English: 1 page: silica"
    assert "safety/silica --language xx" in pages.hint
    assert texts.message == "still English: 2 texts: rule_walk_wait, total"
    assert words.message == "still English: the glossary: glossary.yaml"
    made = figure(job, shop.shared()).results
    assert made is not None
    assert made.words("total") == ours.labels["total"]
    assert made.content.safety["silica"] == ours.safety["silica"]
    assert MARK in made.words("calendar_day")


def test_a_page_that_was_only_copied_is_not_translated(job: Path):
    """A page whose words are still ours counts as English."""
    ours = shop.shared().content.safety["silica"]
    page = _folder(job) / "safety" / "silica.md"
    front = page.read_text(encoding="utf-8").split("---\n")[1]
    page.write_text(f"---\n{front}---\n\n{ours.markdown}\n", encoding="utf-8")
    (pages,) = _lacking(job)
    assert "silica" in pages.message


def test_no_plural_of_english_is_left(job: Path):
    """Where a language has one form for all numbers, English has no word in its place."""
    _drop(_folder(job) / "sentences.yaml", "calendar_gap_one")
    assert not _lacking(job)
    made = figure(job, shop.shared()).results
    assert made is not None
    assert MARK in made.words.count("calendar_gap", 1)


def test_a_value_must_keep_its_place(job: Path):
    """A text that lost the name of a value would print without it."""
    _spoil(_folder(job) / "sentences.yaml", "{covers}", "covers")
    (found,) = shop.faults(job)
    assert found.code == "own-page-lacks"
    assert "{covers}" in found.message


def test_a_language_begins_with_its_locale(job: Path):
    """A job that asks for a folder without language.yaml is told how to begin one."""
    _spoil(job, "language: xx", "language: fr")
    (found,) = shop.faults(job)
    assert (found.code, found.message) == ("no-language", "there is no language `fr` here")
    assert "locale: es_US" in found.hint


@pytest.mark.parametrize("locale", ["qq_QQ", "ar_EG", "zh_CN"])
def test_the_locale_must_be_known(job: Path, locale: str):
    """A locale must be in the CLDR, and write dates and numbers with letters of our fonts."""
    (_folder(job) / "language.yaml").write_text(f"locale: {locale}\n", encoding="utf-8")
    (found,) = shop.faults(job)
    assert found.code == "no-locale"
    assert f"`{locale}`" in found.message
