"""The only writer: all new files are laid beside the old ones, then each takes its place.

Files are replaced one by one, not the folder as a whole. A folder cannot be swapped in one step on
every disk, so that a run killed in the middle would leave none; and whatever else lies in it, such
as a signed scan, would have to be carried across. So strange files are never moved, and each of
ours is at any moment wholly the old one or wholly the new one. The manifest is written before the
first file moves, with the hashes of old and new, and again after the last, with those of the new.
A run that is killed between the two is taken up by the next: it knows either file as ours.
"""

import os
from collections.abc import Callable, Iterator, Mapping
from contextlib import ExitStack, contextmanager, suppress
from dataclasses import dataclass, replace
from errno import EAGAIN, ENOTDIR
from pathlib import Path
from shutil import rmtree
from typing import TypeAlias

from quotegen.problem import Problem, Severity, Source
from quotegen.publish.manifest import (
    MANIFEST,
    Manifest,
    Whose,
    manifest_of,
    read_manifest,
)
from quotegen.reading.ledger.entries import sha256

try:
    import fcntl
except ImportError:  # Windows, where two runs at once are not held apart
    fcntl = None  # type: ignore[assignment]

Files: TypeAlias = Mapping[str, bytes]
"""Relative path, with forward slashes, to the bytes of the file."""

NEW = ".quotegen-new-"
"""How the name of a file begins that is not in its place yet."""
BEGUN = "begun"
"""The name, after `NEW`, of the manifest of a run that has begun."""
PRIVATE, OWNER_ALONE, READ_ONLY = "private", 0o700, 0o444


@dataclass(frozen=True, slots=True, kw_only=True)
class Folder:
    """A folder to write, whose it is, and all files that shall be ours in it."""

    path: Path
    whose: Whose
    files: Files

    def rooms(self, before: Manifest | None) -> tuple[Path, ...]:
        """Return each folder that has or had a file of ours, the deepest first."""
        names = {*self.files, *(before.files if before else ()), MANIFEST}
        inside = {room for name in names for room in Path(name).parents}
        return tuple(self.path / room for room in sorted(inside, reverse=True))


def write(
    folders: tuple[Folder, ...], landed: Callable[[Folder], None] = lambda _: None
) -> tuple[Problem, ...]:
    """Put the files into their folders: those of all of them, or of none.

    What we did not write stays where it lies. A file of ours that somebody changed is renamed, to
    `quote.kept-1.html`, and said. A file of ours that is no longer made is deleted. `private/` is
    for its owner alone.

    Args:
        folders: what goes where.
        landed: is told of each folder whose files are in place.

    Returns:
        A warning for each file that was kept; or, where a folder is another customer's or
        another quote's, an error for each such folder, and then nothing was written.

    Raises:
        OSError: the machine is at fault (disk full, no permission, another run is writing). What
            stood in the folders is unchanged, unless a folder forbids a mere renaming in it.
    """
    with ExitStack() as stack:
        befores = [stack.enter_context(_held(folder)) for folder in folders]
        pairs = tuple(zip(folders, befores, strict=True))
        if refused := tuple(p for folder, before in pairs for p in _refused(folder, before)):
            return refused
        begun = [_laid_beside(folder, before) for folder, before in pairs]
        kept: list[Problem] = []
        for folder, manifest in zip(folders, begun, strict=True):
            kept.extend(_landed(folder, manifest))
            landed(folder)
        return tuple(kept)


def freeze(folder: Path, files: Files, still: Callable[[], bool]) -> bool:
    """Put a new folder into its place, whole or not at all; nothing in it is changed again.

    All is laid into a folder beside it, which then gets its name in one step. What a killed run
    left of such a folder is deleted first.

    Args:
        folder: that must not be there yet.
        files: all that is in it.
        still: asked while no other run can write there: whether it is still right to.

    Returns:
        Whether the folder is new; if not, nothing was written.

    Raises:
        OSError: the machine is at fault (disk full, no permission, another run is writing).
    """
    room, begun = folder.parent, _beside(folder)
    room.mkdir(parents=True, exist_ok=True)
    with _locked(room):
        for left in room.glob(f"{NEW}*"):
            rmtree(left)
        if os.path.lexists(folder) or not still():
            return False
        try:
            for name, data in files.items():
                _lay_frozen(begun / name, data)
            if (begun / PRIVATE).is_dir():
                (begun / PRIVATE).chmod(OWNER_ALONE)
            for inside in (begun, *(one for one in begun.rglob("*") if one.is_dir())):
                _to_disk(inside)
            begun.rename(folder)
        finally:
            rmtree(begun, ignore_errors=True)
        _to_disk(room)
    return True


def write_new(folder: Path, files: Files) -> None:
    """Write files that are not there yet into a folder, which is made where it is missing.

    Raises:
        OSError: the machine is at fault, or one of them stands there after all.
    """
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("xb") as file:
            file.write(data)


def put(path: Path, data: bytes) -> None:
    """Put one small file into its place, wholly the old one or wholly the new one."""
    path.parent.mkdir(parents=True, exist_ok=True)
    laid = path.with_name(f"{NEW}{path.name}")
    laid.write_bytes(data)
    laid.replace(path)


def remove(path: Path) -> None:
    """Delete one small file that is no longer needed, if it is there."""
    path.unlink(missing_ok=True)


def _lay_frozen(path: Path, data: bytes) -> None:
    """Write a file that is only to be read from then on, down to the disk itself."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("xb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())
    path.chmod(READ_ONLY)


@contextmanager
def _held(folder: Folder) -> Iterator[Manifest | None]:
    """Hold a folder against other runs and tell what is ours in it; leave nothing unfinished."""
    made = [path for path in (folder.path, *folder.path.parents) if not path.exists()]
    if folder.path.exists() and not folder.path.is_dir():
        raise NotADirectoryError(
            ENOTDIR, "a file stands where the folder must go", str(folder.path)
        )
    folder.path.mkdir(parents=True, exist_ok=True)
    try:
        with _locked(folder.path):
            before = read_manifest(folder.path)
            _sweep(folder.rooms(before))
            try:
                yield before
            finally:
                _sweep(folder.rooms(before))
    finally:
        for path in made:
            with suppress(OSError):  # it is not empty, so it stays
                path.rmdir()


@contextmanager
def _locked(folder: Path) -> Iterator[None]:
    """Lock a folder; the system lets go of it when the run ends, however it ends."""
    if fcntl is None:
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            message = "another run is writing to this folder, so try again"
            raise BlockingIOError(EAGAIN, message, str(folder)) from None
        except OSError:  # a disk that knows no locks, as some shared ones
            pass
        yield
    finally:
        os.close(handle)


def _sweep(rooms: tuple[Path, ...]) -> None:
    """Delete what a run left unfinished, and the folders of ours below the first that are empty."""
    for room in rooms:
        for path in room.glob(f"{NEW}*"):
            path.unlink()
    for room in rooms[:-1]:
        with suppress(OSError):  # it is not empty, or is not there
            room.rmdir()


def _refused(folder: Folder, before: Manifest | None) -> Iterator[Problem]:
    """Yield an error where the folder is another customer's or another quote's."""
    if before and before.of_another(folder.whose):
        ours = _called(folder.whose.quote, folder.whose.customer)
        theirs = _called(before.quote, before.customer)
        yield Problem(
            code="folder-of-another", source=folder.whose.place, path="quote",
            message=f"`{folder.path}` holds {theirs} ({before.job}), and this is {ours}",
            hint="give the job a number of its own; if it is one customer whose name is now "
            "written otherwise, move that folder away",
        )  # fmt: skip


def _called(quote: str, customer: str) -> str:
    return f"quote `{quote}` for {customer}" if customer else f"what `quotegen {quote}` writes"


def _laid_beside(folder: Folder, before: Manifest | None) -> Manifest:
    """Lay all new files beside their places; return what may be ours from now on, old and new."""
    after = manifest_of(folder.whose, folder.files)
    older = before.files if before else {}
    files = {
        name: tuple(dict.fromkeys((*older.get(name, ()), *after.files.get(name, ()))))
        for name in (*after.files, *older)
    }
    begun = replace(after, files=files, inputs="", silent=False)
    if any(name.startswith(f"{PRIVATE}/") for name in folder.files):
        (folder.path / PRIVATE).mkdir(exist_ok=True)
        (folder.path / PRIVATE).chmod(OWNER_ALONE)
    for name, data in folder.files.items():
        _lay(folder.path / name, data)
    _lay(folder.path / MANIFEST, after.to_json())
    _lay(folder.path / BEGUN, begun.to_json())
    return begun


def _lay(path: Path, data: bytes) -> None:
    """Write a file beside its place, down to the disk itself."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with _beside(path).open("xb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _beside(path: Path) -> Path:
    return path.with_name(f"{NEW}{path.name}")


def _landed(folder: Folder, begun: Manifest) -> Iterator[Problem]:
    """Move each new file to its place, and delete what is no longer made."""
    rooms = folder.rooms(begun)
    if not _is_ours(folder.path / MANIFEST, None):
        yield _kept(folder.path / MANIFEST)
    _beside(folder.path / BEGUN).replace(folder.path / MANIFEST)
    _to_disk(folder.path)
    for name, hashes in begun.files.items():
        path = folder.path / name
        if not _is_ours(path, hashes):
            yield _kept(path)
        if name in folder.files:
            _beside(path).replace(path)
        else:
            path.unlink(missing_ok=True)
    for room in rooms:
        _to_disk(room)
    _beside(folder.path / MANIFEST).replace(folder.path / MANIFEST)
    _to_disk(folder.path)


def _is_ours(path: Path, hashes: tuple[str, ...] | None) -> bool:
    """Whether a path is free, or holds what we may have left there; None: a manifest."""
    if not os.path.lexists(path):
        return True
    if path.is_symlink() or not path.is_file():
        return False
    if hashes is None:
        return read_manifest(path.parent) is not None
    return sha256(path.read_bytes()) in hashes


def _kept(path: Path) -> Problem:
    """Rename a file that is not, or no longer, ours, to a name that is free; return what to say."""
    number = 1
    while os.path.lexists(aside := path.with_name(f"{path.stem}.kept-{number}{path.suffix}")):
        number += 1
    path.rename(aside)
    return Problem(
        code="file-kept", source=Source(file=str(path)), severity=Severity.WARNING,
        message=f"this is not as quotegen last wrote it, so it was kept as `{aside.name}`",
        hint="take over what you need of it; do not send it by mistake",
    )  # fmt: skip


def _to_disk(folder: Path) -> None:
    """Have the system write the names in a folder to the disk, where it can."""
    with suppress(OSError):  # Windows opens no folder, and one that is gone has no names
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
