"""Answers to the files of a company: company, rate book, past jobs and a first job."""

import re
from collections.abc import Mapping
from datetime import date, timedelta
from fractions import Fraction
from importlib.resources import files
from pathlib import Path
from types import MappingProxyType

from jinja2 import Environment, FunctionLoader, StrictUndefined

from quotegen.problem import Problem, Source
from quotegen.publish.write import write_new
from quotegen.reading.fields.text_fields import parse_share
from quotegen.resources import example_folder
from quotegen.starting.questions import FINISHES, NONE, Answers, load_questions
from quotegen.trade.rules import load_rules
from quotegen.trade.weather import frost_counted_on

FIRST_JOB = "jobs/first.yaml"
TEMPLATES: Mapping[str, str] = MappingProxyType({
    "company.yaml": "company.yaml.j2",
    "rate-book.yaml": "rate-book.yaml.j2",
    "past-jobs.yaml": "past-jobs.yaml.j2",
    FIRST_JOB: "first.yaml.j2",
})  # fmt: skip
_WEEKS_AHEAD = 4
_FIRST_WEEKS = (timedelta(), timedelta(weeks=1))
"""In which a first job is poured; not in winter."""
_OF_THE_REST = Fraction(3, 4)
"""What is due at the pour, of all that is left after a deposit that is a share."""
_PLAIN = re.compile(r"[A-Za-z0-9](?:[\w .&/'()@+-]*[\w.)])?")


def started_files(answers: Answers, on: date) -> Mapping[str, bytes]:
    """Return the files of a company that has answered every question.

    Args:
        answers: one to each question that is asked.
        on: the day from which the rate book holds and of the first quote, whose work begins on
            a Monday some weeks later, and not in winter.
    """
    environment = Environment(
        loader=FunctionLoader(_template),
        autoescape=False,  # noqa: S701 - YAML, where `quoted` keeps a text a text
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["yaml"] = quoted
    values = _values(answers, on)
    return MappingProxyType({
        name: environment.get_template(template).render(values).encode()
        for name, template in TEMPLATES.items()
    })  # fmt: skip


def example_files(name: str) -> Mapping[str, bytes]:
    """Return the files of a made-up company, such as `all_in`."""
    folder = example_folder(name)
    return MappingProxyType({
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    })  # fmt: skip


def start(folder: Path, written: Mapping[str, bytes]) -> tuple[Problem, ...]:
    """Write the files of a company into a folder where none of them stands yet.

    Returns:
        An error where one stands in the way, and then nothing was written.
    """
    if problems := in_the_way(folder, written):
        return problems
    write_new(folder, written)
    return ()


def in_the_way(folder: Path, names: Mapping[str, object] = TEMPLATES) -> tuple[Problem, ...]:
    """Return an error that names the files of a start which stand in a folder already."""
    there = [name for name in names if (folder / name).exists()]
    if not there:
        return ()
    problem = Problem(
        code="already-started",
        source=Source(file=str(folder / there[0])),
        message=f"already here: {', '.join(there)}; a start writes over nothing",
        hint="name a new folder; or type `quotegen check` with this one, and change its files",
    )
    return (problem,)


def quoted(text: str) -> str:
    """Return a text as YAML reads it back, inside { } too; in quotation marks where it must be."""
    if _PLAIN.fullmatch(text):
        return text
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def _template(name: str) -> str:
    return files("quotegen.starting").joinpath(f"data/{name}").read_text("utf-8")


def _values(answers: Answers, on: date) -> Mapping[str, object]:
    given = {
        question.id: "" if answers.get(question.id, NONE) == NONE else answers[question.id]
        for question in load_questions()
    }
    street, town, state = given["address"].rsplit(", ", 2)
    stand_ins = [
        question.id
        for question in load_questions()
        if question.stand_in and given[question.id] == question.stand_in
    ]
    monday = on + timedelta(weeks=_WEEKS_AHEAD, days=-on.weekday())
    while any(frost_counted_on(monday + week, state, load_rules(), on) for week in _FIRST_WEEKS):
        monday += timedelta(weeks=1)
    return {
        **given,
        "street": street,
        "town": town,
        "state": state,
        "offered": [finish for finish in FINISHES if given[finish]],
        "deposit_is_share": given["deposit"].endswith("%"),
        "at_the_pour": _at_the_pour(given["deposit"]),
        "stand_ins": ", ".join(stand_ins).replace("_", " "),
        "today": on.isoformat(),
        "year": on.year,
        "start": monday.isoformat(),
    }


def _at_the_pour(deposit: str) -> str:
    """Return the share that is due at the pour, so that some is left for the end."""
    before = parse_share(deposit) if deposit.endswith("%") else Fraction(0)
    return f"{int((1 - before) * _OF_THE_REST * 100)} %"
