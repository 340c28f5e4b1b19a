"""A season: what one command works out once, what stops a job, and what is not made twice."""

from collections import Counter
from collections.abc import Callable
from pathlib import Path
from shutil import copy
from typing import Any

import pytest

from quotegen import pipeline
from quotegen.pricing.costs.outcome import Drift
from quotegen.problem import Problem
from quotegen.publish.manifest import Whose
from quotegen.publish.package import Package
from quotegen.resources import content_folder
from quotegen.season import Asked, Landed, package_all
from tests.pricing import shop
from tests.world import EXAMPLES, PATIO, write_world

DONE = f"{PATIO}actual: {{done: 2026-07-01, hours: {{base: 6 hours, drive: 5 hours}}}}\n"

Drifts = dict[str, tuple[Drift, ...]]


@pytest.fixture
def drifts(monkeypatch: pytest.MonkeyPatch) -> Drifts:
    """Collect what each package is told of drift, by quote number, and build no page."""
    told: Drifts = {}

    def package(results, _owner, drift):
        told[results.job.quote] = drift
        whose = Whose(quote=results.job.quote, place=results.job.source("quote"))
        return Package(whose=whose, files={"customer/told": b""}, printed={})

    monkeypatch.setattr("quotegen.publish.package.package", package)
    return told


def _season(*jobs: Path, **asked: Any) -> tuple[list[str], list[Problem]]:
    """The quote numbers that a season packages, one job at a time, and what it says."""
    out = jobs[0].parent / "out"
    told = list(package_all(jobs, Asked(out=out, **asked), shop.shared()))
    return (
        [one.folder.name for one in told if isinstance(one, Landed) and one.names],
        [one for one in told if isinstance(one, Problem)],
    )


def _counted(monkeypatch: pytest.MonkeyPatch, name: str) -> Counter[str]:
    """Count the calls of a stage by the name or the quote number of the job."""
    stage: Callable[..., object] = getattr(pipeline, name)
    calls: Counter[str] = Counter()

    def counting(job, *rest, **named):
        calls[job.name if isinstance(job, Path) else job.quote] += 1
        return stage(job, *rest, **named)

    monkeypatch.setattr(pipeline, name, counting)
    return calls


def test_a_finished_job_is_figured_once_for_all_that_are_packaged(tmp_path, drifts, monkeypatch):
    """Two jobs beside a finished one: it is read and measured once, and never priced in full."""
    jobs = (write_world(tmp_path), tmp_path / "second.yaml")
    jobs[1].write_text(PATIO.replace("T-1", "T-2"), encoding="utf-8")
    (tmp_path / "done.yaml").write_text(DONE.replace("T-1", "T-0"), encoding="utf-8")
    read, measured, priced = (_counted(monkeypatch, name)
                              for name in ("read_job", "measure", "price"))  # fmt: skip
    assert _season(*jobs) == (["T-1", "T-2"], [])
    assert (read["done.yaml"], measured["T-0"], priced["T-0"]) == (1, 1, 0)
    assert (priced["T-1"], priced["T-2"]) == (1, 1)
    assert [one.id for one in drifts["T-1"]] == ["drive", "base"]
    assert drifts["T-1"] == drifts["T-2"]


def test_each_folder_has_its_own_finished_jobs(tmp_path, drifts):
    """A finished job tells of the jobs beside it alone."""
    jobs = []
    for number in ("T-1", "T-2"):
        folder = tmp_path / number
        folder.mkdir()
        jobs.append(write_world(folder, PATIO.replace("T-1", number)))
    (tmp_path / "T-2" / "done.yaml").write_text(DONE.replace("T-1", "T-0"), encoding="utf-8")
    _season(*jobs)
    assert {number: len(drift) for number, drift in drifts.items()} == {"T-1": 0, "T-2": 2}


def test_the_hours_that_drift(tmp_path, drifts):
    """The finished drive of the examples, by its hours in the book and those that it took."""
    (tmp_path / "jobs").mkdir()
    for name in ("company.yaml", "rate-book.yaml", "past-jobs.yaml",
                 "jobs/cutters-row-drive.yaml", "jobs/tanager-lane-patio.yaml"):  # fmt: skip
        copy(EXAMPLES / name, tmp_path / name)
    (quote,), _ = _season(tmp_path / "jobs/tanager-lane-patio.yaml")
    assert [(d.id, str(d.estimated), str(d.actual), d.drifts) for d in drifts[quote]] == [
        # 775.10 sq ft with the hollow flare, 86.10 ft of forms but at the garage and the curb
        ("bar", "5.81", "8.50", True),
        ("dig_out", "8.36", "9.50", True),
        ("forms", "6.17", "7.00", True),
        ("drive", "9.00", "8.00", True),
        ("break_out", "18.60", "17.00", False),
        ("joints", "3.76", "4.00", False),
        ("base", "6.70", "7.00", False),
        ("broom", "13.40", "14.00", False),
        ("slab", "7.98", "8.00", False),
    ]


def test_a_finished_job_with_an_error_says_nothing(tmp_path, drifts):
    """It is left out, and stops no package: its own `check` names the error."""
    job = write_world(tmp_path)
    done = DONE.replace("broom", "brom").replace("quote: T-1", "quote: T-2")
    (tmp_path / "done.yaml").write_text(done, encoding="utf-8")
    assert _season(job) == (["T-1"], [])
    assert drifts == {"T-1": ()}


@pytest.mark.parametrize("strict", [False, True])
def test_an_error_in_one_job_stops_that_job(tmp_path, drifts, strict: bool):
    """Its problem is told before the good one is explained; a strict season explains neither."""
    jobs = (write_world(tmp_path), tmp_path / "bad.yaml")
    bad = PATIO.replace("finish: broom", "finish: brom").replace("quote: T-1", "quote: T-2")
    jobs[1].write_text(bad, encoding="utf-8")
    packaged, problems = _season(*jobs, strict=strict)
    assert [problem.code for problem in problems] == ["unknown-finish"]
    assert packaged == list(drifts) == ([] if strict else ["T-1"])


@pytest.mark.parametrize("why", [None, "it fills a gap in a quiet week"])
def test_a_price_under_a_floor_is_packaged_only_with_a_reason(tmp_path, drifts, why: str | None):
    """`package` refuses a job under its floors until the job says why, and then warns."""
    said = f"under_floor: {why}\n" if why else ""
    book = (EXAMPLES / "rate-book.yaml").read_text(encoding="utf-8")
    high = book.replace("floors: {margin: 12 %", "floors: {margin: 60 %")
    packaged, problems = _season(write_world(tmp_path, PATIO + said, rate_book=high))
    assert packaged == list(drifts) == (["T-1"] if why else [])
    assert {p.severity.value for p in problems} == {"warning" if why else "error"}


def test_two_jobs_with_one_number(tmp_path, drifts):
    """They would be written over each other: neither is, and the second one says its number."""
    jobs = (write_world(tmp_path), tmp_path / "second.yaml")
    jobs[1].write_text(PATIO, encoding="utf-8")
    _, (problem,) = _season(*jobs)
    assert (problem.code, problem.path) == ("same-quote-number", "quote")
    assert (Path(problem.source.file).name, problem.source.line) == ("second.yaml", 1)
    assert drifts == {}


def _changed(path: Path, text: str) -> Callable[[Path], None]:
    """What adds a line to a file of the world, or makes the file."""

    def change(folder: Path) -> None:
        file = folder / path
        file.parent.mkdir(parents=True, exist_ok=True)
        before = file.read_text(encoding="utf-8") if file.exists() else ""
        file.write_text(before + text, encoding="utf-8")

    return change


CHANGES = {
    "the job": _changed(Path("job.yaml"), "# another word\n"),
    "the company": _changed(Path("company.yaml"), "# another word\n"),
    "the rate book": _changed(Path("rate-book.yaml"), "# another word\n"),
    "the past jobs": _changed(Path("past-jobs.yaml"), "# another word\n"),
    "a finished job": _changed(Path("done.yaml"), DONE.replace("T-1", "T-0")),
    "a page of the owner": _changed(
        Path("content/care/one.md"), (content_folder() / "care/1-first-day.md").read_text("utf-8")
    ),
}


@pytest.mark.parametrize("what", CHANGES)
def test_any_change_makes_the_whole_package_again(tmp_path, drifts, what: str):
    """Nothing is done where nothing changed; one line in any file that counts does it all again."""
    job = write_world(tmp_path)
    assert _season(job) == (["T-1"], [])
    assert _season(job) == ([], [])
    CHANGES[what](tmp_path)
    assert _season(job) == (["T-1"], [])
    assert _season(job) == ([], [])
    assert drifts


def test_what_does_not_count_changes_nothing(tmp_path, drifts):
    """An unfinished job beside it, a touch, a scan in the folder: none is a change."""
    job = write_world(tmp_path)
    _season(job)
    (tmp_path / "other.yaml").write_text(PATIO.replace("T-1", "T-2"), encoding="utf-8")
    (tmp_path / "out/T-1/signed.pdf").write_bytes(b"scan")
    job.touch()
    assert _season(job) == ([], [])
    assert list(drifts) == ["T-1"]


def test_a_package_that_is_not_whole_is_made_again(tmp_path, drifts):
    """A file of it that was deleted comes back."""
    job = write_world(tmp_path)
    _season(job)
    (tmp_path / "out/T-1/customer/told").unlink()
    assert _season(job) == (["T-1"], [])
    assert (tmp_path / "out/T-1/customer/told").exists()
    assert list(drifts) == ["T-1"]


def test_a_warning_is_said_each_time(tmp_path, drifts):
    """The job is priced again for its warning, and not printed again."""
    job = write_world(tmp_path, PATIO.replace("2026-06-08", "2026-05-08"))
    first, said = _season(job)
    assert (first, [problem.code for problem in said]) == (["T-1"], ["start-before-quote"])
    assert _season(job) == ([], said)
    assert list(drifts) == ["T-1"]


def test_no_byte_differs_however_it_is_made(tmp_path):
    """Alone, again, beside another, and by two processes at once: the same files."""
    jobs = (write_world(tmp_path), tmp_path / "second.yaml")
    jobs[1].write_text(PATIO.replace("T-1", "T-2"), encoding="utf-8")
    made = []
    for out, cores, asked in (("a", 1, jobs[:1]), ("a", 1, jobs[:1]), ("b", 2, jobs)):
        season = Asked(out=tmp_path / out, cores=cores, fresh=True)
        assert not [one for one in package_all(asked, season, shop.shared())
                    if isinstance(one, Problem)]  # fmt: skip
        folder = tmp_path / out / "T-1"
        made.append({
            path.relative_to(folder): path.read_bytes()
            for path in folder.rglob("*") if path.is_file()
        })  # fmt: skip
    assert made[0] == made[1] == made[2]
    assert (tmp_path / "b/T-2/customer/quote.pdf").exists()
