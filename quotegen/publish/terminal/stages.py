"""What is said on the error stream while a command works: its stages, their seconds, how far."""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from enum import Enum, auto
from pathlib import Path
from typing import TypeAlias

from quotegen.reading.ledger.inputs import input_files

Announce: TypeAlias = Callable[[str], None]
"""Is told what begins, or is done."""


def silent(_what: str) -> None:
    """Tell nobody."""


class Stages(Enum):
    """How the stages of a job are said: not at all, on a moving line, each on a line of its own."""

    UNSAID = auto()
    MOVING = auto()
    LINES = auto()
    SECONDS = auto()

    @classmethod
    def of_slow_work(cls, *, quiet: bool, verbose: bool) -> "Stages":
        """Return how they are said where one waits for them: a terminal moves, a pipe has lines."""
        if quiet or verbose:
            return cls.UNSAID if quiet else cls.SECONDS
        return cls.MOVING if sys.stderr.isatty() else cls.LINES

    def say_files(self, job: Path) -> None:
        """Say which files a job is made of, where all is said."""
        if self is Stages.SECONDS:
            _line(f"{job} is made of {', '.join(map(str, input_files(job)))}")

    @contextmanager
    def said(self) -> Iterator[Announce]:
        """Say each stage as it begins; one with its seconds as it ends."""
        if self is Stages.MOVING:
            from rich.console import Console  # noqa: PLC0415 - slow to load, and seldom needed

            with Console(stderr=True).status("building") as status:
                yield status.update
        elif self is Stages.SECONDS:
            timed = _Timed()
            yield timed.begin
            timed.end()
        else:
            yield _line if self is Stages.LINES else silent


class _Timed:
    """The stage that runs, and since when."""

    def __init__(self) -> None:
        self._stage, self._since = "", 0.0

    def begin(self, stage: str) -> None:
        self.end()
        self._stage, self._since = stage, time.monotonic()

    def end(self) -> None:
        if self._stage:
            _line(f"{self._stage}: {time.monotonic() - self._since:.2f} s")


def _line(text: str) -> None:
    sys.stderr.write(f"{text}\n")
    sys.stderr.flush()


@contextmanager
def progress_of(jobs: int, stages: Stages) -> Iterator[Announce]:
    """Show in a terminal how many jobs are priced, how many done, and the time left."""
    if stages is not Stages.MOVING:
        yield silent
        return
    from rich.console import Console  # noqa: PLC0415 - slow to load, and seldom needed
    from rich.progress import (  # noqa: PLC0415
        BarColumn,
        MofNCompleteColumn,
        Progress,
        TextColumn,
        TimeRemainingColumn,
    )

    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn(),
               TimeRemainingColumn())  # fmt: skip
    with Progress(*columns, console=Console(stderr=True), transient=True) as shown:
        tasks = {what: shown.add_task(what, total=jobs) for what in ("priced", "done")}
        yield lambda what: shown.advance(tasks[what])
