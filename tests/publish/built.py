"""The examples, built once for all tests that read what was built."""

import os
import re
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

import pytest

from quotegen.pipeline import Shared, figure, outcomes_in
from quotegen.pricing.costs.outcome import drift_of
from quotegen.problem import Problem, has_error
from quotegen.publish.manifest import MANIFEST
from quotegen.publish.package import Package, package
from tests.once_per_run import once_per_run
from tests.pricing.shop import JOBS, shared

REPO = Path(__file__).resolve().parents[2]

UNPRINTED = frozenset({"kiln-hill-pool-deck", "mill-lane-walk"})
"""Examples whose figures and pages are read, but no PDF: printing takes most of a package."""
EVERY_BUILT = pytest.mark.parametrize("job_file", JOBS, ids=lambda path: path.stem)
EVERY_PRINTED = pytest.mark.parametrize(
    "job_file", [job for job in JOBS if job.stem not in UNPRINTED], ids=lambda path: path.stem
)
STAGE = re.compile(r"[1-6] (read|measure|price|visits|explain and 6 publish) ")
"""How a stage is said where the error stream is no terminal."""
MACHINE = {"TZ": "Pacific/Kiritimati", "PYTHONHASHSEED": "1", "LC_ALL": "C", "LANG": "C"}

BLOCKS = frozenset({
    "address", "article", "caption", "dd", "details", "div", "dt", "figcaption", "figure",
    "footer", "h1", "h2", "h3", "h4", "header", "hr", "li", "main", "nav", "ol", "p", "section",
    "summary", "svg", "table", "td", "text", "th", "title", "tr", "ul", "br", "body", "html",
})  # fmt: skip
UNSEEN = frozenset({"style", "script"})


@dataclass(frozen=True)
class Built:
    """Packages in memory, by quote number, and all that was said of their jobs."""

    packages: Mapping[str, Package]
    problems: tuple[Problem, ...]


def build(job_files: tuple[Path, ...], shared: Shared) -> Built:
    """Build the package of each job that has no error, and write nothing."""
    packages, problems = dict[str, Package](), list[Problem]()
    for path in job_files:
        one = figure(path, shared, to_package=True)
        problems += one.problems
        if one.results and one.owner and not has_error(one.problems):
            drift = drift_of(outcomes_in(path.parent, shared), one.owner.job.costs)
            packages[one.results.job.quote] = package(one.results, one.owner, drift)
    return Built(packages=packages, problems=tuple(problems))


@cache
def built(job_file: Path) -> Mapping[str, bytes]:
    """Every file of an example's package, by path; built once for a whole run of the tests."""
    return once_per_run(*_package(job_file), *map(_package, JOBS))


def _package(job_file: Path) -> tuple[str, Callable[[], Mapping[str, bytes]]]:
    def whole() -> Mapping[str, bytes]:
        if job_file.stem in UNPRINTED:
            with unprinted():
                (made,) = build((job_file,), shared()).packages.values()
            return made.files
        with TemporaryDirectory() as folder:
            return packaged(str(job_file), Path(folder), MACHINE)

    return f"package of {job_file.stem}", whole


def packaged(
    job_file: str, folder: Path, machine: Mapping[str, str], umask: int = -1
) -> dict[str, bytes]:
    """Run `package` with warnings as errors: nothing but its stages is said; return its files.

    Args:
        job_file: as typed in that folder.
        folder: where the command is typed.
        machine: what its environment says of time zone, language and hash seed.
        umask: what rights new files lack there; that of this process where none is given.
    """
    plain = {key: value for key, value in os.environ.items() if key != "SOURCE_DATE_EPOCH"}
    done = subprocess.run(
        [sys.executable, "-W", "error", "-m", "quotegen", "package", job_file],
        cwd=folder, env={**plain, "PYTHONPATH": str(REPO), **machine},
        capture_output=True, text=True, check=False, umask=umask,
    )  # fmt: skip
    said = [line for line in done.stderr.splitlines() if not STAGE.match(line)]
    assert (done.returncode, said) == (0, []), done.stderr
    (quote,) = (folder / "out").iterdir()
    files = {
        path.relative_to(quote).as_posix(): path.read_bytes()
        for path in sorted(quote.rglob("*")) if path.is_file() and path.name != MANIFEST
    }  # fmt: skip
    assert done.stdout.splitlines() == [f"out/{quote.name}/", *(f"  {name}" for name in files)]
    return files


@contextmanager
def unprinted() -> Iterator[None]:
    """Keep the print engine out of what reads no PDF: printing takes most of a build."""
    with patch("quotegen.publish.package.to_pdf", lambda *_: b"%PDF-1.7 not printed"):
        yield


def page_text(page: str) -> str:
    """Return what a reader of a page reads, one block on a line."""
    return re.sub(r"[^\S\n]+", " ", text_with_ties(page))


def text_with_ties(page: str) -> str:
    """Return the same with the no-break spaces that keep a number with its unit."""
    reader = _Reader()
    reader.feed(page)
    reader.close()
    lines = (re.sub(r"[ \t\r\n]+", " ", line) for line in "".join(reader.parts).split("\n\n"))
    return "\n".join(line.strip() for line in lines if line.strip()) + "\n"


class _Reader(HTMLParser):
    """Collects the text of a page; words under a halo are drawn twice and count once."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.parts: list[str] = []
        self.unseen = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        drawn_under = tag == "text" and ("aria-hidden", "true") in attrs
        if tag in UNSEEN or drawn_under:
            self.unseen += 1
        if tag in BLOCKS:
            self.parts.append("\n\n")

    def handle_endtag(self, tag: str) -> None:
        if self.unseen and (tag in UNSEEN or tag == "text"):
            self.unseen -= 1
        if tag in BLOCKS:
            self.parts.append("\n\n")

    def handle_data(self, data: str) -> None:
        if not self.unseen:
            self.parts.append(data.replace("\n", " "))
