"""What a command is given: how that is typed, read, and shown by its help."""

from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import click

from quotegen.leaving import exit_with

if TYPE_CHECKING:
    from quotegen.pipeline import Shared

JobArgument = click.argument("job", type=click.Path(path_type=Path))
HowMuch = (
    click.option("-q", "--quiet", is_flag=True, help="Say only what is wrong."),
    click.option("-v", "--verbose", is_flag=True,
                 help="Say each stage with its seconds, and what each job is made of."),
)  # fmt: skip
OnDay = click.option("--on", help="The day of it, such as 2026-06-22.  [default: today]")

T = TypeVar("T")
C = TypeVar("C", bound=Callable[..., object])


def how_much(command: C) -> C:
    """Give a command -q and -v."""
    for option in HowMuch:
        command = option(command)
    return command


def examples(*words: str) -> str:
    """Return the end of a command's help: how it is typed, for two cases."""
    return "\n".join(("\b\nExamples:", *(f"  quotegen {one}" for one in words)))


def parsed(option: str, parser: Callable[[str], T], text: str) -> T:
    """Parse the text of an option; one that cannot be parsed is wrong usage, exit code 2."""
    try:
        return parser(text)
    except ValueError as error:  # what the parsers of the job file raise
        message = f"{option}: {getattr(error, 'message_template', error)}"
        raise click.UsageError(message) from None


def if_typed(option: str, parser: Callable[[str], T], text: str | None) -> T | None:
    """Parse the text of an option that may be left out."""
    return parsed(option, parser, text) if text else None


def day(on: str | None) -> date:
    """Return the day that was typed, or today: the one place where a clock is asked."""
    from quotegen.reading.fields.text_fields import parse_date

    return if_typed("--on", parse_date, on) or datetime.now().astimezone().date()


def read_shared() -> "Shared":
    """Return what all jobs share, such as content and rules; a fault in it ends the command."""
    from quotegen import pipeline

    shared = pipeline.read_shared()
    if isinstance(shared, tuple):
        exit_with(shared)
    return shared
