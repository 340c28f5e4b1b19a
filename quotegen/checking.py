"""What `check` says of anything that it is handed: a job, a company's file, a folder."""

from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

from quotegen.explain.results import Results
from quotegen.pipeline import Shared, figure
from quotegen.problem import Problem, has_error
from quotegen.publish.terminal.stages import Stages
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.past_jobs import PastJobs
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.kinds import kind_of, text_at
from quotegen.reading.read import read_company
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.typed_file import load
from quotegen.reading.yaml.unreadable import LARGEST_FILE_BYTES

STDIN = Path("-")
"""What is typed for standard input."""
_NOT_OURS = frozenset({"content", "issued", "out"})
"""Folders of pages, of frozen files and of packages, in which nothing is to be mended."""


def check_all(
    paths: tuple[Path, ...], shared: Shared, stdin: BinaryIO, stages: Stages = Stages.UNSAID
) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """Check each path, and everything in a folder.

    Args:
        paths: jobs, companies' files, folders, or `-`.
        shared: what every job shares.
        stdin: what is read for `-`; the company's files then lie in this folder.
        stages: how the stages of each job are said.

    Returns:
        What is said of the files without an error, and each problem once.
    """
    typed = stdin.read(LARGEST_FILE_BYTES + 1) if STDIN in paths else None
    lines: list[str] = []
    problems: dict[str, Problem] = {}
    for path in paths:
        if path.is_dir() and not (inside := files_in(path)):
            problems[str(path)] = _empty_folder(path)
        for file in inside if path.is_dir() else (path,):
            line, found = _checked(file, shared, typed if file == STDIN else None, stages)
            if not has_error(found):
                lines.append(line)
            problems |= {str(problem): problem for problem in found}
    return tuple(lines), tuple(problems.values())


def files_in(folder: Path) -> tuple[Path, ...]:
    """Return each file of a company and each job in a folder, but what was issued, and pages."""
    found = sorted(folder.rglob("*.yaml"), key=lambda path: (len(path.parts), path))
    return tuple(
        path
        for path in found
        if not _NOT_OURS.intersection(path.relative_to(folder).parts)
        and kind_of(text_at(path)) is not None
    )


def _checked(
    path: Path, shared: Shared, typed: bytes | None, stages: Stages
) -> tuple[str, tuple[Problem, ...]]:
    """Return what is said of a file without an error, and what is wrong with it."""
    try:
        text = text_at(path) if typed is None else typed
    except OSError:  # it is said by whoever reads it next
        text = b""
    said, kind = f"{path}: no errors\n", kind_of(text)
    if kind is JobFile or kind is None:
        stages.say_files(path)
        with stages.said() as announce:
            figured = figure(path, shared, announce, text=typed)
        covered = "" if figured.results is None else _covered(figured.results)
        return said + covered, figured.problems
    return said, tuple(_of_company(path, kind, shared, typed))


def _covered(results: Results) -> str:
    """Say in full what the price of each finish pays for; nothing where it is the finish alone."""
    book = results.job.rate_book
    used = {
        *(results.job.finish_of(p, f.id)[0] for p in results.job.placements for f in
          results.quote.finishes),
        *(finish for p in results.job.placements for finish in p.alternates),
    }  # fmt: skip
    return "".join(
        f"  {finish_id} pays for: {', '.join(book.covered_by(finish))}\n"
        for finish_id, finish in book.finishes.items()
        if finish_id in used and finish.covers
    )


def _of_company(
    path: Path, kind: type[object], shared: Shared, typed: bytes | None
) -> Iterator[Problem]:
    """Yield what is wrong with a company's file, and what the others beside it say to it."""
    read = (
        load(path, Company, typed)
        if kind is Company
        else load(path, RateBookFile, typed)
        if kind is RateBookFile
        else load(path, PastJobs, typed)
    )
    if isinstance(read, tuple):
        yield from read
        return
    beside = read_company(path.parent / "a job", None, frozenset(shared.content.scope), given=read)
    yield from (problem for problem in beside.problems if problem.code != "no-company-file")


def _empty_folder(folder: Path) -> Problem:
    said = "there is no job and no file of a company in this folder or one below it"
    hint = "name another folder, or type `quotegen new` with this one"
    return Places(str(folder)).fault((), "nothing-here", said, hint)
