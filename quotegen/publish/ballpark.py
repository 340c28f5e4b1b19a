"""The ballpark of a first visit: as text for the screen, and on one page for the truck."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from quotegen.explain.private.owners_sheet import OwnersSheet, Table
from quotegen.explain.wording import Words
from quotegen.publish.pdf import to_pdf
from quotegen.publish.web.html import render


@dataclass(frozen=True, slots=True, kw_only=True)
class BallparkPage:
    """The sheet, and what it takes to print it."""

    sheet: OwnersSheet
    words: Words
    theme: Path
    dated: date

    def text(self) -> str:
        """Return the sheet as plain text."""
        return "\n".join(_lines(self.sheet)) + "\n"

    def pdf(self) -> bytes:
        """Print the sheet."""
        html = render("ballpark.html.j2", self.sheet, self.words, self.theme, on_paper=True)
        return to_pdf(html, self.dated)


def _lines(sheet: OwnersSheet) -> Iterator[str]:
    yield sheet.head.title
    yield from sheet.lead
    for section in sheet.sections:
        yield ""
        yield section.title
        yield from (f"  {line}" for line in (*section.lines, *section.points))
        if section.table is not None:
            yield from _rows(section.table)


def _rows(table: Table) -> Iterator[str]:
    """Write rows with their cells under one another; a strong row is marked."""
    cells = [(row.name, *row.cells) for row in table.rows]
    widths = [max(map(len, column)) for column in zip(*cells, strict=True)]
    for row, (name, *others) in zip(table.rows, cells, strict=True):
        columns = (f"{cell:>{width}}" for cell, width in zip(others, widths[1:], strict=True))
        mark = "  <-" if row.strong else ""
        yield "  " + "  ".join((f"{name:<{widths[0]}}", *columns)) + mark
