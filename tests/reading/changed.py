"""Good files with one text changed, for the tests of the checks."""

from pathlib import Path

from quotegen.reading.read import read_job
from quotegen.reading.records import ReadJob
from tests.messages.case_files import lay_out

SCOPE = frozenset({"base", "slab", "reinforcement", "joints", "steps", "drain", "demolition"})


def codes_after(folder: Path, **changed: tuple[str, str]) -> list[str]:
    """Return the codes found after a change of one text in a good file."""
    job = lay_out(None, folder)
    for name, (before, after) in changed.items():
        path = folder / f"{name.replace('_', '-')}.yaml"
        text = path.read_text(encoding="utf-8")
        assert before in text
        path.write_text(text.replace(before, after, 1), encoding="utf-8")
    read = read_job(job, SCOPE)
    problems = read.problems if isinstance(read, ReadJob) else read
    return [problem.code for problem in problems]
