"""A small made-up world for tests: the example company, and a job that a test can change."""

from dataclasses import replace
from pathlib import Path
from shutil import copy
from typing import TypeVar

from quotegen.reading.records import JobSpec, PlacementSpec

Spec = TypeVar("Spec", JobSpec, PlacementSpec)

EXAMPLES = Path(__file__).parent.parent / "example_jobs" / "itemized"
COMPANY_FILES = ("company.yaml", "rate-book.yaml", "past-jobs.yaml")

PATIO = """\
quote: T-1
date: 2026-05-14
start: 2026-06-08
title: Patio
customer: {name: Wren Abernathy, email: wren@post.example}
site: {address: 1 Test Lane, town: Harrow Bend}
finish: broom
compare: [exposed, slate]
placements:
  - id: patio
    use: patio
    add:
      - {rectangle: 30 ft x 20 ft, against_house: bottom}
    fall: 1/4 in per ft
    falls_toward: top
"""
"""A patio of 600 sq ft along the house, in as few lines as a job needs."""


def write_world(folder: Path, job: str = PATIO, **files: str) -> Path:
    """Write the company's files and a job into a folder; the path of the job file.

    Args:
        folder: an empty folder.
        job: the text of the job file.
        files: texts that take the place of a company file, by name with `_` for `-`.
    """
    for name in COMPANY_FILES:
        copy(EXAMPLES / name, folder / name)
    for key, text in files.items():
        (folder / f"{key.replace('_', '-')}.yaml").write_text(text, encoding="utf-8")
    path = folder / "job.yaml"
    path.write_text(job, encoding="utf-8")
    return path


def retyped(spec: Spec, **keys: object) -> Spec:
    """Return a job or a placement as if other values were typed for some keys of its file."""
    return replace(spec, typed=spec.typed.model_copy(update=keys))
