"""Which rate book counts: of all versions beside a job, the one that holds on the quote date."""

from datetime import date
from itertools import pairwise
from pathlib import Path

from quotegen.problem import Problem
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.yaml.typed_file import Typed, folders_of, load, missing_beside

BOOK = "rate-book.yaml"
VERSIONS = "rate-book*.yaml"


def book_on(job: Path, on: date | None) -> Typed[RateBookFile] | tuple[Problem, ...]:
    """Return the newest version of the rate book that begins to hold on or before a day.

    Versions are files `rate-book*.yaml` beside the job, or one folder up where there are none
    beside it; the day from which each holds is in its `valid_from`. Where all begin later the
    first one is returned, whose date shows the fault; without a day, the newest.

    Returns:
        The version, or every fault of any of them: a version that cannot be read might be the
        one that counts.
    """
    folders = folders_of(job)
    found = next((files for folder in folders if (files := sorted(folder.glob(VERSIONS)))), None)
    if not found:
        return (missing_beside(job, BOOK),)
    read = tuple(load(path, RateBookFile) for path in found)
    faults = tuple(fault for one in read if isinstance(one, tuple) for fault in one)
    if faults:
        return faults
    versions = sorted(
        (one for one in read if isinstance(one, Typed)), key=lambda one: one.value.valid_from
    )
    for earlier, later in pairwise(versions):
        if earlier.value.valid_from == later.value.valid_from:
            return (_twice(earlier, later),)
    holding = [one for one in versions if on is None or one.value.valid_from <= on]
    return holding[-1] if holding else versions[0]


def _twice(one: Typed[RateBookFile], other: Typed[RateBookFile]) -> Problem:
    first, day = Path(one.places.file).name, one.value.valid_from
    said = f"this rate book and {first} both begin to hold on {day}"
    hint = "give each version its own first day, or delete one"
    return other.fault(("valid_from",), "book-twice", said, hint)
