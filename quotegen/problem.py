"""Problems are values: what is wrong, where, and what to do about it."""

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How bad: an error stops the package, a warning is only said."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A place in a file that a person typed; line and column count from one."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One fault in the input.

    Attributes:
        code: stable name of the kind of fault, such as `unknown-key`.
        source: where in which file.
        path: the same place as a document path, such as `placements[0].thickness`.
        message: what was found and what is allowed.
        hint: what to do, or the near miss.
    """

    code: str
    source: Source
    message: str
    hint: str = ""
    path: str = ""
    severity: Severity = Severity.ERROR

    def __str__(self) -> str:
        kind = "warning: " if self.severity is Severity.WARNING else ""
        hint = f"\n    {self.hint}" if self.hint else ""
        return f"{self.source}: {kind}{self.message}{hint}"


def in_file_order(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Return the problems as a reader meets them: by file, line and column."""
    return tuple(sorted(problems, key=lambda p: (p.source.file, p.source.line, p.source.column)))


def has_error(problems: tuple[Problem, ...]) -> bool:
    """Say whether any of the problems stops the package."""
    return any(p.severity is Severity.ERROR for p in problems)
