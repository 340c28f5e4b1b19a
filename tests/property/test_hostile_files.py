"""Whatever stands in the four files, a job is priced or refused with its places, and soon."""

import time
from pathlib import Path

import pytest

from quotegen.pipeline import figure
from tests.messages.problem_codes import codes
from tests.pricing.shop import shared
from tests.property.hostile_files import hostile_files

FILES, FAST_S = 30, 5
"""`./run fuzz` tries 50,000, each in a process of its own whose memory is counted too."""


@pytest.mark.parametrize("made", ["mutated", "from the schema"])
def test_any_files_are_priced_or_refused(tmp_path: Path, made: str):
    """No file raises, takes long, or has a fault without a known code and a place."""
    for seed in range(FILES):
        files = hostile_files(seed)
        if files.made != made:
            continue
        for name, text in files.texts.items():
            (tmp_path / name).write_text(text, encoding="utf-8")
        began = time.process_time()
        figured = figure(tmp_path / "job.yaml", shared())
        assert time.process_time() - began < FAST_S, seed
        assert figured.results is not None or figured.problems, seed
        for problem in figured.problems:
            assert problem.code in codes(), seed
            assert min(problem.source.line, problem.source.column) > 0, seed


def test_a_seed_makes_the_same_files():
    """What was found once is found again by its number, whatever was made before."""
    first = hostile_files(7)
    for seed in range(20):
        hostile_files(seed)
    assert hostile_files(7) == first
