"""The preview: built at each save, served to this machine alone, faults on the page."""

import json
import os
import re
import time
from collections.abc import Callable
from http.client import HTTPConnection
from pathlib import Path
from threading import Event, Thread

import pytest

from quotegen import pipeline
from quotegen.problem import Problem, Source
from quotegen.publish.package import quote_page
from quotegen.publish.preview import Preview, files_of
from tests.pricing.shop import shared
from tests.world import PATIO, write_world

PATIENCE_S = 20.0
FAULT = Problem(code="x", source=Source(file="job.yaml", line=3), message="<b>wrong", hint="mend")


def _until(true: Callable[[], bool]) -> None:
    end = time.monotonic() + PATIENCE_S
    while not true():
        assert time.monotonic() < end, "it did not happen"
        time.sleep(0.02)


class Running:
    """A preview that runs in a thread, and what it was asked and said."""

    def __init__(self, job: Path, build: Callable[[], tuple[bytes | None, tuple[Problem, ...]]]):
        self.said: list[str] = []
        self.opened: list[str] = []
        self.ended = Event()
        self.preview = Preview(job, build, self.said.append)
        self.thread = Thread(target=self.preview.run, args=(self.opened.append, self.ended))

    def __enter__(self) -> "Running":
        self.thread.start()
        _until(lambda: bool(self.opened))
        return self

    def __exit__(self, *_: object) -> None:
        self.ended.set()
        self.thread.join(PATIENCE_S)
        assert not self.thread.is_alive()

    def get(self, path: str, host: str | None = None) -> tuple[int, dict[str, str], str]:
        connection = HTTPConnection("127.0.0.1", self.preview.port)
        connection.request("GET", path, headers={"Host": host} if host else {})
        answer = connection.getresponse()
        return answer.status, dict(answer.getheaders()), answer.read().decode()


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return write_world(tmp_path)


def test_the_page_is_that_of_the_package(job: Path):
    """What is shown is quote.html to the byte, and it takes no printing."""
    made, problems = pipeline.page(job, shared())
    results = pipeline.figure(job, shared()).results
    assert results is not None
    assert (made, problems) == (quote_page(results), ())


def test_a_save_is_shown(job: Path):
    """A change is built and counted, and a fault stands beside the page from before."""
    with Running(job, lambda: pipeline.page(job, shared())) as run:
        first = json.loads(run.get("/state")[2])
        assert (first["page"], first["problems"]) == (1, [])
        assert "Patio" in run.get("/quote.html?1")[2]
        job.write_text(PATIO.replace("finish: broom", "finish: brom"), encoding="utf-8")
        _until(lambda: run.preview.shown.version == 2)
        now = json.loads(run.get("/state")[2])
        (problem,) = now["problems"]
        assert (now["page"], problem["place"]) == (1, f"{job}:7:9")
        assert problem["cure"] == "did you mean `broom`?"
        assert now["said"] == "1 to mend; the page below is from before"
        job.write_text(PATIO.replace("title: Patio", "title: Terrace"), encoding="utf-8")
        _until(lambda: run.preview.shown.version == 3)
        assert json.loads(run.get("/state")[2])["page"] == 3
        assert "Terrace" in run.get("/quote.html?3")[2]
    assert run.said[1].startswith("1 to mend")


@pytest.mark.parametrize("name", ["company.yaml", "rate-book.yaml", "past-jobs.yaml",
                                  "content/clauses/warranty.md", "photos/wall.jpg"])  # fmt: skip
def test_what_a_quote_depends_on_is_watched(tmp_path: Path, name: str):
    """Company's files one folder up, own pages and photos count as the job itself does."""
    (tmp_path / "jobs").mkdir()
    job = write_world(tmp_path).rename(tmp_path / "jobs" / "job.yaml")
    before = files_of(job)
    path = tmp_path / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("new", encoding="utf-8")
    assert files_of(job) != before
    before = files_of(job)
    os.utime(path, ns=(1, 1))
    assert files_of(job) != before
    path.unlink()
    assert files_of(job) != before


@pytest.mark.parametrize("host", ["evil.example", "evil.example:80", "127.0.0.1", "localhost:1"])
def test_another_name_is_not_answered(job: Path, host: str):
    """A page elsewhere that lets its own name lead here gets nothing of the quote."""
    with Running(job, lambda: (b"secret", ())) as run:
        for path in ("/", "/quote.html", "/state"):
            status, _, body = run.get(path, host)
            assert (status, "secret" in body) == (403, False)


def test_both_names_of_this_machine_are_answered(job: Path):
    """The loopback address and its usual name; anything but the three pages is not there."""
    with Running(job, lambda: (b"page", ())) as run:
        for name in ("127.0.0.1", "localhost"):
            assert run.get("/", f"{name}:{run.preview.port}")[0] == 200
        assert run.opened == [f"http://127.0.0.1:{run.preview.port}/"]
        for path in ("/job.yaml", "/../company.yaml", "/private/cost-sheet.html"):
            assert run.get(path)[0] == 404


def test_the_frame_runs_its_own_script_alone(job: Path):
    """Its policy names the digest of its style and script, and nothing from elsewhere."""
    with Running(job, lambda: (b"page", ())) as run:
        _, headers, body = run.get("/")
    policy = headers["Content-Security-Policy"]
    assert len(re.findall("'sha256-[^']+'", policy)) == 2
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert "http" not in body.replace("https", "")
    assert headers["Cache-Control"] == "no-store"


def test_a_problem_is_text(job: Path):
    """What a file says is set as text, so that no tag in it acts."""
    with Running(job, lambda: (None, (FAULT,))) as run:
        (problem,) = json.loads(run.get("/state")[2])["problems"]
        assert problem == {"kind": "error", "place": "job.yaml:3:1", "message": "<b>wrong",
                           "cure": "mend"}  # fmt: skip
        assert run.get("/quote.html")[0] == 404
        assert "innerHTML" not in run.get("/")[2]


def test_a_fault_of_ours_does_not_end_it(job: Path):
    """A build that breaks is said as a problem, and the next save is built."""
    broken = [True]

    def build() -> tuple[bytes, tuple[Problem, ...]]:
        if broken.pop() if broken else False:
            message = "the seventh corner"
            raise IndexError(message)
        return b"page", ()

    with Running(job, build) as run:
        (problem,) = run.preview.shown.problems
        assert problem.code == "preview-fault"
        assert "IndexError: the seventh corner" in problem.message
        job.write_text(PATIO + "\n", encoding="utf-8")
        _until(lambda: run.preview.shown.version == 2)
        assert run.preview.shown.page == b"page"
