"""Shares slow results: one worker works each out, the others of the same run read it."""

import copyreg
import fcntl
import os
import pickle
import shutil
import time
from collections.abc import Callable
from pathlib import Path
from tempfile import gettempdir
from types import MappingProxyType
from typing import Any, TypeVar

T = TypeVar("T")

RUN = os.environ.setdefault("QUOTEGEN_TEST_RUN", str(os.getpid()))  # workers inherit it
FOLDER = Path(gettempdir()) / f"quotegen-tests-{RUN}"
WAIT_S = 0.1


def _frozen(mapping: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(mapping)


# Records hold read-only mappings, which pickle does not know.
copyreg.pickle(MappingProxyType, lambda mapping: (_frozen, (dict(mapping),)))


def once_per_run(name: str, work_out: Callable[[], T], *others: tuple[str, Callable[[], T]]) -> T:
    """The result of that name: left by a worker of this run, or else worked out here.

    Args:
        name: a file name that nothing else in the run uses.
        work_out: makes the result.
        others: what this worker may work out meanwhile if another one is busy with `name`.
    """
    FOLDER.mkdir(exist_ok=True)
    kept = FOLDER / f"{name}.pickle"
    while not kept.exists():
        if not any(_left_behind(*one) for one in ((name, work_out), *others)):
            time.sleep(WAIT_S)
    result: T = pickle.loads(kept.read_bytes())
    return result


def clear() -> None:
    """Delete all that this run has left."""
    shutil.rmtree(FOLDER, ignore_errors=True)


def _left_behind(name: str, work_out: Callable[[], object]) -> bool:
    """Work out a result unless it is there or another worker is busy with it; true if done."""
    kept = FOLDER / f"{name}.pickle"
    with (FOLDER / f"{name}.lock").open("w") as lock:
        try:
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        if kept.exists():
            return False
        begun = kept.with_suffix(".begun")
        begun.write_bytes(pickle.dumps(work_out()))
        begun.rename(kept)
        return True
