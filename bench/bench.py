"""How long one job takes, paper by paper, beside what the print engine alone needs.

Run it with `./run bench`, or `./run bench JOB.yaml --runs 9 --season 40 --json FILE`. Seconds are
those of the processor, medians of several runs, so that what else runs on the machine counts
little; commands are whole processes, start-up included.
"""

import argparse
import json
import os
import re
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import asdict
from functools import wraps
from pathlib import Path
from statistics import median
from types import FunctionType, ModuleType
from typing import Any

from bench.page import print_page
from bench.papers import print_papers, printed
from quotegen import pipeline
from quotegen.publish import package as packaging
from quotegen.publish.package import Package

REPO = Path(__file__).resolve().parent.parent
BIN = Path(sys.executable).parent
QUOTEGEN = BIN / "quotegen"
DECK = REPO / "example_jobs/itemized/jobs/orchard-bend-pool-deck.yaml"
STAGES = ("reading", "takeoff", "pricing", "schedule", "explain", "publish")


def build(job: Path) -> Package:
    """Run the whole pipeline in this process; the only place here that knows how."""
    shared = pipeline.read_shared()
    if not isinstance(shared, pipeline.Shared):
        sys.exit("\n".join(map(str, shared)))
    priced = pipeline.figure(job, shared, to_package=True)
    if priced.results is None or priced.owner is None:
        sys.exit("\n".join(map(str, priced.problems)))
    return packaging.package(priced.results, priced.owner, ())


def run(*command: str | Path) -> float:
    """Run a program quietly and return its CPU seconds; a failure ends the benchmark."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        sys.exit(f"{command[0]} failed:\n{done.stdout}{done.stderr}")
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime


def season(job: Path, count: int, folder: Path) -> dict[str, float]:
    """Package copies of a job: wall seconds on one core, on all, and once nothing has changed."""
    jobs = folder / "jobs"
    jobs.mkdir()
    for file in job.parent.parent.glob("*.yaml"):
        shutil.copy(file, folder)
    text = job.read_text(encoding="utf-8")
    for number in range(count):
        copied = re.sub(r"(?m)^quote: .*", f"quote: S-{number}", text)
        (jobs / f"{number}.yaml").write_text(copied, encoding="utf-8")
    taken: dict[str, float] = {}
    for name, out, cores in (
        ("one core", "one", "1"),
        ("all cores", "all", str(os.cpu_count())),
        ("nothing changed", "all", "1"),
    ):
        start = time.perf_counter()
        run(QUOTEGEN, "package", *sorted(jobs.iterdir()), "--out", folder / out, "--cores", cores)
        taken[f"season of {count}, {name}, wall"] = time.perf_counter() - start
    return taken


class StageClock:
    """Charges each moment to the room whose function was entered last."""

    def __init__(self, *modules: ModuleType) -> None:
        """Put a clock on every function that these modules took from another room."""
        self.spent = dict.fromkeys(STAGES, 0.0)
        self._rooms: list[str] = []
        self._since = 0.0
        for module in modules:
            for name, function in list(vars(module).items()):
                room = _room(getattr(function, "__module__", None) or "")
                if isinstance(function, FunctionType) and room:
                    setattr(module, name, self._timed(function, room))

    def _timed(self, function: Callable[..., object], room: str) -> Callable[..., object]:
        @wraps(function)
        def timed(*args: Any, **kwargs: Any) -> object:
            self._charge()
            self._rooms.append(room)
            try:
                return function(*args, **kwargs)
            finally:
                self._charge()
                self._rooms.pop()

        return timed

    def _charge(self) -> None:
        now = time.process_time()
        if self._rooms:
            self.spent[self._rooms[-1]] += now - self._since
        self._since = now


def _room(module: str) -> str:
    parts = module.split(".")
    return parts[1] if len(parts) > 1 and parts[0] == "quotegen" and parts[1] in STAGES else ""


def main() -> None:
    """Measure and print the tables."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("job", nargs="?", type=Path, default=DECK)
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--season", type=int, default=0, help="how many copies, each a job")
    parser.add_argument("--json", type=Path, help="where to write the same figures")
    asked = parser.parse_args()
    os.environ.setdefault("SOURCE_DATE_EPOCH", "1767225600")

    taken: dict[str, float] = {}
    with tempfile.TemporaryDirectory() as scratch:
        out = Path(scratch, "out")

        def middle(*command: str | Path) -> float:
            return median(run(*command) for _ in range(asked.runs))

        package = (QUOTEGEN, "package", asked.job, "--out", out)
        taken["Python, doing nothing"] = middle(sys.executable, "-c", "")
        taken["quotegen check"] = middle(QUOTEGEN, "check", asked.job)
        taken["quotegen figure"] = middle(QUOTEGEN, "figure", asked.job)
        taken["quotegen package"] = middle(*package, "--fresh")
        taken["quotegen package, nothing changed"] = middle(*package)
        if asked.season:
            taken |= season(asked.job, asked.season, Path(scratch))
        print_page(next(out.glob("*/customer/quote.html")), asked.runs)

    papers = printed(build(asked.job).printed)
    taken["the engine alone, the same papers"] = sum(row.seconds for row in papers)
    taken["the engine alone, plain styles"] = sum(row.plain_seconds for row in papers)
    print(f"\n{asked.job.name}, median of {asked.runs} runs, CPU seconds\n")
    for label, value in taken.items():
        print(f"  {label:<48}{value:8.2f} s")
    print_papers(papers)
    print_stages(asked.job, asked.runs)
    if asked.json:
        told = {"taken_s": taken, "papers": [asdict(row) for row in papers]}
        asked.json.write_text(json.dumps(told, indent=1), encoding="utf-8")


def print_stages(job: Path, runs: int) -> None:
    """Print how long each stage of a job takes."""
    stages: dict[str, list[float]] = {stage: [] for stage in STAGES}
    clock = StageClock(pipeline, packaging)
    for _ in range(runs):
        clock.spent = dict.fromkeys(STAGES, 0.0)
        build(job)
        for stage, spent in clock.spent.items():
            stages[stage].append(spent)
    print()
    for number, (stage, times) in enumerate(stages.items(), 1):
        print(f"  {number} {stage:<34}{median(times) * 1000:8.0f} ms")


if __name__ == "__main__":
    main()
