"""`quotegen check` with anything: a job, a company's file, a folder, standard input."""

import io
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from quotegen import pipeline
from quotegen.checking import check_all, files_in
from quotegen.pipeline import figure
from quotegen.resources import example_folder
from tests.messages.command import Command
from tests.pricing.shop import shared
from tests.world import PATIO, write_world

NOTHING = io.BytesIO()


@pytest.fixture
def command(tmp_path, monkeypatch, capsys) -> Command:
    """Stand in a folder with the files of a company and a job."""
    write_world(tmp_path)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(pipeline, "read_shared", shared)
    return Command(monkeypatch, capsys)


@pytest.mark.parametrize("name", ["company.yaml", "rate-book.yaml", "past-jobs.yaml"])
def test_a_company_file_is_known_by_its_keys(command: Command, name: str):
    """Each is checked as what it is, whatever it is called."""
    Path("typed.yaml").write_bytes(Path(name).read_bytes())
    for file in (name, "typed.yaml"):
        ran = command("check", file)
        assert (ran.code, ran.out, ran.err) == (0, f"{file}: no errors\n", "")


def test_a_slip_in_a_rate_book_is_one_message(command: Command):
    """No line of it is held against the keys of a job."""
    text = Path("rate-book.yaml").read_text("utf-8").replace("minimum:", "minimun:")
    Path("rate-book.yaml").write_text(text, encoding="utf-8")
    ran = command("check", "rate-book.yaml")
    assert (ran.code, ran.err.count("\n")) == (1, 2)
    assert "`minimun` is not a key" in ran.err
    assert "did you mean `minimum`?" in ran.err


def test_what_the_files_say_to_each_other(command: Command):
    """A payment at a visit that the rate book lacks is said when the company is checked."""
    text = Path("company.yaml").read_text("utf-8").replace("at_visit: pour", "at_visit: poor")
    Path("company.yaml").write_text(text, encoding="utf-8")
    for file in ("company.yaml", "rate-book.yaml"):
        ran = command("check", file)
        assert ran.code == 1
        assert "poor" in ran.err


def test_a_rate_book_alone(tmp_path):
    """Without a company beside it a rate book is checked by itself."""
    book = tmp_path / "rate-book.yaml"
    book.write_bytes((example_folder("all_in") / "rate-book.yaml").read_bytes())
    assert check_all((book,), shared(), NOTHING) == ((f"{book}: no errors\n",), ())


def test_a_folder_is_all_of_it(command: Command):
    """Company's files first, then jobs; frozen files and packages are left alone."""
    for folder in ("jobs", "issued/T-8/r1", "out"):
        Path(folder).mkdir(parents=True)
        bad = PATIO.replace("T-1", "T-2").replace("finish: broom", "finish: brom")
        (Path(folder) / "second.yaml").write_text(bad, encoding="utf-8")
    Path("notes.yaml").write_text("milk: 2\n", encoding="utf-8")
    assert [str(path) for path in files_in(Path())] == [
        "company.yaml", "job.yaml", "past-jobs.yaml", "rate-book.yaml", "jobs/second.yaml",
    ]  # fmt: skip
    ran = command("check", ".")
    assert ran.code == 1
    assert ran.out.count(": no errors\n") == 4
    assert ran.err.count("`brom`") == 1


def test_a_folder_without_any(tmp_path):
    """An empty folder is an error with its cure, and the other paths are still checked."""
    lines, (problem,) = check_all((tmp_path,), shared(), NOTHING)
    assert (lines, problem.code) == ((), "nothing-here")
    assert "quotegen new" in problem.hint


def test_a_fault_of_the_company_is_said_once(command: Command):
    """Two jobs beside one faulty company say it once."""
    Path("second.yaml").write_text(PATIO.replace("T-1", "T-2"), encoding="utf-8")
    text = Path("company.yaml").read_text("utf-8").replace("phone:", "fone:", 1)
    Path("company.yaml").write_text(text, encoding="utf-8")
    ran = command("check", "job.yaml", "second.yaml")
    assert ran.err.count("`fone`") == 1


@pytest.mark.parametrize(("finish", "code"), [("broom", 0), ("brom", 1)])
def test_standard_input(command: Command, monkeypatch, finish: str, code: int):
    """A job that is typed there takes the company's files of this folder, and is called `-`."""
    text = PATIO.replace("T-1", "T-9").replace("finish: broom", f"finish: {finish}")
    monkeypatch.setattr(sys, "stdin", SimpleNamespace(buffer=io.BytesIO(text.encode())))
    ran = command("check", "-")
    assert ran.code == code
    assert ran.out.startswith("-: no errors") or ran.err.startswith("-:7:9: the rate book has no")


def test_nothing_by_standard_input(command: Command, monkeypatch):
    """An empty input is an empty file."""
    monkeypatch.setattr(sys, "stdin", SimpleNamespace(buffer=io.BytesIO()))
    ran = command("check", "-")
    assert ran.code == 1
    assert "the file is empty" in ran.err


def test_a_company_file_is_no_job(command: Command):
    """Where a job belongs, another file is named as what it is, in one message."""
    (problem,) = figure(Path("rate-book.yaml"), shared()).problems
    assert problem.code == "not-a-job"
    assert problem.message == "this is a rate book, and a job belongs here"
    assert command("figure", "company.yaml").err.count("\n") == 2


def test_a_slip_in_a_name_is_one_message(command: Command):
    """A file that is not there says nothing of the company, and what may be meant."""
    ran = command("check", "jbo.yaml")
    assert (ran.code, ran.out) == (1, "")
    assert ran.err == (
        "jbo.yaml:1:1: the file cannot be opened: no such file or directory\n"
        "    did you mean `job.yaml`?\n"
    )
