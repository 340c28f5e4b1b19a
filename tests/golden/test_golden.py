"""The examples are the goldens: built silently, twice the same, and as they were agreed to be.

After a change that is meant: `.venv/bin/python -m tests.golden.rebaseline`, and read the diff.
"""

import json
import os
import re
import subprocess
import sys
from decimal import Decimal
from pathlib import Path

import pytest

from tests.golden.numbers import amounts, core_amounts, core_quantities, quantities
from tests.golden.rebaseline import EXPECTED, golden
from tests.pricing import shop
from tests.publish.built import EVERY_BUILT, built, page_text
from tests.world import EXAMPLES

# The one with every paper; all five twice would take minutes.
TWICE = tuple(job for job in shop.JOBS if job.stem == "cutters-row-drive")
TWO_MACHINES = (
    {"TZ": "Pacific/Kiritimati", "PYTHONHASHSEED": "1", "LC_ALL": "C", "LANG": "C"},
    {"TZ": "America/Adak", "PYTHONHASHSEED": "4711", "LC_ALL": "C.UTF-8", "LANG": "tr_TR.UTF-8"},
)


@EVERY_BUILT
def test_as_agreed(job_file: Path):
    """Figures, page and mail say what the golden files say, word for word."""
    made = golden(built(job_file))
    assert sorted(made) == sorted(path.name for path in (EXPECTED / job_file.stem).iterdir())
    for name, text in made.items():
        kept = (EXPECTED / job_file.stem / name).read_text(encoding="utf-8")
        assert text == kept, f"{name}; if it is meant: python -m tests.golden.rebaseline"


def test_no_golden_file_is_left_over():
    """Each folder of golden files belongs to an example."""
    assert sorted(path.name for path in EXPECTED.iterdir()) == [path.stem for path in shop.JOBS]


@pytest.mark.xdist_group("two machines")
def test_silent_and_twice_the_same(tmp_path):
    """Two processes in other folders, time zones, languages and hash seeds write the same bytes.

    Both run with warnings as errors, and neither says a word beside the list of its files.
    """
    trees = []
    for number, environment in enumerate(TWO_MACHINES):
        folder = tmp_path / f"machine {number}"
        (folder / "deep").mkdir(parents=True)
        jobs = [os.path.relpath(job, folder / "deep") if number else str(job) for job in TWICE]
        done = subprocess.run(
            [sys.executable, "-W", "error", "-m", "quotegen", "package", *jobs, "--out", "../out"],
            cwd=folder / "deep", env=_plain_environment() | environment,
            capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert (done.returncode, done.stderr) == (0, ""), done.stderr
        assert [line for line in done.stdout.splitlines() if not _names_a_file(line)] == []
        trees.append(_tree(folder / "out"))
    first, second = trees
    assert first.keys() == second.keys()
    assert [name for name in first if first[name] != second[name]] == []
    numbers = {job: shop.example_results(job).job.quote for job in TWICE}
    assert {name.partition("/")[0] for name in first} == set(numbers.values())


@EVERY_BUILT
class TestEveryNumberComesFromTheCore:
    """Design, rule 1: no template, script or content page computes a number."""

    def test_money_on_the_page(self, job_file: Path):
        """No sum of money is on the page that pricing did not work out or the owner type."""
        printed = amounts(_page(job_file))
        assert len(printed) > 20
        assert printed - core_amounts(shop.example_results(job_file)) == set()

    def test_money_is_in_the_figures(self, job_file: Path):
        """No sum of money is on the page that a machine could not read in figures.json."""
        figures = json.loads(built(job_file)["private/figures.json"])
        del figures["costs"], figures["bids"]
        known = {abs(Decimal(number)) for number in _decimals(json.dumps(figures))}
        insurance = shop.example_results(job_file).job.company.insurance
        typed = amounts(insurance.covers) if insurance else set()
        printed = amounts(_page(job_file)) - typed
        assert {
            text for text in printed if Decimal(re.sub(r"[$,]", "", text)) not in known
        } == set()

    def test_quantities_on_the_page(self, job_file: Path):
        """No size is on the page that is no result, no rule with a source, and typed by nobody."""
        printed = quantities(_page(job_file))
        assert len(printed) > 10
        assert printed - core_quantities(shop.example_results(job_file)) == set()


def test_the_check_of_numbers_can_fail():
    """A sum or a size that was made up is told from those of the core."""
    results = shop.example_results(shop.JOBS[0])
    assert amounts("Only $1,234.56 more") - core_amounts(results) == {"$1,234.56"}
    assert quantities("for 777.7 m², 99'-9 1/2\"") - core_quantities(results) == {
        "777.7 m²", "99'-9 1/2\""}  # fmt: skip


def test_every_example_is_built():
    """No job file lies among the examples that these tests pass over."""
    assert {*EXAMPLES.rglob("*.yaml")} - {*shop.JOBS} == {
        EXAMPLES / name for name in ("company.yaml", "rate-book.yaml", "past-jobs.yaml")
    }


def _page(job_file: Path) -> str:
    return page_text(built(job_file)["customer/quote.html"].decode())


def _decimals(text: str) -> list[str]:
    return re.findall(r'"(-?\d+(?:\.\d+)?)"', text)


def _plain_environment() -> dict[str, str]:
    return {key: value for key, value in os.environ.items() if key != "SOURCE_DATE_EPOCH"}


def _names_a_file(line: str) -> bool:
    return re.fullmatch(r"(?:\S+/|  (?:customer|private)/[\w.-]+)", line) is not None


def _tree(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*")) if path.is_file()
    }  # fmt: skip
