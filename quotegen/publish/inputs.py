"""All that a package is made of, as one hash: what is the same twice is not made twice."""

import hashlib
import os
from collections.abc import Iterator
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from quotegen import __version__
from quotegen.reading.files.job import JobFile
from quotegen.reading.ledger.entries import LEDGER, sha256
from quotegen.reading.ledger.inputs import inputs_of
from quotegen.reading.yaml.typed_file import Typed, beside, load, says_outcome
from quotegen.resources import content_folder, program_folder, themes_folder

LIBRARIES = ("babel", "fonttools", "jinja2", "markdown", "pillow", "pydyf", "shapely", "weasyprint")


def inputs_digest(job: Path) -> str:
    """Return the SHA-256 of every file that the package of a job is made of, and of the program.

    These are the job, the company's files and pictures, its own pages, what was issued of the
    quote, the finished jobs beside it; and our code, content, themes and rules. Names count too.
    What the system brings, such as Pango, does not.
    """
    digest = hashlib.sha256(_program().encode())
    digest.update(os.environ.get("SOURCE_DATE_EPOCH", "").encode())
    for name, data in (*inputs_of(job).items(), *_finished(job), *_issued(job)):
        digest.update(f"\n{name}\n{sha256(data)}".encode())
    return digest.hexdigest()


def _finished(job: Path) -> Iterator[tuple[str, bytes]]:
    """Yield the finished jobs of the folder, from whose hours a cost sheet learns."""
    for path in sorted(job.parent.glob("*.yaml")):
        if path.name != job.name and says_outcome(path):
            yield f"finished {path.name}", path.read_bytes()


def _issued(job: Path) -> Iterator[tuple[str, bytes]]:
    """Yield what was issued of the quote."""
    company, typed = beside(job, "company.yaml"), load(job, JobFile)
    room = company.parent if company else job.parent
    if isinstance(typed, Typed):
        yield from _below(room / LEDGER / typed.value.quote, "*")


@cache
def _program() -> str:
    """Return the hash of what is the same for all jobs."""
    digest = hashlib.sha256(__version__.encode())
    for library in LIBRARIES:
        digest.update(f"\n{library} {_version(library)}".encode())
    ours = (
        *_below(program_folder(), "*.py"), *_below(program_folder() / "trade", "*.yaml"),
        *_below(content_folder(), "*"), *_below(themes_folder(), "*"),
    )  # fmt: skip
    for name, data in ours:
        digest.update(f"\n{name}\n{sha256(data)}".encode())
    return digest.hexdigest()


def _version(library: str) -> str:
    try:
        return version(library)
    except PackageNotFoundError:
        return ""


def _below(folder: Path, pattern: str) -> Iterator[tuple[str, bytes]]:
    """Yield the name and the bytes of each file below a folder, if there is one."""
    for path in sorted(folder.rglob(pattern)):
        if path.is_file():
            yield path.relative_to(folder).as_posix(), path.read_bytes()
