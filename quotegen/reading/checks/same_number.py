"""Two job files with one quote number: the package of the one takes the place of the other's."""

from collections.abc import Iterator
from pathlib import Path

from quotegen.problem import Problem
from quotegen.reading.files.job import JobFile
from quotegen.reading.yaml.typed_file import Typed, typed_at


def same_number_beside(path: Path, job: Typed[JobFile]) -> Iterator[Problem]:
    """Yield a warning for the first other file in the folder of a job that has its quote number."""
    number = job.value.quote
    others = (one for one in sorted(path.parent.glob("*.yaml")) if one.name != path.name)
    other = next((one.name for one in others if typed_at(one, "quote") == number), None)
    if other is not None:
        said = f"`{other}` beside this job has the quote number `{number}` too"
        hint = "give each job its own; packaged into one folder, the later one replaces the other"
        yield job.places.warning(("quote",), "number-beside", said, hint)
