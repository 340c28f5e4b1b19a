"""What the ledger says of each thing that was frozen: JSON, which outlives the program."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from pydantic import TypeAdapter, ValidationError


class Kind(StrEnum):
    """What an entry freezes.

    REVISION: a quote as it was sent. ACCEPTED: the customer's yes. AFTER: what was handed out
    later, such as a final measurement, change orders or the care card.
    """

    REVISION = "revision"
    ACCEPTED = "accepted"
    AFTER = "after"


@dataclass(frozen=True, slots=True, kw_only=True)
class FrozenChange:
    """A change order as it was issued, in dollars."""

    number: int
    amount: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """What an entry is, and what it says in figures.

    Attributes:
        on: the day of issuing or accepting.
        job: the name of the job file.
        finish, extras: as quoted, or as they were accepted.
        total: of the quote at that choice, in dollars.
        measured_total: of the contract after measuring, None before that.
        changes: the change orders so far.
        program, rules, content: the version of the program, and the SHA-256 of its rules of the
            trade and of its pages.
        before: the seal of the entry before this one; empty in the first.
    """

    kind: Kind
    quote: str
    revision: int
    customer: str
    job: str
    on: date
    finish: str
    extras: tuple[str, ...]
    total: Decimal
    measured_total: Decimal | None
    changes: tuple[FrozenChange, ...]
    program: str
    rules: str
    content: str
    before: str

    def to_json(self) -> bytes:
        """Return the facts as they are frozen."""
        return _FACTS.dump_json(self, indent=1) + b"\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class FrozenLine:
    """One line of a price as it was issued, in dollars."""

    id: str
    name: str
    placement: str | None
    amount: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class FrozenFinish:
    """The whole job at one finish as it was issued."""

    id: str
    name: str
    total: Decimal
    lines: tuple[FrozenLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FrozenFigures:
    """What is read again of the `figures.json` of an issued quote; the first finish is quoted."""

    finishes: tuple[FrozenFinish, ...]


def facts_of(data: bytes) -> Facts | None:
    """Read the facts of an entry, None where they cannot be understood."""
    try:
        return _FACTS.validate_json(data)
    except ValidationError:
        return None


def figures_of(data: bytes) -> FrozenFigures | None:
    """Read the figures of an issued quote, None where they cannot be understood."""
    try:
        found = _FIGURES.validate_json(data)
    except ValidationError:
        return None
    return found if found.finishes else None


_FACTS, _FIGURES = TypeAdapter(Facts), TypeAdapter(FrozenFigures)
