"""Rows and prose: what sheets and papers are made of. Only text, no results."""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A name and its text, or a name, its text and an amount."""

    name: str
    text: str
    amount: str = ""
    mark: str = ""

    @property
    def named(self) -> str:
        """The name, and after a comma the text."""
        return f"{self.name}, {self.text}" if self.text else self.name


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """A page or clause of content/: its title, and its body as HTML."""

    id: str
    title: str
    html: Markup
