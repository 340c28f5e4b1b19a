"""The owner's own pages: they stand in for ours, page by page, and keep what a page must have."""

from pathlib import Path

import pytest

from quotegen.explain.words.prose import clause
from quotegen.pipeline import figure
from quotegen.problem import Problem
from tests.pricing import shop
from tests.world import write_world

WARRANTY = "---\nid: warranty\ntitle: Our word\norder: 50\n---\n\n{{ terms.warranty }} Call us.\n"


def _with(folder: Path, **pages: str) -> Path:
    """Return a job whose company has pages of its own; `room__file` is the name of each."""
    folder.mkdir(exist_ok=True)
    job = write_world(folder, shop.job(), rate_book=shop.book())
    for name, text in pages.items():
        room, file = name.split("__")
        path = job.parent / "content" / room / f"{file}.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode())
    return job


def _faults(job: Path) -> tuple[Problem, ...]:
    made = figure(job, shop.shared())
    assert made.results is None
    return tuple(one for one in made.problems if one.code not in shop.OF_A_SHORT_BOOK)


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_an_own_page_stands_in_for_ours(tmp_path: Path, ends: str):
    """One clause is the owner's, in its words and under its title; all others stay ours."""
    made = figure(_with(tmp_path, clauses__mine=WARRANTY.replace("\n", ends)), shop.shared())
    assert made.results is not None
    warranty, acceptance = (clause(one, made.results) for one in ("warranty", "acceptance"))
    assert (warranty.title, "Call us." in warranty.html) == ("Our word", True)
    assert acceptance.title == shop.shared().content.clauses["acceptance"].front.title
    assert shop.shared().content.clauses["warranty"].front.title == "Warranty"


def test_the_order_is_the_owners(tmp_path: Path):
    """A page that is given another place among its kind comes there."""
    last = WARRANTY.replace("order: 50", "order: 999")
    made = figure(_with(tmp_path, clauses__warranty=last), shop.shared())
    assert made.results is not None
    assert list(made.results.content.clauses)[-1] == "warranty"


def test_a_page_that_we_do_not_have_is_refused(tmp_path: Path):
    """A wrong id and a wrong folder are named, each with what is allowed there."""
    job = _with(tmp_path, clauses__w=WARRANTY.replace("id: warranty", "id: waranty"), terms__w="x")
    page, folder = _faults(job)
    assert (page.code, folder.code) == ("own-page-unknown", "own-page-unknown")
    assert "`waranty`" in page.message
    assert "warranty" in page.hint
    assert "`terms`" in folder.message
    assert "clauses" in folder.hint


def test_a_page_keeps_what_ours_must_have(tmp_path: Path):
    """The company's own warranty is printed, and a scope page has its four parts."""
    scope = (
        "---\nid: base\ntitle: Base\nshort: Stone\nask: How deep?\ncheck: Tape it.\norder: 40\n"
        "group: ground\n---\n\n## What it is\n\nStone.\n"
    )
    bare = WARRANTY.replace("{{ terms.warranty }} ", "")
    clause, headings = _faults(_with(tmp_path, clauses__w=bare, scope__base=scope))
    assert (clause.code, headings.code) == ("own-page-lacks", "own-page-lacks")
    assert "{{ terms.warranty }}" in clause.message
    assert "1 headings (##), and ours has 4" in headings.message


@pytest.mark.parametrize(
    "odd",
    ["{{ rule.no_such }}", "{{ terms.none }}", "{{rule.crack_width}}", "{% include 'x' %}",
     "<script>", "[click](https://site.example)", "![](https://site.example/x.png)",
     "{{ ''.__class__ }}"],
)  # fmt: skip
def test_a_page_is_text_with_whole_marks(tmp_path: Path, odd: str):
    """HTML, links, pictures and marks that nobody fills are refused, before anything is built."""
    found = _faults(_with(tmp_path, clauses__w=f"{WARRANTY}\n{odd}\n"))
    assert {one.code for one in found} == {"own-page-mark"}


def test_a_letter_of_another_script_is_refused(tmp_path: Path):
    """A letter that our fonts lack would print as a box."""
    (found,) = _faults(_with(tmp_path, clauses__w=f"{WARRANTY}\n\u6c34\n"))
    assert found.code == "letter-unknown"


def test_bytes_that_are_no_text_are_refused(tmp_path: Path):
    """A page saved in another encoding is said to be so, and never read by guess."""
    job = _with(tmp_path, clauses__w=WARRANTY)
    (job.parent / "content" / "clauses" / "w.md").write_bytes(b"---\nid: warranty\xe9\n---\n")
    (found,) = _faults(job)
    assert found.code == "not-utf-8"


def test_what_a_desktop_leaves_is_passed_over(tmp_path: Path):
    """A hidden file beside the pages is no page."""
    job = _with(tmp_path, clauses__w=WARRANTY)
    (job.parent / "content" / ".DS_Store").write_bytes(b"\0")
    assert figure(job, shop.shared()).results is not None


def test_a_page_says_when_ours_has_changed_since(tmp_path: Path):
    """A copy that names another version of ours is warned of; one of this version is not."""
    digest = shop.shared().content.clauses["warranty"].digest
    old, new = (WARRANTY.replace("id:", f"of: {of}\nid:", 1) for of in ("00000000", digest))
    (found,) = shop.faults(_with(tmp_path / "old", clauses__w=old))
    assert (found.code, found.severity) == ("own-page-behind", "warning")
    assert f"`of: {digest}`" in found.hint
    assert shop.faults(_with(tmp_path / "new", clauses__w=new)) == ()
