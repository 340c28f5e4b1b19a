"""Content pages: front matter and Markdown, and every fault of them with its line."""

from pathlib import Path
from shutil import copytree

import pytest

from quotegen.problem import Problem
from quotegen.reading.content.content import ClauseFront, Content, Page, read_content, read_page
from quotegen.reading.files.rate_book import FinishKind
from quotegen.resources import content_folder

PAGE = b"---\nid: area\ntitle: Area\norder: 3\n---\n\nWe measure **twice**.\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the pages that a test can spoil."""
    return Path(copytree(str(content_folder()), tmp_path / "en"))


def _problems(folder: Path) -> tuple[Problem, ...]:
    read = read_content(folder)
    assert isinstance(read, tuple), "the content was read without a fault"
    return read


def test_our_own_pages_have_no_fault():
    """Everything in content/ is read, each kind of finish has its page, pages stand in order."""
    content = read_content(content_folder())
    assert isinstance(content, Content), content
    assert set(content.finishes) == {kind.value for kind in FinishKind}
    for pages in (content.scope, content.care, content.clauses, content.questions):
        orders = [page.front.order for page in pages.values()]
        assert orders == sorted(orders)


def test_a_page_is_front_matter_and_markdown():
    """The two parts come apart, the Markdown as it was written."""
    page = read_page(PAGE, "content/clauses/area.md", ClauseFront)
    assert isinstance(page, Page)
    assert (page.front.id, page.front.order) == ("area", 3)
    assert page.markdown == "We measure **twice**."


def test_lines_are_those_of_the_page():
    """A fault in the front matter has the line that an editor shows."""
    problems = read_page(PAGE.replace(b"order: 3", b"order: third"), "area.md", ClauseFront)
    assert isinstance(problems, tuple)
    assert [str(problem.source) for problem in problems] == ["area.md:4:8"]


@pytest.mark.parametrize("data", [b"", b"# Area\n", b"\n" + PAGE, b"---\nid: area\n"])
def test_a_page_begins_with_front_matter(data: bytes):
    """A page without it, or with a line before it, is refused."""
    problems = read_page(data, "area.md", ClauseFront)
    assert isinstance(problems, tuple)
    assert [problem.code for problem in problems] == ["no-front-matter"]


def test_each_kind_of_finish_needs_its_page(folder: Path):
    """A finish that can be sold and not explained is a fault."""
    (folder / "finishes" / "broom.md").unlink()
    (problem,) = _problems(folder)
    assert problem.code == "no-finish-page"
    assert "`broom`" in problem.message


def test_a_label_is_one_text_under_one_key(folder: Path):
    """A label that is a list, or stands in both files, is refused."""
    text = (folder / "sentences.yaml").read_text(encoding="utf-8")
    key = next(line for line in text.splitlines() if line and line[0].isalpha()).split(":")[0]
    (folder / "labels.yaml").write_text(f"several: [one, two]\n{key}: again\n", encoding="utf-8")
    problems = _problems(folder)
    assert {problem.code for problem in problems} == {"bad-label"}
    assert any("`several`" in problem.message for problem in problems)
    assert any(f"`{key}`" in problem.message for problem in problems)


def test_all_faults_of_the_content_come_together(folder: Path):
    """A page, a finish and a label at fault are all said at once."""
    (folder / "finishes" / "broom.md").write_bytes(b"# Broom\n")
    (folder / "labels.yaml").write_text("a: [1]\n", encoding="utf-8")
    codes = {problem.code for problem in _problems(folder)}
    assert codes == {"no-front-matter", "no-finish-page", "bad-label"}
