"""The commands about what was sent and said yes to: issue, accept, verify."""

import os
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from quotegen.arguments import JobArgument, OnDay, day, examples, how_much, read_shared
from quotegen.leaving import exit_for_machine, exit_with

if TYPE_CHECKING:
    from quotegen.issuing import Frozen


@click.command(
    epilog=examples(
        "issue my_jobs/jobs/first.yaml", "issue my_jobs/jobs/first.yaml --on 2026-06-15"
    )
)
@JobArgument
@OnDay
@how_much
def issue(job: Path, on: str | None, *, quiet: bool, verbose: bool) -> None:
    """Freeze what a JOB calls for, as it is sent: the files without the mark of a draft.

    They go into issued/QUOTE/ beside the company's file, and are never written again. Before
    acceptance that is a revision of the quote; after it, what follows: the final measurement,
    change orders, the care card.
    """
    from quotegen import issuing
    from quotegen.publish.pdf import engine_problem
    from quotegen.publish.terminal.stages import Stages

    on_day = day(on)
    if missing := engine_problem():
        exit_for_machine(missing)
    stages = Stages.of_slow_work(quiet=quiet, verbose=verbose)
    stages.say_files(job)
    with stages.said() as announce:
        done = issuing.issue(job, read_shared(), on_day, announce)
    _exit_frozen(done, quiet=quiet)


@click.command(
    epilog=examples(
        "accept my_jobs/jobs/first.yaml --revision 1",
        "accept my_jobs/jobs/first.yaml --revision 2 --finish exposed --extra drain",
    )
)
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
        date=day(on), revision=revision, finish=finish, extras=extras, total=None
    )
    _exit_frozen(issuing.accept(job, read_shared(), yes))


@click.command(epilog=examples("verify my_jobs", "verify"))
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
    exit_with(problems)


def _exit_frozen(done: "Frozen", *, quiet: bool = False) -> NoReturn:
    """Name what was frozen, if anything, and exit with what is to be said."""
    if done.folder is not None and done.facts is not None and not quiet:
        facts = done.facts
        shown = os.path.relpath(done.folder.resolve())
        click.echo(f"{shown}: {facts.kind.value}, revision {facts.revision}, ${facts.total:,}")
    exit_with(done.problems)
