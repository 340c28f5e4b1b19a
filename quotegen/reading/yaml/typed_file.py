"""The files of a job: itself, and the company's files beside it or one folder up."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Generic, TypeVar

from pydantic import BaseModel

from quotegen.problem import Problem
from quotegen.reading.yaml.letters import letter_faults
from quotegen.reading.yaml.located import Document, DocumentPath, Places, parse
from quotegen.reading.yaml.unreadable import LARGEST_FILE_BYTES
from quotegen.reading.yaml.validate import validate

M = TypeVar("M", bound=BaseModel)


@dataclass(frozen=True, slots=True)
class Typed(Generic[M]):
    """A file's typed value, and where each part of it stands."""

    value: M
    places: Places

    def fault(self, path: DocumentPath, code: str, message: str, hint: str) -> Problem:
        """Return an error in the value at a path of the file."""
        return self.places.fault(path, code, message, hint)


def load(path: Path, model: type[M]) -> Typed[M] | tuple[Problem, ...]:
    """Read one YAML file into its model.

    Returns:
        The typed file, or every fault in it.
    """
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE_BYTES + 1)
        size = path.stat().st_size
    except OSError as error:
        said = f"the file cannot be opened: {(error.strerror or 'it cannot be read').lower()}"
        file_itself = Places(str(path))
        return (file_itself.fault((), "cannot-read", said, "check the name and the folder"),)
    return _typed(data, str(path), size, model)


@lru_cache(maxsize=64)  # all jobs of a season have the same company
def _typed(
    data: bytes, file: str, size_bytes: int, model: type[M]
) -> Typed[M] | tuple[Problem, ...]:
    document = parse(data, file, size_bytes=size_bytes)
    if not isinstance(document, Document):
        return document
    value = validate(document, model)
    if isinstance(value, tuple):
        return value
    return tuple(letter_faults(value, document.places)) or Typed(value, document.places)


def beside(job: Path, name: str) -> Path | None:
    """Return the company file of that name in the job's folder or the one above."""
    # Named as the person who types would name it: relative to where they stand.
    places = (job.parent / name, job.parent / ".." / name)
    return next((place for place in places if place.is_file()), None)


def missing_beside(job: Path, name: str) -> Problem:
    """Return the problem of a company file neither beside the job nor one folder up."""
    said = f"there is no `{name}` beside this job nor in the folder above"
    hint = f"copy example_jobs/all_in/{name} there and make it yours"
    return Places(str(job)).fault((), "no-company-file", said, hint)


def says_outcome(path: Path) -> bool:
    """Whether a file looks like a job that is done, before it is read in full."""
    return typed_at(path, "actual") is not None


def typed_at(path: Path, key: str) -> str | None:
    """Return what stands beside a key at the top of a file, before it is read in full.

    Returns:
        The text without its quotation marks and comment; None where the file has no such line.
    """
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE_BYTES)
    except OSError:
        return None
    start = f"{key}:".encode()
    found = next((line for line in data.splitlines() if line.startswith(start)), None)
    if found is None:
        return None
    text, _, _ = found.removeprefix(start).decode("utf-8", "replace").partition(" #")
    return text.strip().strip("\"'")
