"""How long each paper takes to print, and its slowest page; beside it the engine on plain styles.

A rule of ours that makes the engine lay out twice shows here: as a page that stands out, and as
a paper that takes many times what the same elements take with hardly any style.
"""

import re
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from typing import Any

from weasyprint.layout import page as engine

from quotegen.publish.pdf import to_pdf

PLAIN = (
    "@page { size: letter; margin: 1in } body { font: 10pt sans-serif }"
    "svg { max-width: 100% } .screen-only { display: none }"
)
DATED = date(2026, 1, 1)
_STYLES = re.compile(r"<style>.*?</style>|<link[^>]*>", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Printed:
    """One paper: own CPU seconds as it is and in plain styles, and those of its slowest page."""

    name: str
    seconds: float
    plain_seconds: float
    pages: int
    slowest_page: int
    slowest_seconds: float


def printed(papers: Mapping[str, str]) -> list[Printed]:
    """Print each paper twice, once in plain styles, after a first one that warms the engine."""
    to_pdf(next(iter(papers.values())), DATED)
    return [_printed(name, html) for name, html in papers.items()]


def _printed(name: str, html: str) -> Printed:
    with _pages_timed() as spent:
        seconds = cpu_seconds(lambda: to_pdf(html, DATED))
    plain = _STYLES.sub("", html).replace("</head>", f"<style>{PLAIN}</style></head>")
    slowest = max(spent, key=lambda page: spent[page])
    return Printed(
        name=name, seconds=seconds, plain_seconds=cpu_seconds(lambda: to_pdf(plain, DATED)),
        pages=len(spent), slowest_page=slowest + 1, slowest_seconds=spent[slowest],
    )  # fmt: skip


def cpu_seconds(work: Callable[[], object]) -> float:
    """Return the processor's time of this process: others on the machine count little."""
    start = time.process_time()
    work()
    return time.process_time() - start


@contextmanager
def _pages_timed() -> Iterator[dict[int, float]]:
    """Note how long the engine takes for each page, all its rounds together."""
    spent: dict[int, float] = {}
    make = engine.remake_page

    def timed(index: int, *rest: Any) -> Any:
        start = time.process_time()
        made = make(index, *rest)
        spent[index] = spent.get(index, 0.0) + time.process_time() - start
        return made

    engine.remake_page = timed
    try:
        yield spent
    finally:
        engine.remake_page = make


def print_papers(rows: list[Printed]) -> None:
    """Print the table, and the slowest page of all."""
    print(f"\n  {'paper':<20}{'s':>7}{'plain':>8}{'pages':>7}{'s/page':>8}   slowest page")
    for row in rows:
        each = row.seconds / max(1, row.pages)
        print(f"  {row.name:<20}{row.seconds:7.2f}{row.plain_seconds:8.2f}{row.pages:7}{each:8.2f}"
              f"   {row.slowest_page}, {row.slowest_seconds:.2f} s")  # fmt: skip
    slowest = max(rows, key=lambda row: row.slowest_seconds)
    print(f"\n  The slowest page is {slowest.slowest_page} of {slowest.name}, "
          f"{slowest.slowest_seconds:.2f} s.")  # fmt: skip
