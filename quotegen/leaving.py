"""How the command line ends: what it prints last, and its exit code."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import NoReturn

import click

from quotegen.problem import Problem, has_error

FINE, INPUT_AT_FAULT, MACHINE_AT_FAULT = 0, 1, 3  # 2 is click's, for wrong usage


def exit_with(problems: tuple[Problem, ...]) -> NoReturn:
    """Print every problem and exit: with 1 if one of them is an error."""
    for problem in problems:
        click.echo(str(problem), err=True)
    sys.exit(INPUT_AT_FAULT if has_error(problems) else FINE)


def exit_for_machine(problem: Problem) -> NoReturn:
    """Print what this machine lacks, in one sentence, and exit with 3."""
    click.echo(f"{problem.message}; {problem.hint}", err=True)
    sys.exit(MACHINE_AT_FAULT)


@contextmanager
def no_traceback() -> Iterator[None]:
    """Say what was not foreseen in one sentence, and exit with 3."""
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
