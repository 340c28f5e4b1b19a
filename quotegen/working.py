"""The working: how a figure came about, as a tree that a person can follow."""

from dataclasses import dataclass
from decimal import Decimal

from quotegen.problem import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of the arithmetic.

    Attributes:
        name: what is worked out, such as `Base, pool deck`.
        formula: the rule in words, such as `quantity x rate, to the cent`.
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
    inputs: tuple["Step", ...] = ()
    rules: tuple[str, ...] = ()
    source: Source | None = None


def given(name: str, value: Decimal, unit: str, source: Source | None = None) -> Step:
    """Return a step that was typed rather than worked out."""
    return Step(name=name, value=value, unit=unit, source=source)
