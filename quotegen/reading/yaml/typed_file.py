"""The files of a job: itself, and the company's files beside it or one folder up."""

from dataclasses import dataclass
from difflib import get_close_matches
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

CANNOT_READ = "cannot-read"
"""The code of a file that cannot be opened, of which nothing more can be said."""
_NEAR = 0.75


@dataclass(frozen=True, slots=True)
class Typed(Generic[M]):
    """A file's typed value, and where each part of it stands."""

    value: M
    places: Places

    def fault(self, path: DocumentPath, code: str, message: str, hint: str) -> Problem:
        """Return an error in the value at a path of the file."""
        return self.places.fault(path, code, message, hint)


def load(path: Path, model: type[M], typed: bytes | None = None) -> Typed[M] | tuple[Problem, ...]:
    """Read one YAML file into its model.

    Args:
        path: the file.
        model: of its kind.
        typed: what stands in it, where it comes from elsewhere than the disk.

    Returns:
        The typed file, or every fault in it.
    """
    data, size = typed or b"", 0
    if typed is None:
        try:
            with path.open("rb") as file:
                data = file.read(LARGEST_FILE_BYTES + 1)
            size = path.stat().st_size
        except OSError as error:
            return (_not_opened(path, error),)
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


def _not_opened(path: Path, error: OSError) -> Problem:
    said = f"the file cannot be opened: {(error.strerror or 'it cannot be read').lower()}"
    others = {one.name: one for one in path.parent.glob("*.yaml")}
    near = get_close_matches(path.name, others, n=1, cutoff=_NEAR)
    hint = f"did you mean `{others[near[0]]}`?" if near else "check the name and the folder"
    return Places(str(path)).fault((), "cannot-read", said, hint)


def folders_of(job: Path) -> tuple[Path, Path]:
    """Return where the company's files of a job may lie: in its folder, or in the one above.

    Named as the person who types would name it: relative to where they stand.
    """
    own = job.parent
    plain = own.name not in {"", ".."} and not own.is_symlink()
    return own, own.parent if plain else own / ".."


def beside(job: Path, name: str) -> Path | None:
    """Return the company file of that name in the job's folder or the one above."""
    places = (folder / name for folder in folders_of(job))
    return next((place for place in places if place.is_file()), None)


def missing_beside(job: Path, name: str) -> Problem:
    """Return the problem of a company file neither beside the job nor one folder up."""
    said = f"there is no `{name}` beside this job nor in the folder above"
    hint = "type `quotegen new` with a folder, which writes all files of a company"
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
