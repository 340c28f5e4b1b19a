"""What the homeowner chooses among, as text: the controls, and what each choice says."""

from dataclasses import dataclass

from quotegen.explain.svg import Drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One thing to choose.

    Attributes:
        value: its part of the key of a way.
        name, text: what it is.
        amount: the total with it, or what an extra adds, all else as quoted; empty where all
            else as quoted does not go with it.
        chosen: whether the quote has it.
    """

    value: str
    name: str
    text: str
    amount: str
    chosen: bool
    swatch: Drawing | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionGroup:
    """Options of which one is chosen; `id` is `finish`, `part.<placement>` or `colour`."""

    id: str
    name: str
    options: tuple[Option, ...]


TextRows = tuple[tuple[str, ...], ...]
"""The rows of a list or a table, each the texts of its cells."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to choose among all options, with every text that follows from it.

    Attributes:
        key: the chosen values, group by group, then the extras; it stands in the address.
        texts: one for each of the sheet's `text_names`.
        rows: one for each of the sheet's `row_names`.
    """

    key: str
    texts: tuple[str, ...]
    rows: tuple[TextRows, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TotalsRow:
    """The totals of one choice of finishes and colours, with each set of extras that is shown."""

    name: str
    visits: str
    totals: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceSheet:
    """What there is to choose; with one way only there is nothing, and all of it is empty.

    Attributes:
        groups: what one of must be chosen.
        extras: what may be added.
        text_names, row_names: the places on the page that a choice changes.
        ways: every combination; the first is the quote.
        columns: what is added, over the columns of `totals`.
        totals: the combinations in a table.
        totals_note: what the table leaves out, if anything.
    """

    groups: tuple[OptionGroup, ...]
    extras: tuple[Option, ...]
    text_names: tuple[str, ...]
    row_names: tuple[str, ...]
    ways: tuple[Way, ...]
    columns: tuple[str, ...]
    totals: tuple[TotalsRow, ...]
    totals_note: str
