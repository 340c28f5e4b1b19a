"""The only writer: a whole folder beside the target, then swapped in; or nothing at all."""

import shutil
import tempfile
from collections.abc import Mapping
from errno import ENOTDIR
from pathlib import Path
from typing import TypeAlias

Files: TypeAlias = Mapping[str, bytes]
"""Relative path, with forward slashes, to the bytes of the file."""


def write(target: Path, files: Files) -> None:
    """Put the files in the target folder, replacing what stood there.

    Everything goes to a temporary folder beside the target first. The old folder is moved
    aside, the new one takes its place, and only then is the old one deleted; if the swap
    fails the old one is put back.

    Raises:
        OSError: the machine is at fault (disk full, no permission); the target is unchanged.
    """
    target.parent.mkdir(parents=True, exist_ok=True)
    fresh = Path(tempfile.mkdtemp(prefix=f".{target.name}-", dir=target.parent))
    try:
        for relative, data in files.items():
            path = fresh / relative
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        fresh.chmod(0o755)
        _swap(fresh, target)
    except BaseException:
        shutil.rmtree(fresh, ignore_errors=True)
        raise


def _swap(fresh: Path, target: Path) -> None:
    if target.exists() and not target.is_dir():
        raise NotADirectoryError(ENOTDIR, "a file stands where the folder must go", str(target))
    if not target.exists():
        fresh.replace(target)
        return
    aside = Path(tempfile.mkdtemp(prefix=f".{target.name}-old-", dir=target.parent))
    old = aside / target.name
    try:
        target.replace(old)
        fresh.replace(target)
    except BaseException:
        if old.exists():
            old.replace(target)  # if even this fails, the old folder stays where it is
        aside.rmdir()
        raise
    shutil.rmtree(aside, ignore_errors=True)
