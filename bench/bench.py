"""How long one job takes, beside what WeasyPrint alone needs for the same two papers.

Run it with `./run bench`, or `./run bench JOB.yaml --runs 9`. Every figure is the median of
several runs; the first four are whole processes, start-up included.
"""

import argparse
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from functools import wraps
from pathlib import Path
from statistics import median
from types import FunctionType, ModuleType
from typing import Any

from bench.page import print_page
from quotegen import pipeline
from quotegen.publish import package as packaging
from quotegen.publish.package import Package

REPO = Path(__file__).resolve().parent.parent
BIN = Path(sys.executable).parent
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


def seconds(work: Callable[[], object]) -> float:
    """Time one piece of work."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def run(*command: str | Path) -> None:
    """Run a program quietly; a failure ends the benchmark with what it said."""
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        sys.exit(f"{command[0]} failed:\n{done.stdout}{done.stderr}")


def weasyprint_alone(folder: Path) -> None:
    """Turn each HTML document in a folder into a PDF, one process for each as its user would."""
    for page in sorted(folder.glob("*.html")):
        run(BIN / "weasyprint", "-q", page, page.with_suffix(".pdf"))


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
        now = time.perf_counter()
        if self._rooms:
            self.spent[self._rooms[-1]] += now - self._since
        self._since = now


def _room(module: str) -> str:
    parts = module.split(".")
    return parts[1] if len(parts) > 1 and parts[0] == "quotegen" and parts[1] in STAGES else ""


def main() -> None:
    """Measure and print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    example = min((REPO / "example_jobs").glob("*/jobs/*.yaml"))
    parser.add_argument("job", nargs="?", type=Path, default=example)
    parser.add_argument("--runs", type=int, default=5)
    asked = parser.parse_args()
    os.environ.setdefault("SOURCE_DATE_EPOCH", "1767225600")

    quotegen = BIN / "quotegen"
    with tempfile.TemporaryDirectory() as scratch:
        plain, out = Path(scratch, "plain"), Path(scratch, "out")
        plain.mkdir()
        for name, html in build(asked.job).printed.items():
            (plain / name).with_suffix(".html").write_text(html, encoding="utf-8")

        def middle(work: Callable[[], object]) -> float:
            return median(seconds(work) for _ in range(asked.runs))

        python = middle(lambda: run(sys.executable, "-c", ""))
        check = middle(lambda: run(quotegen, "check", asked.job))
        package = middle(lambda: run(quotegen, "package", asked.job, "--out", out))
        alone = middle(lambda: weasyprint_alone(plain))
        print_page(next(out.glob("*/customer/quote.html")), asked.runs)

    stages: dict[str, list[float]] = {stage: [] for stage in STAGES}
    clock = StageClock(pipeline, packaging)
    for _ in range(asked.runs):
        clock.spent = dict.fromkeys(STAGES, 0.0)
        build(asked.job)
        for stage, spent in clock.spent.items():
            stages[stage].append(spent)

    print(f"\n{asked.job.name}, median of {asked.runs} runs\n")
    for label, value in [
        ("Python, doing nothing", python),
        ("quotegen check", check),
        ("quotegen package", package),
        ("WeasyPrint alone, the same papers", alone),
    ]:
        print(f"  {label:<36}{value:8.2f} s")
    print(f"  {'package / WeasyPrint alone':<36}{package / alone:8.2f} times\n")
    for number, (stage, times) in enumerate(stages.items(), 1):
        print(f"  {number} {stage:<34}{median(times) * 1000:8.0f} ms")


if __name__ == "__main__":
    main()
