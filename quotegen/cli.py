"""The command line: its commands, and nothing else.

Each command imports what it needs when it runs, so that `quotegen --help` answers at once.
"""

import json
import os
import re
import sys
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from quotegen import __version__
from quotegen.arguments import JobArgument, day, examples, how_much, read_shared
from quotegen.leaving import FINE, INPUT_AT_FAULT, exit_for_machine, exit_with, no_traceback
from quotegen.ledger_commands import accept, issue, verify
from quotegen.problem import Problem, Source, has_error

if TYPE_CHECKING:
    from quotegen.publish.write import Folder
    from quotegen.starting.questions import Answers

USES = ("pool deck", "patio", "walk", "drive", "apron", "pad")

JobFiles = click.argument(
    "jobs", nargs=-1, required=True, metavar="JOB...", type=click.Path(path_type=Path)
)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__)
def commands() -> None:
    """Work out a flatwork job and build the paper that explains its price."""


@commands.command(epilog=examples("new my_jobs", "new other_jobs --example itemized"))
@click.argument("folder", type=click.Path(path_type=Path, file_okay=False))
@click.option("--yes", is_flag=True, help="Ask no more: take what is offered, and stand-ins.")
@click.option("--example", type=click.Choice(["all_in", "itemized"]),
              help="Ask nothing: copy a made-up company with its jobs.")  # fmt: skip
def new(folder: Path, *, yes: bool, example: str | None) -> None:
    """Start a company in FOLDER: a few questions, and its files are written.

    They are company.yaml, rate-book.yaml, past-jobs.yaml and jobs/first.yaml, with comments in
    them. Ctrl-C leaves; the answers are kept in FOLDER, and the same command goes on from there.
    """
    from quotegen.starting import files
    from quotegen.starting.answers import forget

    if problems := files.in_the_way(folder):
        exit_with(problems)
    on = day(None)
    written = (
        files.example_files(example)
        if example
        else files.started_files(_answers(folder, on, ask=not yes), on)
    )
    if problems := files.start(folder, written):
        exit_with(problems)
    forget(folder)
    for name in sorted(written):
        click.echo(f"  {folder / name}")
    job = next(folder / name for name in sorted(written) if name.startswith("jobs/"))
    click.echo(f"Now: quotegen check {job}\n     quotegen preview {job}")
    exit_with(())


def _answers(folder: Path, on: date, *, ask: bool) -> "Answers":
    """Return an answer to each question; left before the end, say where they are kept."""
    from quotegen.starting.asking import all_answers

    def typed(asked: str, usual: str) -> str:
        shown = bool(usual)
        return str(click.prompt(asked, default=usual, show_default=shown, prompt_suffix=" "))

    try:
        return all_answers(folder, on, typed if ask else None, click.echo)
    except click.Abort:
        click.echo(f"\nLeft. The answers are kept in {folder}; type the same to go on.")
        sys.exit(INPUT_AT_FAULT)


@commands.command(epilog=examples("check my_jobs/jobs/first.yaml", "check my_jobs"))
@click.argument("files", nargs=-1, required=True, metavar="FILE...",
                type=click.Path(path_type=Path, allow_dash=True))  # fmt: skip
@how_much
def check(files: tuple[Path, ...], *, quiet: bool, verbose: bool) -> None:
    """Say all that is wrong with each FILE: a job, a company's file, a folder, or - to type one.

    A job is read, measured and priced. What a file is, its keys tell.
    """
    from quotegen.checking import check_all
    from quotegen.publish.terminal.stages import Stages

    stages = Stages.SECONDS if verbose else Stages.UNSAID
    lines, problems = check_all(files, read_shared(), sys.stdin.buffer, stages)
    click.echo("" if quiet else "".join(lines), nl=False)
    exit_with(problems)


@commands.command(
    epilog=examples("figure my_jobs/jobs/first.yaml", "figure my_jobs/jobs/first.yaml --working")
)
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
    shared = read_shared()
    figured = [pipeline.figure(job, shared) for job in jobs]
    problems = tuple(problem for one in figured for problem in one.problems)
    if has_error(problems):
        exit_with(problems)
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
    exit_with(problems)


@commands.command(
    epilog=examples(
        "package my_jobs/jobs/first.yaml", "package my_jobs/jobs/first.yaml --out my_quotes"
    )
)
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
@how_much
def package(
    jobs: tuple[Path, ...], out: Path, cores: int, *,
    strict: bool, fresh: bool, quiet: bool, verbose: bool,
) -> None:  # fmt: skip
    """Build the package of each JOB that has no error.

    All are read and priced before the first is built. A package that lies there is left as it
    is if nothing has changed that it was made of. Where the error stream is no terminal, it gets
    a line for each stage.
    """
    from quotegen import season
    from quotegen.publish.pdf import CannotPrintError
    from quotegen.publish.terminal.stages import Stages, progress_of

    stages, said = Stages.of_slow_work(quiet=quiet, verbose=verbose), list[Problem]()
    of_each = Stages.UNSAID if stages is Stages.MOVING else stages  # one bar for all jobs
    asked = season.Asked(out=out, strict=strict, fresh=fresh, cores=cores, stages=of_each)
    try:
        with progress_of(len(jobs), stages) as announce:
            for one in season.package_all(jobs, asked, read_shared(), announce):
                if isinstance(one, Problem):
                    said.append(one)
                elif not quiet:
                    _list(one.folder, one.names, unchanged=one.unchanged)
    except CannotPrintError as error:
        exit_for_machine(error.problem)
    exit_with(tuple(said))


CompanyFolder = click.option(
    "--company", "folder", default=Path(),
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="The folder with the company's files.  [default: this one]",
)  # fmt: skip


@commands.command(epilog=examples(
    "preview my_jobs/jobs/first.yaml", "preview my_jobs/jobs/first.yaml --no-open"
))  # fmt: skip
@JobArgument
@click.option("--no-open", is_flag=True, help="Only say the address; open no browser.")
@how_much
def preview(job: Path, *, no_open: bool, quiet: bool, verbose: bool) -> None:
    """Show the web page of a JOB in the browser, and show it anew at each save.

    What is wrong stands above the page, with its place and what to do. Only this machine is
    answered. Ctrl-C ends it; nothing is written.
    """
    import webbrowser
    from threading import Event

    from quotegen import pipeline
    from quotegen.publish.preview import Preview, QuotePage
    from quotegen.publish.terminal.stages import Stages

    shared, stages = read_shared(), Stages.SECONDS if verbose else Stages.UNSAID
    if not job.is_file():
        exit_with(pipeline.figure(job, shared).problems)

    def opened(address: str) -> None:
        click.echo(f"{address} (Ctrl-C ends it)")
        if not no_open:
            webbrowser.open_new_tab(address)

    def built() -> tuple[QuotePage, tuple[Problem, ...]]:
        stages.say_files(job)
        with stages.said() as announce:
            return pipeline.page(job, shared, announce)

    def said(line: str) -> None:
        click.echo(line, err=True)

    try:
        Preview(job, built, said, quiet=quiet).run(opened, Event())
    except KeyboardInterrupt:
        sys.exit(FINE)


@commands.command(
    epilog=examples(
        "specimen my_jobs/jobs/first.yaml", "specimen my_jobs/jobs/first.yaml --out looks"
    )
)
@JobArgument
@click.option("--out", type=click.Path(path_type=Path, file_okay=False), default=Path("out"),
              show_default=True, help="The folder that gets specimen/.")  # fmt: skip
def specimen(job: Path, out: Path) -> None:
    """Show how papers look in each theme, with your accent and logo, on one page from a JOB."""
    from quotegen import pipeline
    from quotegen.publish.manifest import Whose
    from quotegen.publish.package import specimens
    from quotegen.publish.write import Folder

    figured = pipeline.figure(job, read_shared())
    if figured.results is None or has_error(figured.problems):
        exit_with(figured.problems)
    whose = Whose(quote="specimen", place=figured.results.job.source("quote"))
    files = specimens(figured.results)
    written = _write(Folder(path=out / "specimen", whose=whose, files=files))
    exit_with((*figured.problems, *written))


@commands.command(epilog=examples(
    "copy clauses/warranty --company my_jobs",
    "copy shop/styles/tokens.css scope/base --company my_jobs",
))  # fmt: skip
@click.argument("names", nargs=-1, metavar="NAME...")
@click.option(
    "--language", help="Copy into content/LANGUAGE, such as es, to be translated; all without NAME."
)
@CompanyFolder
def copy(names: tuple[str, ...], folder: Path, language: str | None) -> None:
    """Copy pages or files of a theme beside your company's file, to make them your own.

    A NAME is that of a page, such as clauses/warranty; of our fixed words, labels, sentences or
    glossary; or of a file of a theme, such as shop/styles/tokens.css. What lies there already stays
    as it is. The copy stands in for ours; `check` says when ours has changed since.
    """
    from quotegen.publish.own_copy import own_copies
    from quotegen.publish.write import write_new
    from quotegen.reading.fields.typed_fields import LANGUAGE

    if language and not re.fullmatch(LANGUAGE, language):
        message = "--language: type two small letters, such as es"
        raise click.UsageError(message)
    if not (names or language):
        message = "type a NAME, such as clauses/warranty"
        raise click.UsageError(message)
    copies, problems = own_copies(names, language)
    if problems:
        exit_with(problems)
    there = {name for name in copies if (folder / name).exists()}
    write_new(folder, {name: data for name, data in copies.items() if name not in there})
    for name in copies:
        stays = ": is there already, and stays as it is" if name in there else ""
        click.echo(f"{folder / name}{stays}")
    exit_with(())


@commands.command(epilog=examples(
    'ballpark --size "24 ft x 16 ft" --company my_jobs',
    'ballpark --area "640 sq ft" --pool-edge "96 ft" --use "pool deck" --page truck.pdf',
))  # fmt: skip
@click.option("--size", "sizes", multiple=True,
              help="Two sides as paced, '24 ft x 16 ft'; one for each piece.")  # fmt: skip
@click.option("--area", help="The area in place of sides, such as '640 sq ft'.")
@click.option("--pool-edge", help="Feet of edge cast at a pool, such as '96 ft'.")
@click.option("--formed-edge", help="Feet of edge to form, where it is not that of the size.")
@click.option("--finish", help="The finish that was asked for; every finish is shown.")
@click.option("--use", default="patio", show_default=True, type=click.Choice(USES),
              help="What the slab is for.")  # fmt: skip
@click.option("--date", "on", help="The day of the visit; it picks the rate book.")
@click.option("--distance", help="The way to the site, such as '14 miles'.")
@click.option("--drive-time", help="The same in time, such as '35 min'.")
@CompanyFolder
@click.option("--out", type=click.Path(path_type=Path, file_okay=False), default=Path("out"),
              show_default=True, help="The folder that gets ballpark/ballpark.txt.")  # fmt: skip
@click.option("--page", type=click.Path(path_type=Path, dir_okay=False),
              help="A new PDF of one page, for the truck.")  # fmt: skip
def ballpark(
    sizes: tuple[str, ...], folder: Path, out: Path, page: Path | None, **typed: str | None
) -> None:
    """Print and write a ballpark: what a paced slab would cost at each finish, low to high."""
    from quotegen.ballpark import ballpark_page
    from quotegen.options import asked
    from quotegen.publish.manifest import Whose
    from quotegen.publish.pdf import engine_problem
    from quotegen.publish.write import Folder, write_new

    if page is not None and page.exists():
        message = f"--page: {page} is there already; give it another name"
        raise click.UsageError(message)
    if page is not None and (missing := engine_problem()):
        exit_for_machine(missing)
    made = ballpark_page(asked(folder, sizes, typed), read_shared())
    if isinstance(made, tuple):
        exit_with(made)
    text = made.text()
    click.echo(text, nl=False)
    path = out / "ballpark"
    whose = Whose(quote="ballpark", place=Source(file=str(path)))
    problems = _write(Folder(path=path, whose=whose, files={"ballpark.txt": text.encode()}))
    if page is not None:
        write_new(page.parent, {page.name: made.pdf()})
        click.echo(page)
    exit_with(problems)


@commands.command(epilog=examples("schema", "schema rate-book"))
@click.argument(
    "kind", type=click.Choice(["job", "company", "rate-book", "past-jobs"]), default="job"
)
def schema(kind: str) -> None:
    """Print the JSON Schema of a file, for an editor that completes and checks it."""
    from quotegen.reading.schema import schema_of

    click.echo(json.dumps(schema_of(kind), indent=2))


for _command in (issue, accept, verify):
    commands.add_command(_command)


def main() -> None:
    """Run the command line; a person never sees a traceback."""
    with no_traceback():
        commands(prog_name="quotegen")


def _write(*folders: "Folder") -> tuple[Problem, ...]:
    """Write folders, print the name of each file in them, and return what is to be said."""
    from quotegen.publish.write import write

    return write(folders, lambda folder: _list(folder.path, tuple(sorted(folder.files))))


def _list(folder: Path, names: tuple[str, ...], *, unchanged: bool = False) -> None:
    if names or unchanged:
        click.echo(f"{folder}/{' nothing has changed' if unchanged else ''}")
    for name in names:
        click.echo(f"  {name}")
