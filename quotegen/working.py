"""The working: how a figure came about, as a tree that a person can follow."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from quotegen.problem import Source


class Operation(StrEnum):
    """What is done with the inputs of a step, from the first to the last, as on a calculator."""

    TIMES = "x"
    OVER = "/"
    PLUS = "+"
    MINUS = "-"


class Rounding(StrEnum):
    """How the result of a step is rounded."""

    EXACT = "exact"
    CENT = "half-up to the cent"
    CENT_DOWN = "down to the cent"
    TENTH = "half-up to 0.1"
    HUNDREDTH = "half-up to 0.01"
    WHOLE = "half-up to a whole number"


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of the arithmetic.

    Attributes:
        name: what is worked out, such as `Base, pool deck`.
        formula: the rule in words, such as `quantity x rate, to the cent`.
        operation: the same for a calculator, None for a value that was typed or measured.
        rounding: of the result.
        inputs: the steps or given values that it rests on, in the order of the formula.
        value: the result.
        unit: what the result counts, such as `sq ft` or `$`.
        rules: ids of the trade rules that were used.
        source: where a given value stands in a file.
    """

    name: str
    value: Decimal
    unit: str
    formula: str = ""
    operation: Operation | None = None
    rounding: Rounding = Rounding.EXACT
    inputs: tuple["Step", ...] = ()
    rules: tuple[str, ...] = ()
    source: Source | None = None


def given(name: str, value: Decimal, unit: str, source: Source | None = None) -> Step:
    """Return a step that was typed rather than worked out."""
    return Step(name=name, value=value, unit=unit, source=source)


def added(name: str, parts: tuple[Step, ...], value: Decimal) -> Step:
    """Return the sum of sums of money, which are in cents already."""
    return Step(
        name=name, formula="sum", operation=Operation.PLUS, inputs=parts, value=value, unit="$"
    )


def taken_away(name: str, whole: Step, part: Step, value: Decimal) -> Step:
    """Return the difference of two sums of money, which are in cents already."""
    return Step(
        name=name, formula="difference", operation=Operation.MINUS, inputs=(whole, part),
        value=value, unit="$",
    )  # fmt: skip
