"""Which of the four files a file is: told by the keys at its top, not by its name."""

import re
from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType

from quotegen.problem import Problem
from quotegen.reading.fields.typed_fields import Model
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.past_jobs import PastJobs
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.unreadable import LARGEST_FILE_BYTES

KINDS: Mapping[str, type[Model]] = MappingProxyType({
    "job": JobFile,
    "company": Company,
    "rate-book": RateBookFile,
    "past-jobs": PastJobs,
})  # fmt: skip
"""The model of each file, by the word that names it."""
CALLED: Mapping[type[Model], str] = MappingProxyType({
    JobFile: "a job",
    Company: "a company's file",
    RateBookFile: "a rate book",
    PastJobs: "a list of past jobs",
})  # fmt: skip
_KEY = re.compile(rb"(?m)^([a-z][a-z_]*)\s*:")


def kind_of(text: bytes) -> type[Model] | None:
    """Return the model whose keys most of the text has at its top, None where it has no key of any.

    The text need not be readable as YAML.
    """
    typed = {key.decode() for key in _KEY.findall(text)}
    shared = {model: len(typed & model.model_fields.keys()) for model in KINDS.values()}
    best = max(shared, key=lambda model: shared[model])
    return best if shared[best] else None


def text_at(path: Path) -> bytes:
    """Return what stands in a file, as much of it as is ever read.

    Raises:
        OSError: it cannot be opened.
    """
    with path.open("rb") as file:
        return file.read(LARGEST_FILE_BYTES)


def of_another_kind(path: Path, text: bytes | None = None) -> Problem | None:
    """Return the problem of a file that is none of jobs, where a job belongs; None for a job."""
    kind = kind_of(text_at(path) if text is None else text)
    if kind is None or kind is JobFile:
        return None
    said = f"this is {CALLED[kind]}, and a job belongs here"
    hint = "name a job file; `quotegen check` takes this one too"
    return Places(str(path)).fault((), "not-a-job", said, hint)
