"""A sheet for the owner alone: what comes first, facts, and sections with tables. Only text."""

from collections.abc import Iterable
from dataclasses import dataclass

from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.wording import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """One row: its name, its cells, and a small note below the name.

    Attributes:
        group: whether it heads the rows below it.
        strong: whether it is a sum.
    """

    name: str
    cells: tuple[str, ...] = ()
    note: str = ""
    group: bool = False
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table whose first column names the rows; the other columns are numbers."""

    head: tuple[str, ...]
    rows: tuple[TableRow, ...]


def table(words: Words, head: tuple[str, ...], rows: Iterable[TableRow]) -> Table:
    """Make a table of rows under the fixed words of some keys."""
    return Table(head=tuple(words(key) for key in head), rows=tuple(rows))


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A titled part of a sheet: sentences, a list of points, a table; each may be empty."""

    id: str
    title: str
    lines: tuple[str, ...] = ()
    points: tuple[str, ...] = ()
    table: Table | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """A few sums under one another, to take in at a look.

    Attributes:
        rows: each with one sum, and perhaps a note.
        verdict: what follows from them, in a sentence or two.
    """

    title: str
    rows: tuple[TableRow, ...]
    verdict: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Folded:
    """Sections that stay closed until somebody opens them."""

    id: str
    title: str
    lines: tuple[str, ...]
    sections: tuple[Section, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnersSheet:
    """One sheet for the owner alone.

    Attributes:
        lead: what matters most, first.
        sums: the same as short lists of sums, where it is about several.
        facts: name and text.
        sections: in their order, none of them empty.
        folded: what comes last and stays closed, if anything.
    """

    head: PaperHead
    lead: tuple[str, ...]
    sums: tuple[Sums, ...] = ()
    facts: tuple[tuple[str, str], ...]
    sections: tuple[Section, ...]
    folded: Folded | None = None


def with_content(sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """The sections that have something to say, in their order."""
    return tuple(s for s in sections if s.lines or s.points or (s.table and s.table.rows))
