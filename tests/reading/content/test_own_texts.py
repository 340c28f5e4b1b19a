"""The owner's own fixed words: key by key, with each value that ours is given."""

from pathlib import Path

import pytest

from quotegen.pipeline import figure
from quotegen.problem import Problem
from tests.pricing import shop
from tests.world import write_world


def _with(folder: Path, text: str, file: str = "labels.yaml") -> Path:
    job = write_world(folder, shop.job(), rate_book=shop.book())
    path = job.parent / "content" / file
    path.parent.mkdir()
    path.write_text(text, encoding="utf-8")
    return job


def _faults(folder: Path, text: str) -> tuple[Problem, ...]:
    made = figure(_with(folder, text), shop.shared())
    assert made.results is None
    return tuple(one for one in made.problems if one.code not in shop.OF_A_SHORT_BOOK)


@pytest.mark.parametrize("file", ["labels.yaml", "sentences.yaml"])
def test_a_text_stands_in_for_ours(tmp_path: Path, file: str):
    """One word is the owner's, with its values filled in; all others stay ours."""
    text = 'calendar: Our days\nvisit_summary: "{visit} by {company}"\n'
    made = figure(_with(tmp_path, text, file), shop.shared())
    assert made.results is not None
    words = made.results.words
    assert words("calendar") == "Our days"
    assert words("visit_summary", company="Us", visit="Pour") == "Pour by Us"
    assert words("calendar_day") == shop.shared().content.labels["calendar_day"]


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [
        ("calender: x", "own-page-unknown", "there is no text `calender`"),
        ('visit_summary: "{visit}"', "own-page-lacks", "lacks {company}"),
        ('calendar: "Days {visit}"', "own-page-mark", "is not given {visit}"),
        ('visit_summary: "{company.__class__} {visit} {company}"', "own-page-mark", "__class__"),
        ('visit_summary: "{company:>9999} {visit} {company}"', "own-page-mark", ":>9999"),
        ('calendar: "{"', "own-page-mark", "a brace stands alone"),
        ('calendar: "{}"', "own-page-mark", "is not given {}"),
        ("calendar: <b>Days</b>", "own-page-mark", "`<b` begins HTML"),
        ('calendar: "\u6c34"', "letter-unknown", "U+6C34"),
        ("calendar: [a]", "bad-label", "not a single text"),
    ],
)
def test_a_text_that_no_page_can_show_is_refused(tmp_path: Path, text: str, code: str, said: str):
    """Each fault is said with its line before any page is built."""
    (found,) = _faults(tmp_path, f"# ours\n{text}\n")
    assert (found.code, found.source.line) == (code, 2)
    assert said in found.message
