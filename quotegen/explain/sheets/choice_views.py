"""What there is to choose on the page, as a template gets it: only text."""

from dataclasses import dataclass

from quotegen.explain.drawing.svg import Drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One thing to choose.

    Attributes:
        value: its part of the key of a combination.
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
    """Options of which one must be chosen; `id` is `finish`, `part.<placement>` or `color`."""

    id: str
    name: str
    options: tuple[Option, ...]


TextRows = tuple[tuple[str, ...], ...]
"""The rows of a list or a table, each the texts of its cells."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CombinationTexts:
    """One choice among all options, with every text that follows from it.

    Attributes:
        key: the chosen values, group by group, then the extras; it stands in the address.
        texts: one for each of the sheet's `text_names`.
        rows: one for each of the sheet's `row_names`.
    """

    key: str
    texts: tuple[str, ...]
    rows: tuple[TextRows, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceSheet:
    """What there is to choose; all of it is empty where there is one combination only.

    Attributes:
        groups: what one of must be chosen.
        extras: what may be added.
        text_names, row_names: the places on the page that a choice changes.
        combinations: the first is the quote.
    """

    groups: tuple[OptionGroup, ...] = ()
    extras: tuple[Option, ...] = ()
    text_names: tuple[str, ...] = ()
    row_names: tuple[str, ...] = ()
    combinations: tuple[CombinationTexts, ...] = ()
