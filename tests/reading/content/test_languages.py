"""Another language: what it lacks is an error before anything is built."""

from pathlib import Path

import pytest

from quotegen.pipeline import Shared, read_shared
from quotegen.problem import Problem
from tests.publish.pseudo import LOCALE, pseudo_content


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The made-up language, for a test to spoil."""
    return pseudo_content(tmp_path)


def _problems(folder: Path) -> dict[str, Problem]:
    read = read_shared(folder)
    assert isinstance(read, tuple), "the language was read without a fault"
    return {problem.code: problem for problem in read}


def _spoil(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def test_a_whole_language_is_read(folder: Path):
    """A folder with every text is taken, with the way in which it writes numbers."""
    shared = read_shared(folder)
    assert isinstance(shared, Shared), shared
    assert shared.content.locale == LOCALE


def test_a_missing_text_is_an_error(folder: Path):
    """A text that English has and the language lacks is named, and nothing can be built."""
    _spoil(folder / "labels.yaml", "\ntotal: ", "\ntotall: ")
    found = _problems(folder)
    assert set(found) == {"missing-text"}
    assert "`total`" in found["missing-text"].message


def test_a_missing_rule_is_an_error(folder: Path):
    """A rule of the trade that the language does not tell of is named."""
    _spoil(folder / "rules.yaml", "rule_walk_wait:", "rule_wait:")
    assert "`rule_walk_wait`" in _problems(folder)["missing-text"].message


def test_a_value_must_keep_its_place(folder: Path):
    """A text that lost the name of a value would print without it."""
    _spoil(folder / "sentences.yaml", "{covers}", "covers")
    found = _problems(folder)
    assert set(found) == {"lost-value"}
    assert "{covers}" in found["lost-value"].message


def test_a_missing_page_is_an_error(folder: Path):
    """A page that English has and the language lacks is named."""
    (folder / "safety" / "silica.md").unlink()
    found = _problems(folder)
    assert set(found) == {"missing-page"}
    assert "`silica`" in found["missing-page"].message


def test_the_locale_must_be_known(folder: Path):
    """A locale that the CLDR does not have cannot write a number."""
    (folder / "language.yaml").write_text("locale: qq_QQ\n", encoding="utf-8")
    found = _problems(folder)
    assert set(found) == {"no-locale"}
    assert "`qq_QQ`" in found["no-locale"].message
