"""Two job files beside each other with one quote number."""

from pathlib import Path

import pytest

from quotegen.reading.read import read_job
from quotegen.reading.records import ReadJob
from tests.messages.case_files import lay_out
from tests.reading.changed import SCOPE


@pytest.mark.parametrize(
    ("beside", "found"),
    [
        ("quote: T-1\n", True),
        ("title: Patio\nquote: 'T-1'  # a copy\n", True),
        ("quote: T-10\n", False),
        ("# quote: T-1\nother: {quote: T-1}\n", False),
    ],
)
def test_a_number_beside(tmp_path: Path, beside: str, found: bool):
    """The line is found as it is typed, with quotation marks or a comment; a part of it is none."""
    job = lay_out(None, tmp_path)
    (tmp_path / "second.yaml").write_text(beside, encoding="utf-8")
    read = read_job(job, SCOPE)
    assert isinstance(read, ReadJob)
    assert [problem.code for problem in read.problems] == ["number-beside"] * found


def test_a_number_in_another_folder(tmp_path: Path):
    """A job of the same number elsewhere is not beside this one."""
    job = lay_out(None, tmp_path)
    (tmp_path / "old").mkdir()
    (tmp_path / "old" / "second.yaml").write_text("quote: T-1\n", encoding="utf-8")
    read = read_job(job, SCOPE)
    assert isinstance(read, ReadJob)
    assert read.problems == ()
