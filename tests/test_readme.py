"""Strangers type what README shows, so it must work."""

import re
from pathlib import Path

import pytest

from quotegen.pipeline import figure
from tests.pricing.shop import shared
from tests.publish.built import build
from tests.world import EXAMPLES, write_world

FORECAST = """
forecast: {date: 2026-07-14, air: 84 F, humidity: 40 %, wind: 11 mph, concrete: 82 F}
"""
README = Path(__file__).parent.parent / "README.md"


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
    listed = set(re.findall(r"\| `(?:customer|private)/([a-z.-]+)`", README.read_text("utf-8")))
    assert listed >= {"quote.html", "quote.pdf", "door-sheet.pdf", "email.eml", "visits.ics"}
    job, after = _jobs()
    written = _written(tmp_path, job + after + FORECAST)
    (built,) = build((written,), shared()).packages.values()
    assert listed <= {path.split("/")[1] for path in built.files}


def _written(folder: Path, job: str) -> Path:
    """A job in a copy of the company that README leads with."""
    all_in = EXAMPLES.parent / "all_in"
    files = {
        name.replace("-", "_"): (all_in / f"{name}.yaml").read_text("utf-8")
        for name in ("company", "rate-book", "past-jobs")
    }
    return write_world(folder, job, **files)


def _jobs() -> tuple[str, str]:
    """The complete job in README, and its later keys; the other blocks are parts of files."""
    blocks = re.findall(r"```yaml\n(.*?)```", README.read_text(encoding="utf-8"), re.DOTALL)
    (job,) = (block for block in blocks if block.startswith("quote:"))
    (after,) = (block for block in blocks if block.startswith("accepted:"))
    return job, after
