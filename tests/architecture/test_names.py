"""Tests mirror the code, and what README and DEVELOPERS.md name exists."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.architecture.tree import PACKAGE, REPO, STAGES, name_of

MIRRORED = (*STAGES, "trade")
TESTS = REPO / "tests"
OF_NO_SINGLE_MODULE = {
    "tests/explain/sheets/test_site_photos.py": "photos from the job to both their sheets",
    "tests/explain/sheets/test_printed_once.py": "the sums of all six sheets",
    "tests/explain/test_situations.py": "the table of situations beside it",
    "tests/publish/test_nothing_private_leaves.py": "every file of a package",
    "tests/publish/test_paper.py": "every printed paper",
    "tests/reading/test_what_we_say.py": "the pages in content/",
    "tests/trade/test_content_names_rules.py": "the pages in content/",
}
"""Test files that are about several modules, or about no code, each with its subject."""
OF_THE_READER = (
    "customer/", "private/", "out/", "my_jobs/", "jobs/first.yaml", "rate-book-2026", "rules.yaml",
    "issued/",
)  # fmt: skip
"""What stands in a package, in the folder of a company and in a further language."""
NAMED_FROM = (REPO, PACKAGE, REPO / "themes" / "shop", TESTS)
SEARCHED = ("quotegen", "themes", "content", "example_jobs", "tests", "bench", "docs")
PATH = re.compile(r"[\w.<>-]+(?:/[\w.<>-]*)+|[\w.-]+\.(?:css|js|j2|md|py|toml|txt|yaml)")


def test_tests_mirror_the_code():
    """The test of quotegen/a/b.py is tests/a/test_b.py; any other has its reason in the list."""
    stray = [
        name
        for room in MIRRORED
        for path in sorted((TESTS / room).rglob("test_*.py"))
        if not _tested(path).is_file() and (name := name_of(path)) not in OF_NO_SINGLE_MODULE
    ]
    assert stray == []


def test_the_list_of_others_is_true():
    """Each file of the list exists and mirrors no module."""
    for name in OF_NO_SINGLE_MODULE:
        assert (REPO / name).is_file(), name
        assert not _tested(REPO / name).is_file(), name


@pytest.mark.parametrize("paper", ["README.md", "DEVELOPERS.md"])
def test_what_a_paper_names_is_there(paper: str):
    """Every path in backticks leads to a file or folder of this repository."""
    text = (REPO / paper).read_text(encoding="utf-8")
    named = list(_paths(re.sub(r"```.*?```", "", text, flags=re.DOTALL)))
    assert len(named) > 5
    assert [path for path in named if not _exists(path)] == []


def test_a_path_that_leads_nowhere_is_found():
    """A file that moved is told from one that stands, and an attribute is no path."""
    text = "`quotegen/spec/read.py`, `quotegen/reading/`, `cli.py`, `trade/<x>.py`, `Words.count`"
    assert [_exists(path) for path in _paths(text)] == [False, True, True, True]


def _tested(test: Path) -> Path:
    """The module that a test file is named after."""
    inside = test.relative_to(TESTS)
    return PACKAGE / inside.with_name(inside.name.removeprefix("test_"))


def _paths(text: str) -> Iterator[str]:
    for named in re.findall(r"`([^`\n]+)`", text):
        if PATH.fullmatch(named) and not named.startswith(OF_THE_READER):
            yield named


def _exists(named: str) -> bool:
    """Whether a path exists in a folder that it may be named from; a bare name, anywhere."""
    pattern = re.sub(r"<\w+>", "*", named.rstrip("/"))
    if any(any(place.glob(pattern)) for place in NAMED_FROM):
        return True
    return "/" not in pattern and any(any((REPO / one).rglob(pattern)) for one in SEARCHED)
