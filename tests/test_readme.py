"""Strangers type what README and the manual show, so it must work."""

import re
from pathlib import Path
from textwrap import indent

import pytest

from quotegen.pipeline import figure
from quotegen.problem import has_error
from tests.pricing.shop import shared
from tests.publish.built import build
from tests.world import EXAMPLES, write_world

FORECAST = """
forecast: {date: 2026-07-14, air: 84 F, humidity: 40 %, wind: 11 mph, concrete: 82 F}
"""
REPO = Path(__file__).parent.parent
MANUAL = sorted((REPO / "docs").glob("*.md"))
PAPERS, AFTER, SHAPES = (REPO / "docs" / f"{one}.md" for one in
                         ("papers", "after-the-quote", "shapes"))  # fmt: skip


def test_readme_is_one_screen():
    """Whoever opens it sees what it is, a picture and two commands; the rest is the manual."""
    assert len((REPO / "README.md").read_text("utf-8").splitlines()) <= 75
    assert (REPO / "docs" / "sheet-1.png").stat().st_size < 200_000


@pytest.mark.parametrize("page", [REPO / "README.md", *MANUAL], ids=lambda page: page.name)
def test_a_link_leads_to_a_page(page: Path):
    """Each link within the repository leads to a file, and each page of the manual is linked."""
    text = page.read_text("utf-8")
    links = {page.parent / link for link in re.findall(r"\]\(([^)#:]+)\)", text)}
    assert [link for link in links if not link.is_file()] == []
    if page.name == "README.md":
        assert set(MANUAL) <= links


def test_each_shape_of_the_manual_can_be_measured(tmp_path):
    """Each item of its blocks, put alone into the job of README, has an area and no fault."""
    blocks = re.findall(r"```yaml\n(.*?)```", SHAPES.read_text("utf-8"), re.DOTALL)
    shapes = [item for block in blocks for item in re.split(r"(?m)^(?=- )", block) if item]
    assert len(shapes) > 15
    job, _ = _jobs()
    before, rest = job.split("    add:\n")
    after = re.sub(r"(?m)^    fall.*\n", "", rest.split("\n", 1)[1])  # round a pool it is another
    for number, shape in enumerate(shapes):
        folder = tmp_path / str(number)
        folder.mkdir()
        placed = before + "    add:\n" + indent(shape, " " * 6) + after
        made = figure(_written(folder, placed), shared())
        assert not has_error(made.problems), (shape, [str(one) for one in made.problems])
        assert made.results is not None
        assert made.results.takeoff.placements[0].area_sqft > 10


def test_the_jobs_in_the_readme_have_no_fault(tmp_path):
    """The whole job file checks clean, and so does it with what happens after the quote."""
    job, after = _jobs()
    for text in (job, job + after):
        made = figure(_written(tmp_path, text), shared())
        assert [str(problem) for problem in made.problems] == []
        assert made.results is not None


@pytest.mark.usefixtures("unprinted")
def test_every_file_that_the_readme_lists_is_made(tmp_path):
    """The table of what is made names no file that is not."""
    listed = set(re.findall(r"\| `(?:customer|private)/([a-z.-]+)`", PAPERS.read_text("utf-8")))
    assert listed >= {"quote.html", "quote.pdf", "door-sheet.pdf", "email.eml", "visits.ics"}
    job, after = _jobs()
    written = _written(tmp_path, job + after + FORECAST)
    (built,) = build((written,), shared()).packages.values()
    (tmp_path / "before").mkdir()
    (quoted,) = build((_written(tmp_path / "before", job),), shared()).packages.values()
    assert listed <= {path.split("/")[1] for path in (*built.files, *quoted.files)}


def _written(folder: Path, job: str) -> Path:
    """A job in a copy of the company that README leads with."""
    all_in = EXAMPLES.parent / "all_in"
    files = {
        name.replace("-", "_"): (all_in / f"{name}.yaml").read_text("utf-8")
        for name in ("company", "rate-book", "past-jobs")
    }
    return write_world(folder, job, **files)


def _jobs() -> tuple[str, str]:
    """The complete job in README, and its later keys in the manual."""
    (job,) = (block for block in _blocks(REPO / "README.md") if block.startswith("quote:"))
    (after,) = (block for block in _blocks(AFTER) if block.startswith("accepted:"))
    return job, after


def _blocks(page: Path) -> list[str]:
    return re.findall(r"```yaml\n(.*?)```", page.read_text(encoding="utf-8"), re.DOTALL)
