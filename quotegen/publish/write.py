"""The one writer: a whole folder beside the target, then swapped in; or nothing at all."""

import os
import shutil
import tempfile
from pathlib import Path

from quotegen.publish.artifacts import Artifacts


def write(target: Path, artifacts: Artifacts) -> None:
    """Put the artifacts in the target folder, replacing what stood there.

    Everything goes to a temporary folder beside the target first. The old folder is moved
    aside, the new one takes its place, and only then is the old one deleted; if the swap
    fails the old one is put back.

    Raises:
        OSError: the machine is at fault (disk full, no permission); the target is unchanged.
    """
    target.parent.mkdir(parents=True, exist_ok=True)
    fresh = Path(tempfile.mkdtemp(prefix=f".{target.name}-", dir=target.parent))
    try:
        for relative, data in artifacts.items():
            path = fresh / relative
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        fresh.chmod(0o755)
        _swap(fresh, target)
    except BaseException:
        shutil.rmtree(fresh, ignore_errors=True)
        raise


def _swap(fresh: Path, target: Path) -> None:
    if not target.exists():
        os.replace(fresh, target)
        return
    old = Path(tempfile.mkdtemp(prefix=f".{target.name}-old-", dir=target.parent))
    os.replace(target, old / target.name)
    try:
        os.replace(fresh, target)
    except OSError:
        os.replace(old / target.name, target)
        raise
    finally:
        shutil.rmtree(old, ignore_errors=True)
