"""Throws hostile files at quotegen, and prints how many of them did harm.

Run it with `./run fuzz`. Each file is read, measured and priced in a process of its own, which the
system stops if it takes too long, and whose time and memory the system counts. A case is named by
its seed: `--seed` and `--count 1` try it again.
"""

import argparse
import os
import resource
import shutil
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import sync_playwright

from quotegen import pipeline
from quotegen.problem import Source, has_error
from quotegen.publish.manifest import Whose
from quotegen.publish.write import Folder, write
from tests.browser.conftest import QUIET
from tests.browser.injections import JOBS, built_pages, harm
from tests.property.hostile_files import hostile_files
from tests.publish.built import build, unprinted
from tests.publish.killed_runs import killed_runs

SECONDS, MEGABYTES = 5, 512
STOPPED_S = 20
"""After how many seconds of work the system stops a case."""
NO_ERROR, REFUSED, RAISED, WROTE = 0, 1, 2, 3
WHAT = {
    NO_ERROR: "taken", REFUSED: "refused", RAISED: "an exception", WROTE: "files beside an error",
}  # fmt: skip
Case = Callable[[Path, pipeline.Shared], int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """How one case went."""

    ended: str
    seconds: float
    megabytes: float

    @property
    def harm(self) -> str | None:
        """What is wrong with it, None if nothing is."""
        if self.ended not in {WHAT[NO_ERROR], WHAT[REFUSED]}:
            return self.ended
        if self.seconds > SECONDS:
            return f"over {SECONDS} s"
        return f"over {MEGABYTES} MB" if self.megabytes > MEGABYTES else None


def checked(folder: Path, shared: pipeline.Shared) -> int:
    """Do what `check` does with the job of a folder."""
    before = sorted(folder.rglob("*"))
    figured = pipeline.figure(folder / "job.yaml", shared)
    if sorted(folder.rglob("*")) != before:
        return WROTE
    return REFUSED if has_error(figured.problems) else NO_ERROR


def packaged(folder: Path, shared: pipeline.Shared) -> int:
    """Do what `package` does, all but printing."""
    with unprinted():
        built = build((folder / "job.yaml",), shared)
    refused = has_error(built.problems)
    for quote, made in built.packages.items():
        out = folder / "out" / quote
        whose = Whose(quote=quote, customer="", place=Source(file="job.yaml"))
        refused |= has_error(write((Folder(path=out, whose=whose, files=made.files),)))
    if refused:
        return WROTE if (folder / "out").exists() else REFUSED
    return NO_ERROR


def tried(seed: int, case: Case, shared: pipeline.Shared) -> tuple[str, Ran]:
    """Try one case in a process of its own."""
    made = hostile_files(seed)
    folder = Path(tempfile.mkdtemp(prefix="fuzz-"))
    for name, text in made.texts.items():
        (folder / name).write_text(text, encoding="utf-8", errors="surrogatepass")
    child = os.fork()
    if not child:
        _alone(folder, case, shared)
    _, status, used = os.wait4(child, 0)
    shutil.rmtree(folder)
    code = os.waitstatus_to_exitcode(status)
    ended = WHAT.get(code, f"stopped after {STOPPED_S} s" if code < 0 else f"exit {code}")
    seconds = used.ru_utime + used.ru_stime
    return made.made, Ran(ended=ended, seconds=seconds, megabytes=used.ru_maxrss / 1024)


def _alone(folder: Path, case: Case, shared: pipeline.Shared) -> None:
    """Run a case and end this process with how it went."""
    resource.setrlimit(resource.RLIMIT_CPU, (STOPPED_S, STOPPED_S))
    code = RAISED
    try:
        os.chdir(folder)
        code = case(Path(), shared)
    except BaseException:  # noqa: BLE001 - whatever it is, that it is raised is the finding
        traceback.print_exc()
        sys.stderr.flush()
    os._exit(code)


def table(name: str, case: Case, seeds: range, most_s: float) -> int:
    """Try the cases until the time is up, print what came of them; return how many did harm."""
    shared = _shared()
    began, ended, done_harm = time.monotonic(), Counter[str](), 0
    slowest, largest = 0.0, 0.0
    for seed in seeds:
        if time.monotonic() - began > most_s:
            break
        made, ran = tried(seed, case, shared)
        ended[f"{made}, {ran.ended}"] += 1
        slowest, largest = max(slowest, ran.seconds), max(largest, ran.megabytes)
        if ran.harm:
            done_harm += 1
            print(f"  seed {seed}: {ran.harm} ({ran.seconds:.1f} s, {ran.megabytes:.0f} MB)")
    print(f"{name}: {sum(ended.values()):,} files, {done_harm} did harm")
    for what, number in sorted(ended.items()):
        print(f"  {what}: {number:,}")
    print(f"  longest {slowest:.1f} s of work, largest {largest:.0f} MB", flush=True)
    return done_harm


def injections(turns: int, most_s: float) -> int:
    """Open pages with an injection in each text, until the time is up; return how many did harm."""
    shared = _shared()
    began, done, loads, faults = time.monotonic(), 0, 0, list[str]()
    clean = {job: built_pages(job, None, shared)[0] for job in JOBS}
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        system = shutil.which("chromium") or shutil.which("google-chrome")
        browser = playwright.chromium.launch(executable_path=system, args=QUIET)
        for turn in range(turns):
            if time.monotonic() - began > most_s:
                break
            job = JOBS[turn % len(JOBS)]
            files, count = built_pages(job, turn, shared)
            wrong, opened = harm(browser, files, clean[job], Path(folder))
            done, loads, faults = done + count, loads + opened, [*faults, *wrong]
            for said in wrong:
                print(f"  turn {turn}: {said}")
        browser.close()
    print(f"injections: {done:,} in {loads:,} pages opened, {len(faults)} did harm", flush=True)
    return len(faults)


def kills(count: int, most_s: float) -> int:
    """Kill runs that write a folder, until the time is up; return how many did harm."""
    with tempfile.TemporaryDirectory() as folder:
        found = killed_runs(Path(folder) / "T-1", count, most_s)
    for said in found.wrong:
        print(f"  {said}")
    print(f"kills: {found.kills:,}, {len(found.wrong)} did harm ({', '.join(found.remains)})")
    return len(found.wrong)


def _shared() -> pipeline.Shared:
    shared = pipeline.read_shared()
    if not isinstance(shared, pipeline.Shared):
        sys.exit("\n".join(map(str, shared)))
    return shared


def main() -> None:
    """Read the command line, and leave with 1 if any case did harm."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=50_000, help="files through check")
    parser.add_argument("--packages", type=int, default=500, help="files through package")
    parser.add_argument("--injections", type=int, default=300, help="turns of the injections")
    parser.add_argument("--kills", type=int, default=200, help="runs killed while they write")
    parser.add_argument("--seed", type=int, default=0, help="of the first file")
    parser.add_argument("--minutes", type=float, default=600, help="at most for each of the four")
    asked = parser.parse_args()
    most_s, first = asked.minutes * 60, asked.seed
    did_harm = (
        kills(asked.kills, most_s)
        + table("check", checked, range(first, first + asked.count), most_s)
        + table("package", packaged, range(first, first + asked.packages), most_s)
        + injections(asked.injections, most_s)
    )
    sys.exit(1 if did_harm else 0)


if __name__ == "__main__":
    main()
