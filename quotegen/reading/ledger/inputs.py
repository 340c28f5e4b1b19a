"""The files that a quote is made of, to be frozen with it, and found again as they were."""

from collections.abc import Iterator
from pathlib import Path
from posixpath import normpath

from quotegen.reading.book_versions import book_on
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.past_jobs import PastJobs
from quotegen.reading.images.photos import inside
from quotegen.reading.yaml.typed_file import Typed, beside, load

JOB_FOLDER = "jobs"
"""Where the job lies among the frozen files; the company's lie there too, or one folder up."""


def inputs_of(job: Path) -> dict[str, bytes]:
    """Return the bytes of each file that a job is made of, by its frozen path.

    These are the job, the company's file with its logo, its own pages, words and themes, the rate
    book of the job's date, the past jobs with their photos, and those of the site. A file that
    cannot be read is left out; `figure` has said so.
    """
    return {
        f"{JOB_FOLDER}/{name}" if folder == job.parent else name: (folder / name).read_bytes()
        for folder, name in _files(job)
    }


def input_files(job: Path) -> tuple[Path, ...]:
    """Return the path of each of these files."""
    return tuple(folder / name for folder, name in _files(job))


def frozen_name(job: Path) -> str:
    """Return where a job file lies among the frozen files."""
    return f"{JOB_FOLDER}/{job.name}"


def _files(job: Path) -> Iterator[tuple[Path, str]]:
    """Yield the folder and the name of each file; a picture may lie in folders below."""
    yield job.parent, job.name
    typed = load(job, JobFile)
    for seen in typed.value.photos if isinstance(typed, Typed) else ():
        yield from _picture(job.parent, seen.file)
    book = book_on(job, typed.value.date if isinstance(typed, Typed) else None)
    if isinstance(book, Typed):
        yield _placed(book.places.file)
    company_file, past_file = beside(job, "company.yaml"), beside(job, "past-jobs.yaml")
    if company_file is not None:
        yield _placed(str(company_file))
        company = load(company_file, Company)
        if isinstance(company, Typed) and company.value.logo:
            yield from _picture(company_file.parent, company.value.logo)
        yield from _own(company_file.parent)
    if past_file is not None:
        yield _placed(str(past_file))
        past = load(past_file, PastJobs)
        named = past.value.past_jobs.values() if isinstance(past, Typed) else ()
        for photo in {one.photo.file for one in named if one.photo}:
            yield from _picture(past_file.parent, photo)


def _placed(file: str) -> tuple[Path, str]:
    return Path(file).parent, Path(file).name


def _own(company: Path) -> Iterator[tuple[Path, str]]:
    """Yield what stands in for our pages, words and looks; nothing that a desktop left there."""
    for room in ("content", "themes"):
        for file in sorted((company / room).rglob("*")):
            name = file.relative_to(company)
            if file.is_file() and not any(part.startswith(".") for part in name.parts):
                yield company, name.as_posix()


def _picture(folder: Path, name: str) -> Iterator[tuple[Path, str]]:
    path = inside(folder, name)
    if path is not None and path.is_file():
        yield folder, normpath(name)
