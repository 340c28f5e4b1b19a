"""A row of text: what most tables and lists of a sheet are made of."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A name and its text, or a name, its text and an amount."""

    name: str
    text: str
    amount: str = ""
    mark: str = ""

    @property
    def named(self) -> str:
        """The name and the text in one."""
        return f"{self.name}, {self.text}" if self.text else self.name
