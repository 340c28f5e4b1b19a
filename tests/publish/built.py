"""The examples, built once for all tests that read what was built."""

import fcntl
import os
import pickle
import re
from collections.abc import Mapping
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from tempfile import gettempdir

import pytest

from quotegen.pipeline import build
from tests.pricing.shop import JOBS, shared

EVERY_BUILT = pytest.mark.parametrize(
    "job_file",
    [pytest.param(path, id=path.stem, marks=pytest.mark.xdist_group(path.stem)) for path in JOBS],
)
"""Each example, all its tests on one worker, so that it is built once."""

RUN = os.environ.setdefault("QUOTEGEN_TEST_RUN", str(os.getpid()))  # workers inherit it
SHARED = Path(gettempdir()) / f"quotegen-built-{RUN}"
"""Where one run of the tests keeps what it has built; `tests/conftest.py` clears it away."""

BLOCKS = frozenset({
    "address", "article", "caption", "dd", "details", "div", "dt", "figcaption", "figure",
    "footer", "h1", "h2", "h3", "h4", "header", "hr", "li", "main", "nav", "ol", "p", "section",
    "summary", "svg", "table", "td", "text", "th", "title", "tr", "ul", "br", "body", "html",
})  # fmt: skip
UNSEEN = frozenset({"style", "script"})


@cache
def built(job_file: Path) -> Mapping[str, bytes]:
    """Return every file of an example's package, by path.

    All workers of a run share what one of them has built: the others wait for it and read it.
    """
    SHARED.mkdir(exist_ok=True)
    kept = SHARED / f"{job_file.stem}.pickle"
    with (SHARED / f"{job_file.stem}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not kept.exists():
            made = build((job_file,), shared())
            assert made.problems == ()
            (package,) = made.packages.values()
            kept.write_bytes(pickle.dumps(dict(package.artifacts)))
        artifacts: Mapping[str, bytes] = pickle.loads(kept.read_bytes())
    return artifacts


def page_text(page: str) -> str:
    """Return what a reader of a page reads, one block on a line."""
    reader = _Reader()
    reader.feed(page)
    reader.close()
    lines = (re.sub(r"\s+", " ", line).strip() for line in "".join(reader.parts).split("\n\n"))
    return "\n".join(line for line in lines if line) + "\n"


class _Reader(HTMLParser):
    """Collects the text of a page; words under a halo are drawn twice and count once."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.parts: list[str] = []
        self.unseen = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        drawn_under = tag == "text" and ("aria-hidden", "true") in attrs
        if tag in UNSEEN or drawn_under:
            self.unseen += 1
        if tag in BLOCKS:
            self.parts.append("\n\n")

    def handle_endtag(self, tag: str) -> None:
        if self.unseen and (tag in UNSEEN or tag == "text"):
            self.unseen -= 1
        if tag in BLOCKS:
            self.parts.append("\n\n")

    def handle_data(self, data: str) -> None:
        if not self.unseen:
            self.parts.append(data.replace("\n", " "))
