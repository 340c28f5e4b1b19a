"""HTML to PDF: tagged, with bookmarks, from a document that fetches nothing.

The print engine is imported when something is printed: it is slow to load.
"""

import atexit
import gc
import logging
import os
import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime
from functools import lru_cache
from typing import TYPE_CHECKING

from quotegen.problem import Problem, Source

if TYPE_CHECKING:
    from weasyprint.text.fonts import FontConfiguration

_FONT_FACE = re.compile(r"@font-face \{[^}]*\}")


class PrintError(Exception):
    """The print engine complained about one of our documents; the message is its own."""


class CannotPrintError(Exception):
    """This machine lacks what prints; `problem` says what."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


def to_pdf(document: str, dated: date) -> bytes:
    """Print one HTML document as of a date: the same document on the same date is the same bytes.

    Raises:
        PrintError: the print engine complained, which no document of ours gives it cause to do.
    """
    from weasyprint import HTML
    from weasyprint.urls import FatalURLFetchingError, URLFetcher

    listener = _Listener()
    logger = logging.getLogger("weasyprint")
    logger.addHandler(listener)
    logger.setLevel(logging.WARNING)
    try:
        fetcher = URLFetcher(allowed_protocols=["data"], fail_on_errors=True)
        with _clock_at(dated), _collector_at_rest():
            page = HTML(string=document, url_fetcher=fetcher)
            fonts = _fonts(tuple(_FONT_FACE.findall(document)))
            pdf = page.write_pdf(pdf_variant="pdf/ua-1", font_config=fonts)
    except FatalURLFetchingError as error:  # no Exception, so nobody else would catch it
        raise PrintError(str(error)) from error
    finally:
        logger.removeHandler(listener)
    if listener.complaints:
        raise PrintError("; ".join(listener.complaints))
    return bytes(pdf)


def page_count(pdf: bytes) -> int:
    """Return the number of pages of a PDF that we printed; 0 for anything else."""
    found = re.search(rb"/Type /Pages\b[^>]*/Count (\d+)|/Count (\d+)[^>]*/Type /Pages\b", pdf)
    return int(found[1] or found[2]) if found else 0


@lru_cache(maxsize=4)
def _fonts(_faces: tuple[str, ...]) -> "FontConfiguration":
    """Return where the engine keeps the fonts of documents with the same faces, once unpacked."""
    from weasyprint.text.fonts import FontConfiguration

    return FontConfiguration()


atexit.register(_fonts.cache_clear)  # later Python is half gone, and their folder stays on the disk


@contextmanager
def _collector_at_rest() -> Iterator[None]:
    """Have nobody look for garbage meanwhile: the engine makes much, and keeps it to the end."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@contextmanager
def _clock_at(dated: date) -> Iterator[None]:
    """Give the engine the date of the quote for its time stamps, unless the builder set one."""
    name = "SOURCE_DATE_EPOCH"
    before = os.environ.get(name)
    midnight = datetime(dated.year, dated.month, dated.day, tzinfo=UTC)
    os.environ[name] = before or f"{midnight.timestamp():.0f}"
    try:
        yield
    finally:
        if before is None:
            del os.environ[name]


def engine_problem() -> Problem | None:
    """Return the problem of a machine without Pango, which the print engine cannot do without."""
    try:
        import weasyprint  # noqa: F401 - only to see whether it loads
    except OSError:
        return Problem(
            code="no-pango",
            source=Source(file="this machine"),
            message="the system library Pango is missing, which prints the PDF",
            hint="type: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0",
        )
    return None


class _Listener(logging.Handler):
    """Collects the warnings of the print engine instead of letting them scroll past."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.complaints: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.complaints.append(record.getMessage())
