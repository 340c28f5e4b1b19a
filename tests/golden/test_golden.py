"""The examples are the goldens: twice the same bytes, and the words that were agreed on.

After a change that is meant: `.venv/bin/python -m tests.golden.rebaseline`, and read the diff.
"""

import json
import os
import re
from decimal import Decimal
from pathlib import Path
from shutil import copytree

from tests.explain.examples import example_view
from tests.golden.numbers import (
    about,
    amounts,
    core_amounts,
    core_quantities,
    dollars,
    of_groups,
    quantities,
)
from tests.golden.rebaseline import EXPECTED, FIGURES, PAPERS, golden
from tests.pricing import shop
from tests.publish.built import EVERY_BUILT, MACHINE, REPO, built, packaged, page_text
from tests.world import COMPANY_FILES, EXAMPLES

# The one with every paper; all of them twice would take minutes.
TWICE = next(job for job in shop.JOBS if job.stem == "cutters-row-drive")
ANOTHER_MACHINE = {
    "TZ": "America/Adak", "PYTHONHASHSEED": "4711", "LC_ALL": "C.UTF-8", "LANG": "tr_TR.UTF-8",
}  # fmt: skip
FIVE_YEARS_ON = """
import os, time

def later(clock):
    return lambda *given: clock(*given or [now() + 5 * 366 * 86400])

class Scan(list):
    def __enter__(self):
        return iter(self)
    def __exit__(self, *_):
        pass
    def __next__(self):
        return self.pop(0)
    def close(self):
        pass

now, listdir, scandir = time.time, os.listdir, os.scandir
time.time = lambda: now() + 5 * 366 * 86400
time.localtime, time.gmtime = later(time.localtime), later(time.gmtime)
os.listdir = lambda *where: listdir(*where)[::-1]
os.scandir = lambda *where: Scan(list(scandir(*where))[::-1])
"""
"""What Python runs first on the other machine: another clock, and folders listed backward."""


@EVERY_BUILT
def test_as_agreed(job_file: Path):
    """The figures, and the papers that are kept of this example, are what the golden files say."""
    made = golden(job_file.stem, built(job_file))
    assert sorted(made) == sorted(path.name for path in (EXPECTED / job_file.stem).iterdir())
    for name, text in made.items():
        kept = (EXPECTED / job_file.stem / name).read_text(encoding="utf-8")
        assert text == kept, f"{name}; if it is meant: python -m tests.golden.rebaseline"


def test_each_kind_of_paper_is_kept_once():
    """Every kind of paper is kept, and from one example only: a new sentence is one diff."""
    kept = [_kind(path) for papers in PAPERS.values() for path in papers]
    made = {_kind(path) for job_file in shop.JOBS for path in built(job_file)}
    assert sorted([*kept, _kind(FIGURES)]) == sorted(made)


def test_no_golden_file_is_left_over():
    """Each folder of golden files belongs to an example."""
    assert sorted(path.name for path in EXPECTED.iterdir()) == [path.stem for path in shop.JOBS]


def test_twice_the_same(tmp_path):
    """Another user on another machine, five years on, writes the same bytes.

    Other are the folder, the time zone, the language, the hash seed, the order in which a folder
    lists its files, the clock, the rights of new files, and there is no home and no cache.
    """
    folder = tmp_path / "another machine, Küche" / "deep"
    copytree(TWICE.parents[1], folder / "mine")
    (tmp_path / "sitecustomize.py").write_text(FIVE_YEARS_ON, encoding="utf-8")
    assert ANOTHER_MACHINE.keys() == MACHINE.keys()
    machine = {
        **ANOTHER_MACHINE, "PYTHONPATH": os.pathsep.join((str(tmp_path), str(REPO))),
        "HOME": str(tmp_path / "nowhere"), "XDG_CACHE_HOME": str(tmp_path / "nowhere"),
        "USER": "another", "LOGNAME": "another",
    }  # fmt: skip
    again = packaged(f"mine/jobs/{TWICE.name}", folder, machine, umask=0o077)
    once = built(TWICE)
    assert again.keys() == once.keys()
    assert [name for name in once if once[name] != again[name]] == []


@EVERY_BUILT
class TestEveryNumberComesFromTheCore:
    """No template, script or content page computes a number."""

    def test_money_on_the_page(self, job_file: Path):
        """Each sum of money on the page was worked out by pricing or typed by the owner."""
        printed = {dollars(text) for text in amounts(_page(job_file))}
        assert len(printed) > 12
        core = {dollars(text) for text in core_amounts(shop.example_results(job_file))}
        assert printed - core - about(core) - of_groups(example_view(job_file)) == set()

    def test_money_is_in_the_figures(self, job_file: Path):
        """Each sum of money on the page is in figures.json too, where a machine can read it."""
        figures = json.loads(built(job_file)["private/figures.json"])
        del figures["costs"], figures["bids"]
        known = {abs(Decimal(number)) for number in _decimals(json.dumps(figures))}
        insurance = shop.example_results(job_file).job.company.insurance
        typed = amounts(insurance.covers) if insurance else set()
        printed = {dollars(text) for text in amounts(_page(job_file)) - typed}
        assert printed - known - about(known) - of_groups(example_view(job_file)) == set()

    def test_quantities_on_the_page(self, job_file: Path):
        """Each size on the page is a result, or stands in a rule with a source, or was typed."""
        printed = quantities(_page(job_file))
        assert len(printed) > 10
        assert printed - core_quantities(shop.example_results(job_file)) == set()


def test_the_check_of_numbers_can_fail():
    """A made-up sum or size is told apart from those of the core."""
    results = shop.example_results(shop.JOBS[0])
    assert amounts("Only $1,234.56 more") - core_amounts(results) == {"$1,234.56"}
    assert quantities("for 777.7 m², 99'-9 1/2\"") - core_quantities(results) == {
        "777.7 m²", "99'-9 1/2\""}  # fmt: skip


def test_every_example_is_built():
    """These tests pass over no job file among the examples."""
    assert {*EXAMPLES.parent.rglob("*.yaml")} - {*shop.JOBS} == {
        EXAMPLES.parent / company / name
        for company in ("all_in", "itemized")
        for name in COMPANY_FILES
    }


def _kind(path: str) -> str:
    """`past-job` for past-job-2.html; a paper and its PDF are of one kind."""
    return re.sub(r"-\d+$", "", Path(path).stem)


def _page(job_file: Path) -> str:
    return page_text(built(job_file)["customer/quote.html"].decode())


def _decimals(text: str) -> list[str]:
    return re.findall(r'"(-?\d+(?:\.\d+)?)"', text)
