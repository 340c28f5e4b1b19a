"""Kills runs that write one folder over and over, and prints what they left: run as a module.

One process forks the runs, since a fresh one for each would take a minute.
"""

import json
import os
import random
import signal
import sys
import time
from dataclasses import asdict, dataclass
from pathlib import Path

from quotegen.problem import Source
from quotegen.publish.manifest import MANIFEST, Whose
from quotegen.publish.write import NEW, Folder, write

KILLS, SEED = 40, 20260615
LONGEST_S = 0.05
COMMON = [f"customer/sheet-{number}.html" for number in range(8)]
OLDER = dict.fromkeys((*COMMON, "customer/changes.pdf", "private/costs.html"), b"old" * 9000)
NEWER = dict.fromkeys((*COMMON, "private/costs.html", "private/weather.html"), b"new" * 9000)
STRANGE = {"signed.pdf": b"signed", "customer/photo.jpg": b"photo"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Killed:
    """How many runs were killed, what was found to be wrong, and the kinds of remains."""

    kills: int
    wrong: list[str]
    remains: list[str]


def killed_runs(target: Path, kills: int = KILLS, most_s: float = 600) -> Killed:
    """Kill the runs one by one, until all are or the time is up."""
    chance, wrong, remains, done = random.Random(SEED), list[str](), set[str](), 0
    ends = time.monotonic() + most_s
    _write(target, OLDER)
    for name, data in STRANGE.items():
        (target / name).write_bytes(data)
    while done < kills and time.monotonic() < ends:
        done += 1
        _kill_one(target, chance.uniform(0, LONGEST_S))
        left = _files(target)
        remains |= {_kind(left)}
        wrong += [name for name, data in left.items() if not _whole(name, data)]
        wrong += [f"{name} is gone" for name in (*COMMON, *STRANGE) if name not in left]
        wrong += [problem.message for problem in _write(target, NEWER)]
        after = _files(target)
        after.pop(MANIFEST)
        wrong += [] if after == {**NEWER, **STRANGE} else [f"after all: {sorted(after)}"]
    return Killed(kills=done, wrong=wrong, remains=sorted(remains))


def _write(target: Path, files: dict[str, bytes]):
    whose = Whose(quote="T-1", customer="Rosa Vandermeer", place=Source(file="job.yaml"))
    return write((Folder(path=target, whose=whose, files=files),))


def _kill_one(target: Path, after_s: float) -> None:
    child = os.fork()
    if not child:
        while True:
            _write(target, OLDER)
            _write(target, NEWER)
    time.sleep(after_s)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


def _files(target: Path) -> dict[str, bytes]:
    return {
        path.relative_to(target).as_posix(): path.read_bytes()
        for path in target.rglob("*")
        if path.is_file()
    }


def _whole(name: str, data: bytes) -> bool:
    """Whether a file in its place is wholly the older or wholly the newer one."""
    if name == MANIFEST:
        return bool(json.loads(data))
    return Path(name).name.startswith(NEW) or data in {
        files[name] for files in (OLDER, NEWER, STRANGE) if name in files
    }


def _kind(left: dict[str, bytes]) -> str:
    """Where a run was killed, by what it left."""
    texts = {left.get(name) for name in COMMON}
    beside = any(Path(name).name.startswith(NEW) for name in left)
    return "amid the renames" if len(texts) > 1 else "while laying" if beside else "between runs"


if __name__ == "__main__":
    print(json.dumps(asdict(killed_runs(Path(sys.argv[1])))))
