"""One job with its company's files, defaults filled in."""

from datetime import date
from pathlib import Path

import pytest

from quotegen.problem import Problem
from quotegen.quantity import Units
from quotegen.reading.read import read_job
from quotegen.reading.records import JobSpec, ReadJob
from tests.messages.case_files import FILES, GOOD, lay_out
from tests.reading.changed import SCOPE


def _read(job: Path) -> JobSpec:
    read = read_job(job, SCOPE)
    assert isinstance(read, ReadJob), read
    assert read.problems == ()
    return read.job


def _codes(read: ReadJob | tuple[Problem, ...]) -> list[str]:
    assert isinstance(read, tuple)
    return [problem.code for problem in read]


def test_the_book_fills_in_what_is_usual(tmp_path: Path):
    """A placement takes thickness, base and steel of its use; its name comes from its id."""
    (placement,) = _read(lay_out(None, tmp_path)).placements
    assert [placement.thickness.inches, placement.base.inches] == [4, 4]
    assert (placement.reinforcement, placement.name) == ("fiber", "Patio")
    assert placement.dig_depth.inches == 8


def test_the_job_has_the_last_word(tmp_path: Path):
    """What stands at the placement goes before what is usual."""
    job = lay_out(None, tmp_path)
    text = job.read_text(encoding="utf-8")
    typed = "use: patio\n    name: Back\n    thickness: 6 in\n    base: 150 mm"
    job.write_text(text.replace("use: patio", typed), encoding="utf-8")
    (placement,) = _read(job).placements
    assert [placement.thickness.inches, placement.base.meters * 1000] == [6, 150]
    assert placement.name == "Back"


def test_defaults_of_a_job(tmp_path: Path):
    """A first revision, in feet, that holds as long as the company's quotes do."""
    job = _read(lay_out(None, tmp_path))
    assert (job.revision, job.units) == (1, Units.US)
    assert (job.quote_date, job.holds_until) == (date(2026, 5, 14), date(2026, 6, 13))


def test_a_job_may_hold_for_longer(tmp_path: Path):
    """`holds_days` of the job goes before that of the company."""
    job = lay_out(None, tmp_path)
    text = job.read_text(encoding="utf-8")
    job.write_text(f"{text}holds_days: 60\n", encoding="utf-8")
    assert _read(job).holds_until == date(2026, 7, 13)


def test_what_is_not_included_is_said_by_both(tmp_path: Path):
    """The company's list comes first, then that of the job."""
    job = lay_out(None, tmp_path)
    for name, what in (("company.yaml", "Permit"), ("job.yaml", "Fence")):
        with (tmp_path / name).open("a", encoding="utf-8") as file:
            file.write(f"not_included: [{{what: {what}, who: you}}]\n")
    assert [entry.what for entry in _read(job).not_included] == ["Permit", "Fence"]


def test_company_files_may_lie_one_folder_up(tmp_path: Path):
    """Jobs may be kept in a folder of their own below the company's files."""
    lay_out(None, tmp_path)
    (tmp_path / "jobs").mkdir()
    job = (tmp_path / "job.yaml").rename(tmp_path / "jobs" / "job.yaml")
    assert _read(job).company.name == "Pennywort Flatwork"


def test_company_files_beside_the_job_go_first(tmp_path: Path):
    """A file beside the job is nearer than the one above."""
    lay_out(None, tmp_path)
    (tmp_path / "jobs").mkdir()
    job = lay_out(None, tmp_path / "jobs")
    near = tmp_path / "jobs" / "company.yaml"
    text = near.read_text(encoding="utf-8").replace("Pennywort Flatwork", "Sorrel Flatwork")
    near.write_text(text, encoding="utf-8")
    assert _read(job).company.name == "Sorrel Flatwork"


def test_company_files_are_not_looked_for_further_up(tmp_path: Path):
    """Two folders up is somebody else's desk."""
    lay_out(None, tmp_path)
    below = tmp_path / "jobs" / "2026"
    below.mkdir(parents=True)
    job = (tmp_path / "job.yaml").rename(below / "job.yaml")
    assert _codes(read_job(job, SCOPE)) == ["no-company-file"] * 2


def test_a_file_is_named_as_it_was_typed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """A problem names a file from where the person stands, not from the root of the machine."""
    lay_out(None, tmp_path)
    (tmp_path / "jobs").mkdir()
    (tmp_path / "job.yaml").rename(tmp_path / "jobs" / "job.yaml")
    with (tmp_path / "company.yaml").open("a", encoding="utf-8") as file:
        file.write("extra: 1\n")
    monkeypatch.chdir(tmp_path / "jobs")
    problems = read_job(Path("job.yaml"), SCOPE)
    assert isinstance(problems, tuple)
    (problem,) = problems
    assert problem.source.file == "../company.yaml"


def test_a_job_may_be_a_link(tmp_path: Path):
    """A link to a job is read like the job, with the files beside the link."""
    job = lay_out(None, tmp_path)
    (tmp_path / "drafts").mkdir()
    moved = job.rename(tmp_path / "drafts" / "job.yaml")
    job.symlink_to(moved)
    assert _read(job).quote == "T-1"


def test_past_jobs_are_optional(tmp_path: Path):
    """A new company has done none yet."""
    job = lay_out(None, tmp_path)
    (tmp_path / "past-jobs.yaml").unlink()
    assert _read(job).references == ()


@pytest.mark.parametrize("name", [name for name in FILES if name != "past-jobs.yaml"])
def test_the_other_files_are_needed(tmp_path: Path, name: str):
    """Without the job, the company or its prices there is no quote."""
    job = lay_out(None, tmp_path)
    (tmp_path / name).unlink()
    code = "cannot-read" if name == "job.yaml" else "no-company-file"
    assert _codes(read_job(job, SCOPE)) == [code]


def test_places_are_those_of_the_job_file(tmp_path: Path):
    """Later stages find the line of whatever they measured or priced."""
    job = _read(lay_out(None, tmp_path))
    source = job.source("placements", 0, "add", 0, "rectangle")
    assert (source.line, source.column) == (13, 21)


def test_a_job_with_an_error_is_still_handed_on(tmp_path: Path):
    """So that its shapes are looked at too: one evening, one list."""
    job = lay_out(None, tmp_path)
    job.write_text((GOOD / "job.yaml").read_text(encoding="utf-8").replace("broom", "brom"),
                   encoding="utf-8")  # fmt: skip
    read = read_job(job, SCOPE)
    assert isinstance(read, ReadJob)
    assert [problem.code for problem in read.problems] == ["unknown-finish"]
