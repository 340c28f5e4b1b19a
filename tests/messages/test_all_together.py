"""All faults of a file are said at once, so that it can be mended in one evening."""

from pathlib import Path

import pytest

from quotegen import pipeline
from tests.messages.case_files import HERE, lay_out
from tests.pricing.shop import shared

MANY = {
    "untidy.yaml": [
        (3, "duplicate-key"),
        (4, "alias"),
        (5, "duplicate-key"),
    ],
    "typed.yaml": [
        (2, "not-a-date"),
        (3, "unknown-key"),
        (4, "bad-form"),
        (8, "missing-unit"),
        (10, "not-positive"),
        (11, "money-for-length"),
    ],
    "measured.yaml": [
        (2, "unknown-finish"),
        (3, "unknown-rate"),
        (4, "unknown-reference"),
        (9, "corner-radius"),
        (12, "unknown-reinforcement"),
        (17, "arc-radius"),
    ],
}
"""The line and code of every fault in each file of `many/`."""


def _figured(job: Path) -> pipeline.PricedJob:
    return pipeline.figure(job, shared())


@pytest.mark.parametrize("name", MANY)
def test_all_faults_come_together_and_in_order(tmp_path: Path, name: str):
    """Each fault is on its own line, in the order of the file, and nothing is priced."""
    figured = _figured(lay_out(HERE / "many" / name, tmp_path))
    assert [(p.source.line, p.code) for p in figured.problems] == sorted(MANY[name])
    assert figured.results is None


def test_faults_of_every_file_come_together(tmp_path: Path):
    """The job, the company, the book and the past jobs are all read, whichever is at fault."""
    job = lay_out(None, tmp_path)
    for name in ("job", "company", "rate-book", "past-jobs"):
        path = tmp_path / f"{name}.yaml"
        path.write_text(path.read_text(encoding="utf-8") + "extra: 1\n", encoding="utf-8")
    problems = _figured(job).problems
    files = [Path(p.source.file).name for p in problems]
    assert files == ["company.yaml", "job.yaml", "past-jobs.yaml", "rate-book.yaml"]
    assert {p.code for p in problems} == {"unknown-key"}


def test_paths_are_written_as_a_person_would(tmp_path: Path):
    """Beside the line a problem has its path in the document, for machines."""
    figured = _figured(lay_out(HERE / "many" / "measured.yaml", tmp_path))
    assert [p.path for p in figured.problems] == [
        "finish",
        "include.stepp",
        "references[0]",
        "placements[0].add[0].corner_radius",
        "placements[1].reinforcement",
        "placements[1].add[0].outline[2].radius",
    ]
