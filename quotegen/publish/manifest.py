"""What we wrote into a folder, and for whom: the list that tells our files from anybody's."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from pydantic import TypeAdapter, ValidationError

from quotegen.problem import Source
from quotegen.reading.ledger.entries import sha256

MANIFEST = ".written.json"
"""Its name, in the folder that it is about."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Whose:
    """Whom a folder is written for.

    Attributes:
        quote: the quote number, or the command whose folder it is.
        customer: the name in the job; empty in the folder of a command.
        place: where the quote number stands, or the folder where no file says it.
        inputs: as in `Manifest`.
        silent: as in `Manifest`.
    """

    quote: str
    customer: str = ""
    place: Source
    inputs: str = ""
    silent: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Manifest:
    """What a folder holds of ours.

    Attributes:
        quote: as in `Whose`.
        customer: as in `Whose`.
        job: the name of the job file, without its folder.
        files: by path, the SHA-256 of what we may have left there: one, or, while a run is
            under way, those of the older file and of the new one.
        inputs: the SHA-256 of all that the files were made of; empty where nobody says, and
            while a run is under way.
        silent: whether nothing was said about those inputs, no warning either.
    """

    quote: str
    customer: str
    job: str
    files: Mapping[str, tuple[str, ...]]
    inputs: str = ""
    silent: bool = False

    def of_another(self, whose: Whose) -> bool:
        """Say whether the folder is another customer's, or another quote's."""
        return (self.quote, self.customer) != (whose.quote, whose.customer)

    def is_whole(self, folder: Path) -> bool:
        """Say whether each file lies in the folder as we wrote it."""
        paths = {folder / name: hashes for name, hashes in self.files.items()}
        return all(
            path.is_file() and (sha256(path.read_bytes()),) == hashes
            for path, hashes in paths.items()
        )

    def to_json(self) -> bytes:
        """Return the manifest as it is written: the same for the same files."""
        files = {name: list(hashes) for name, hashes in self.files.items()}
        said = {"quote": self.quote, "customer": self.customer, "job": self.job, "files": files,
                "inputs": self.inputs, "silent": self.silent}  # fmt: skip
        return f"{json.dumps(said, ensure_ascii=False, indent=1, sort_keys=True)}\n".encode()


def manifest_of(whose: Whose, files: Mapping[str, bytes]) -> Manifest:
    """Return the manifest of files that are about to be written."""
    return Manifest(
        quote=whose.quote,
        customer=whose.customer,
        job=Path(whose.place.file).name,
        files={name: (sha256(data),) for name, data in files.items()},
        inputs=whose.inputs,
        silent=whose.silent,
    )


def read_manifest(folder: Path) -> Manifest | None:
    """Return the manifest of a folder, None where there is none that can be understood.

    Without one, nothing in the folder counts as ours. A path that leads out of the folder is none
    of ours either.
    """
    try:
        found = _READER.validate_json((folder / MANIFEST).read_bytes())
    except (FileNotFoundError, IsADirectoryError, ValidationError):
        return None
    return found if all(map(_inside, found.files)) else None


def _inside(name: str) -> bool:
    path = PurePosixPath(name)
    return not path.is_absolute() and ".." not in path.parts and path.name != ""


_READER = TypeAdapter(Manifest)
