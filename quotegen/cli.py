"""The command line: arguments, printing, exit codes, and nothing else.

Each command imports what it needs when it runs, so that `quotegen --help` answers at once.
"""

import json
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn, TypeVar

import click

from quotegen import __version__
from quotegen.problem import Problem, Source, has_error

if TYPE_CHECKING:
    from quotegen.issuing import Frozen
    from quotegen.pipeline import Shared
    from quotegen.publish.write import Folder

T = TypeVar("T")

USES = ("pool deck", "patio", "walk", "drive", "apron", "pad")

FINE, INPUT_AT_FAULT, MACHINE_AT_FAULT = 0, 1, 3

JobFiles = click.argument(
    "jobs", nargs=-1, required=True, metavar="JOB...", type=click.Path(path_type=Path)
)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__)
def commands() -> None:
    """Work out a flatwork job and build the paper that explains its price."""


@commands.command()
@JobFiles
def check(jobs: tuple[Path, ...]) -> None:
    """Read, measure and price each JOB, and say all that is wrong with it."""
    from quotegen import pipeline
    from quotegen.publish.terminal.tables import covered_text

    shared = _read_shared()
    problems: list[Problem] = []
    for job in jobs:
        figured = pipeline.figure(job, shared)
        problems.extend(figured.problems)
        if figured.results is not None:
            click.echo(f"{job}: no errors")
            click.echo(covered_text(figured.results), nl=False)
    _exit_with(tuple(problems))


@commands.command()
@JobFiles
@click.option("--json", "as_json", is_flag=True, help="Print the figures as figures.json has them.")
@click.option("--working", is_flag=True, help="Print how each amount is worked out, step by step.")
def figure(jobs: tuple[Path, ...], *, as_json: bool, working: bool) -> None:
    """Print the numbers of each JOB: sizes, lines, finishes, payments, worked changes."""
    from quotegen import pipeline
    from quotegen.publish.data.figures import figures, to_json
    from quotegen.publish.terminal.tables import print_figures
    from quotegen.publish.terminal.working import working_text

    if as_json and working:
        message = "choose --json or --working"
        raise click.UsageError(message)
    shared = _read_shared()
    figured = [pipeline.figure(job, shared) for job in jobs]
    problems = tuple(problem for one in figured for problem in one.problems)
    if has_error(problems):
        _exit_with(problems)
    done = [(one.results, one.owner) for one in figured if one.results and one.owner]
    if as_json:
        shown = [figures(*one) for one in done]
        click.echo(to_json(shown[0] if len(shown) == 1 else shown), nl=False)
    elif working:
        for results, _ in done:
            click.echo(working_text(results), nl=False)
    else:
        for results, _ in done:
            print_figures(results)
    _exit_with(problems)


@commands.command()
@JobFiles
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    default=Path("out"),
    show_default=True,
    help="The folder that gets one folder for each quote number.",
)
@click.option("--strict", is_flag=True, help="Write nothing at all if any JOB has an error.")
@click.option("--fresh", is_flag=True, help="Build what has not changed too.")
@click.option("--cores", type=click.IntRange(min=1), default=os.cpu_count, show_default="all",
              help="How many jobs are worked on at once.")  # fmt: skip
def package(jobs: tuple[Path, ...], out: Path, cores: int, *, strict: bool, fresh: bool) -> None:
    """Build the package of each JOB that has no error.

    All are read and priced before the first is built. A package that lies there is left as it
    is if nothing has changed that it was made of.
    """
    from quotegen import season
    from quotegen.publish.pdf import engine_problem
    from quotegen.publish.terminal.tables import progress_of

    if missing := engine_problem():
        _exit_for_machine(missing)
    asked, said = season.Asked(out=out, strict=strict, fresh=fresh, cores=cores), list[Problem]()
    with progress_of(len(jobs)) as announce:
        for one in season.package_all(jobs, asked, _read_shared(), announce):
            if isinstance(one, Problem):
                said.append(one)
            else:
                _list(one.folder, one.names, unchanged=one.unchanged)
    _exit_with(tuple(said))


JobArgument = click.argument("job", type=click.Path(path_type=Path))
OnDay = click.option("--on", help="The day of it, such as 2026-06-22.  [default: today]")
_ISSUE, _ACCEPT, _VERIFY = (
    f"\b\nExamples:\n  quotegen {first}\n  quotegen {second}"
    for first, second in (
        ("issue my_jobs/jobs/first.yaml", "issue my_jobs/jobs/first.yaml --on 2026-06-15"),
        ("accept my_jobs/jobs/first.yaml --revision 1",
         "accept my_jobs/jobs/first.yaml --revision 2 --finish exposed --extra drain"),
        ("verify my_jobs", "verify"),
    )
)  # fmt: skip


@commands.command(epilog=_ISSUE)
@JobArgument
@OnDay
def issue(job: Path, on: str | None) -> None:
    """Freeze what a JOB calls for, as it is sent: the files without the mark of a draft.

    They go into issued/QUOTE/ beside the company's file, and are never written again. Before
    acceptance that is a revision of the quote; after it, what follows: the final measurement,
    change orders, the care card.
    """
    from quotegen import issuing
    from quotegen.publish.pdf import engine_problem
    from quotegen.publish.terminal.tables import progress

    day = _day(on)
    if missing := engine_problem():
        _exit_for_machine(missing)
    with progress() as announce:
        done = issuing.issue(job, _read_shared(), day, announce)
    _exit_frozen(done)


@commands.command(epilog=_ACCEPT)
@JobArgument
@click.option("--revision", required=True, type=click.IntRange(min=1),
              help="The issued revision that they said yes to.")  # fmt: skip
@click.option("--finish", help="The finish that they chose, if not the one quoted.")
@click.option("--extra", "extras", multiple=True, help="An extra that they took; may be repeated.")
@OnDay
def accept(
    job: Path, revision: int, finish: str | None, extras: tuple[str, ...], on: str | None
) -> None:
    """Put down that the customer accepted an issued revision of a JOB.

    From then on the price, the measuring and the changes start from the files that were frozen
    with it, whatever the rate book says later. The job file is not touched.
    """
    from quotegen import issuing
    from quotegen.reading.files.after_signing import Accepted

    yes = Accepted.model_construct(
        date=_day(on), revision=revision, finish=finish, extras=extras, total=None
    )
    _exit_frozen(issuing.accept(job, _read_shared(), yes))


@commands.command(epilog=_VERIFY)
@click.argument("folder", default=Path(), type=click.Path(path_type=Path, exists=True,
                                                          file_okay=False))  # fmt: skip
def verify(folder: Path) -> None:
    """Prove that all that was issued is as it was; FOLDER holds the company's file.

    Names each file that was changed, is missing or was added.
    """
    from quotegen import issuing

    quotes, problems = issuing.verify(folder)
    faulty = {problem.source.file for problem in problems}
    for room, entries in quotes.items():
        whole = not any(Path(file).is_relative_to(room) for file in faulty)
        click.echo(f"{room}: {', '.join(entries) or 'nothing'}{': whole' if whole else ''}")
    if not quotes:
        click.echo(f"{folder}: nothing was issued here")
    _exit_with(problems)


@commands.command()
@JobArgument
@click.option("--out", type=click.Path(path_type=Path, file_okay=False), default=Path("out"),
              show_default=True, help="The folder that gets specimen/.")  # fmt: skip
def specimen(job: Path, out: Path) -> None:
    """Show how papers look in each theme, with your accent and logo, on one page from a JOB."""
    from quotegen import pipeline
    from quotegen.publish.manifest import Whose
    from quotegen.publish.package import specimens
    from quotegen.publish.write import Folder

    figured = pipeline.figure(job, _read_shared())
    if figured.results is None or has_error(figured.problems):
        _exit_with(figured.problems)
    whose = Whose(quote="specimen", place=figured.results.job.source("quote"))
    files = specimens(figured.results)
    written = _write(Folder(path=out / "specimen", whose=whose, files=files))
    _exit_with((*figured.problems, *written))


@commands.command()
@click.option("--size", required=True, help="Two sides as paced, such as '24 ft x 16 ft'.")
@click.option("--finish", required=True, help="A finish of the rate book.")
@click.option("--use", default="patio", show_default=True, type=click.Choice(USES),
              help="What the slab is for.")  # fmt: skip
@click.option("--date", "on", help="The day of the visit; it picks the rate book.")
@click.option("--distance", help="The way to the site, such as '14 miles'.")
@click.option("--drive-time", help="The same in time, such as '35 min'.")
@click.option("--company", "folder", default=Path(), type=click.Path(path_type=Path),
              help="The folder with the company's files.  [default: this one]")  # fmt: skip
@click.option("--out", type=click.Path(path_type=Path, file_okay=False), default=Path("out"),
              show_default=True, help="The folder that gets ballpark/ballpark.txt.")  # fmt: skip
def ballpark(folder: Path, out: Path, **typed: str | None) -> None:
    """Print and write a ballpark: what a paced size would cost, from low to high."""
    from quotegen import pipeline
    from quotegen.publish.manifest import Whose
    from quotegen.publish.write import Folder
    from quotegen.reading.fields.text_fields import (
        parse_date,
        parse_distance,
        parse_drive_time,
        parse_size,
    )
    from quotegen.reading.files.job import Use
    from quotegen.reading.paced_job import Asked

    asked = Asked(
        folder=folder,
        size=_parsed("--size", parse_size, typed["size"] or ""),
        finish=typed["finish"] or "",
        use=Use(typed["use"] or ""),
        on=_if_typed("--date", parse_date, typed["on"]),
        distance=_if_typed("--distance", parse_distance, typed["distance"]),
        drive_time=_if_typed("--drive-time", parse_drive_time, typed["drive_time"]),
    )
    text = pipeline.ballpark(asked, _read_shared())
    if isinstance(text, tuple):
        _exit_with(text)
    click.echo(text, nl=False)
    path = out / "ballpark"
    whose = Whose(quote="ballpark", place=Source(file=str(path)))
    _exit_with(_write(Folder(path=path, whose=whose, files={"ballpark.txt": text.encode()})))


@commands.command()
@click.argument(
    "kind", type=click.Choice(["job", "company", "rate-book", "past-jobs"]), default="job"
)
def schema(kind: str) -> None:
    """Print the JSON Schema of a file, for an editor that completes and checks it."""
    from quotegen.reading.schema import schema_of

    click.echo(json.dumps(schema_of(kind), indent=2))


def main() -> None:
    """Run the command line; a person never sees a traceback."""
    with _no_traceback():
        commands(prog_name="quotegen")


def _read_shared() -> "Shared":
    from quotegen import pipeline

    shared = pipeline.read_shared()
    if isinstance(shared, tuple):
        _exit_with(shared)
    return shared


def _parsed(option: str, parser: Callable[[str], T], text: str) -> T:
    """Parse the text of an option; one that cannot be parsed is wrong usage, exit code 2."""
    try:
        return parser(text)
    except ValueError as error:  # what the parsers of the job file raise
        message = f"{option}: {getattr(error, 'message_template', error)}"
        raise click.UsageError(message) from None


def _if_typed(option: str, parser: Callable[[str], T], text: str | None) -> T | None:
    return _parsed(option, parser, text) if text else None


def _write(*folders: "Folder") -> tuple[Problem, ...]:
    """Write folders, print the name of each file in them, and return what is to be said."""
    from quotegen.publish.write import write

    return write(folders, lambda folder: _list(folder.path, tuple(sorted(folder.files))))


def _list(folder: Path, names: tuple[str, ...], *, unchanged: bool = False) -> None:
    if names or unchanged:
        click.echo(f"{folder}/{' nothing has changed' if unchanged else ''}")
    for name in names:
        click.echo(f"  {name}")


def _day(on: str | None) -> date:
    """Return the day that was typed, or today: the one place where a clock is asked."""
    from quotegen.reading.fields.text_fields import parse_date

    return _if_typed("--on", parse_date, on) or datetime.now().astimezone().date()


def _exit_frozen(done: "Frozen") -> NoReturn:
    """Name what was frozen, if anything, and exit with what is to be said."""
    if done.folder is not None and done.facts is not None:
        facts = done.facts
        shown = os.path.relpath(done.folder.resolve())
        click.echo(f"{shown}: {facts.kind.value}, revision {facts.revision}, ${facts.total:,}")
    _exit_with(done.problems)


def _exit_with(problems: tuple[Problem, ...]) -> NoReturn:
    """Print every problem and exit: with 1 if one of them is an error."""
    for problem in problems:
        click.echo(str(problem), err=True)
    sys.exit(INPUT_AT_FAULT if has_error(problems) else FINE)


def _exit_for_machine(problem: Problem) -> NoReturn:
    click.echo(f"{problem.message}; {problem.hint}", err=True)
    sys.exit(MACHINE_AT_FAULT)


@contextmanager
def _no_traceback() -> Iterator[None]:
    try:
        yield
    except OSError as error:
        reason = error.strerror or str(error)
        click.echo(
            f"this machine is at fault: {reason}: {error.filename or ''}".rstrip(": "), err=True
        )
        sys.exit(MACHINE_AT_FAULT)
    except Exception as error:  # noqa: BLE001 - the last resort: a bug of ours, said plainly
        click.echo(
            f"quotegen has a fault of its own ({type(error).__name__}: {error}); what is "
            "not listed above was not written. Please report it with the job file.",
            err=True,
        )
        sys.exit(MACHINE_AT_FAULT)
