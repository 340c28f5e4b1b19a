"""A season in one command: all jobs are read and priced, then those without an error are printed.

A job is worked on by itself, as many at once as there are cores. What one hands to the next is
pickled, so that no more of a job than that stays in memory, however many there are.
"""

import copyreg
import pickle
from collections import Counter
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, ProcessPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass, replace
from multiprocessing import get_context
from pathlib import Path
from types import MappingProxyType
from typing import Any, TypeVar

from quotegen import pipeline
from quotegen.pricing.costs.outcome import Outcome, drift_of
from quotegen.problem import Problem, Source, has_error
from quotegen.publish.inputs import inputs_digest
from quotegen.publish.manifest import read_manifest
from quotegen.publish.pdf import CannotPrintError, engine_problem
from quotegen.publish.terminal.stages import Announce, Stages, silent
from quotegen.reading.files.job import JobFile
from quotegen.reading.yaml.typed_file import Typed, load

T = TypeVar("T")

_SHARED: list[pipeline.Shared] = []
"""What every job shares, once for each process that works on jobs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked of a season.

    Attributes:
        out: the folder that gets one folder for each quote number.
        strict: whether an error in one job keeps all from being written.
        fresh: whether what has not changed is made again.
        cores: how many jobs are worked on at once.
        stages: how the stages of each job are said.
    """

    out: Path
    strict: bool = False
    fresh: bool = False
    cores: int = 1
    stages: Stages = Stages.UNSAID


@dataclass(frozen=True, slots=True, kw_only=True)
class Figured:
    """One job on its way to be printed.

    Attributes:
        quote: its number; empty where the file cannot be read.
        place: where the number stands.
        unchanged: whether its package lies there, whole, and made of the same inputs.
        silent: whether it is unchanged and nothing was to be said of it.
        inputs: their hash.
        problems: what stages 1 to 4 say.
        handed_on: the pickled results; empty where there are none, or none are needed.
    """

    job: Path
    quote: str = ""
    place: Source
    unchanged: bool = False
    silent: bool = False
    inputs: str = ""
    problems: tuple[Problem, ...] = ()
    handed_on: bytes = b""


@dataclass(frozen=True, slots=True, kw_only=True)
class Landed:
    """A folder that was written, or left as it was, with the names of the files in it."""

    folder: Path
    names: tuple[str, ...] = ()
    unchanged: bool = False
    problems: tuple[Problem, ...] = ()


def looked_at(job: Path, asked: Asked) -> Figured:
    """Say which quote a file is, and whether its package lies there, made of the same."""
    typed = load(job, JobFile)
    if not isinstance(typed, Typed):
        return Figured(job=job, place=Source(file=str(job)))
    digest, number = inputs_digest(job), typed.value.quote
    before = read_manifest(asked.out / number) if not asked.fresh else None
    same = bool(before and before.inputs == digest and before.is_whole(asked.out / number))
    return Figured(
        job=job,
        quote=number,
        place=typed.places.of(("quote",)),
        unchanged=same,
        silent=bool(same and before and before.silent),
        inputs=digest,
    )


def figured(one: Figured, asked: Asked) -> Figured:
    """Run stages 1 to 4 on a job."""
    asked.stages.say_files(one.job)
    with asked.stages.said() as announce:
        priced = pipeline.figure(one.job, _SHARED[0], announce, to_package=True)
    needed = not (one.unchanged or has_error(priced.problems))
    handed_on = pickle.dumps(priced) if needed else b""
    return replace(one, problems=priced.problems, handed_on=handed_on)


def printed(one: Figured, outcomes: tuple[Outcome, ...], asked: Asked) -> Landed:
    """Run stages 5 and 6 on a job and write its folder."""
    from quotegen.publish.package import package  # noqa: PLC0415 - printing is slow to load
    from quotegen.publish.write import Folder, write  # noqa: PLC0415

    priced: pipeline.PricedJob = pickle.loads(one.handed_on)  # noqa: S301 - our own, of this run
    folder = asked.out / one.quote
    if priced.results is None or priced.owner is None:
        return Landed(folder=folder)
    with asked.stages.said() as announce:
        announce(f"5 explain and 6 publish {one.quote}")
        made = package(priced.results, priced.owner, drift_of(outcomes, priced.owner.job.costs))
    whose = replace(made.whose, inputs=one.inputs, silent=not one.problems)
    problems = write((Folder(path=folder, whose=whose, files=made.files),))
    names = () if has_error(problems) else tuple(sorted(made.files))
    return Landed(folder=folder, names=names, problems=problems)


def package_all(
    jobs: tuple[Path, ...],
    asked: Asked,
    shared: pipeline.Shared,
    announce: Announce = silent,
) -> Iterator[Landed | Problem]:
    """Package all jobs that have no error: yields every problem, and each folder as it lands.

    `announce` is told each time that a job is `priced`, and that one is `done`.
    Nothing is printed before every job is priced. Where two jobs have one number, neither is.

    Raises:
        CannotPrintError: there is something to print, and this machine lacks what prints.
    """
    looked = [looked_at(job, asked) for job in jobs]
    to_figure = [one for one in looked if not one.silent]
    with _crew(min(asked.cores, len(to_figure)), shared) as crew:
        priced = _in_order(crew, figured, [(one, asked) for one in to_figure])
        ready = list[Figured]()
        for one in looked:
            ready.append(one if one.silent else next(priced))
            announce("priced")
        problems = tuple(_said(ready))
        yield from problems
        if asked.strict and has_error(problems):
            return
        held = {
            number for number, times in Counter(one.quote for one in ready).items() if times > 1
        }
        sound = [one for one in ready if one.quote not in held and not has_error(one.problems)]
        for one in sound:
            if one.unchanged:
                yield Landed(folder=asked.out / one.quote, unchanged=True)
        to_print = [one for one in sound if not one.unchanged]
        for _ in range(len(ready) - len(to_print)):
            announce("done")
        if to_print and (missing := engine_problem()):
            raise CannotPrintError(missing)
        folders = dict.fromkeys(one.job.parent for one in to_print)
        learnt = {folder: pipeline.outcomes_in(folder, shared) for folder in folders}
        work = [(one, learnt[one.job.parent], asked) for one in to_print]
        for landed in _in_order(crew, printed, work):
            announce("done")
            yield landed
            yield from landed.problems


def _said(ready: list[Figured]) -> Iterator[Problem]:
    """Yield what is said of each job, and each job that has the number of one before it."""
    twice = tuple(pipeline.same_number([(one.quote, one.place) for one in ready if one.quote]))
    for one in ready:
        yield from (p for p in one.problems if not (twice and p.code == "number-beside"))
    yield from twice


@contextmanager
def _crew(hands: int, shared: pipeline.Shared) -> Iterator[Executor | None]:
    """Have processes ready to work on jobs; None where there is work for one alone, this one."""
    _begin(shared)
    if hands < 2:
        yield None
        return
    spawn = get_context("spawn")  # the one way that every system has
    with ProcessPoolExecutor(hands, spawn, _begin, (shared,)) as crew:
        yield crew


def _begin(shared: pipeline.Shared) -> None:
    _SHARED[:] = [shared]


def _in_order(
    crew: Executor | None, work: Callable[..., T], jobs: list[tuple[Any, ...]]
) -> Iterator[T]:
    """Yield what each job gives, in their order; all of them are under way meanwhile."""
    if crew is None:
        yield from (work(*job) for job in jobs)
    else:
        yield from crew.map(work, *zip(*jobs, strict=True)) if jobs else ()


def _frozen(mapping: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(mapping)


copyreg.pickle(MappingProxyType, lambda mapping: (_frozen, (dict(mapping),)))
