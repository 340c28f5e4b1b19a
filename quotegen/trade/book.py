"""The rule book: dated trade numbers, looked up by the quote date and never by today's date.

A rule's value takes one of five shapes: a number, a piece of text, a range (`least` and `most`),
a table of named numbers, or steps (from `at_least` this size up, the value is that).
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType
from typing import TypeAlias

from quotegen.trade.wording import number_text, with_unit

PER_CENT = Fraction("1/100")


class Certainty(StrEnum):
    """How sure we are that a rule is what its source says."""

    PUBLISHED = "published"
    PRACTICE = "common practice"
    MEMORY = "from memory"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """Where a value was published.

    Attributes:
        link: only where it leads to the publisher.
        state: whose own publication it is, by its two letters; empty where it holds in all of them.
    """

    title: str
    edition: str
    clause: str
    link: str = ""
    state: str = ""

    def __str__(self) -> str:
        return f"{self.title} ({self.edition}), {self.clause}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """From least to most, both inclusive."""

    least: Decimal
    most: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A value that holds from one size up to the next step."""

    at_least: Decimal
    value: Decimal


Value: TypeAlias = Decimal | str | Range | Mapping[str, Decimal] | tuple[Step, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleValue:
    """What a rule says, starting on a date."""

    from_date: date
    value: Value
    reference: Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule of the trade.

    Attributes:
        rule_id: its name in data, code and content.
        unit: what its numbers count, in words for people; `text` where it has no number.
        values: newest first.
        checked_on: when somebody last compared it with its source.
        sure: how sure we are.
        note: a disagreement between sources, and why this one was chosen.
        file: the data file that holds it.
    """

    rule_id: str
    description: str
    unit: str
    values: tuple[RuleValue, ...]
    checked_on: date
    sure: Certainty
    note: str = ""
    file: str = ""

    def at(self, on: date) -> RuleValue:
        """Return what the rule said on a date.

        Raises:
            LookupError: the rule had not started.
        """
        for value in self.values:
            if value.from_date <= on:
                return value
        first = self.values[-1].from_date
        message = f"rule {self.rule_id} starts on {first}, so it says nothing on {on}"
        raise LookupError(message)

    def with_own(self, number: Decimal, on: date) -> "Rule":
        """Return the rule with a company's own number, starting on a date."""
        own = replace(self.at(on), from_date=on, value=number)
        return replace(self, values=(own, *(v for v in self.values if v.from_date < on)))


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleBook:
    """All rules by id. Every lookup needs the quote date."""

    rules: Mapping[str, Rule]

    def with_own(self, own: Mapping[str, Decimal], on: date) -> "RuleBook":
        """Return a book with a company's own numbers in place of some, starting on a date.

        The reference stays the source's: it is what the company's number replaces.
        """
        changed = {rule_id: self.rule(rule_id).with_own(number, on)
                   for rule_id, number in own.items()}  # fmt: skip
        return RuleBook(rules=MappingProxyType({**self.rules, **changed}))

    def rule(self, rule_id: str) -> Rule:
        """Return a rule.

        Raises:
            LookupError: no rule has that id.
        """
        if rule_id not in self.rules:
            message = f"there is no trade rule named {rule_id}"
            raise LookupError(message)
        return self.rules[rule_id]

    def number(self, rule_id: str, on: date) -> Decimal:
        """Return the number that a rule gives on a date."""
        value = self._value(rule_id, on)
        if not isinstance(value, Decimal):
            raise _other_shape(rule_id, "a number")
        return value

    def exact(self, rule_id: str, on: date) -> Fraction:
        """Return the number that a rule gives on a date as a fraction, for exact arithmetic."""
        return Fraction(self.number(rule_id, on))

    def range(self, rule_id: str, on: date) -> Range:
        """Return the range that a rule gives on a date."""
        value = self._value(rule_id, on)
        if not isinstance(value, Range):
            raise _other_shape(rule_id, "a range")
        return value

    def table(self, rule_id: str, on: date) -> Mapping[str, Decimal]:
        """Return the table of named numbers that a rule gives on a date."""
        value = self._value(rule_id, on)
        if not isinstance(value, Mapping):
            raise _other_shape(rule_id, "a table")
        return value

    def step(self, rule_id: str, size: Fraction, on: date) -> Fraction:
        """Return the value of the last step that a size reaches.

        Raises:
            LookupError: the size is below the first step.
        """
        steps = self.steps(rule_id, on)
        reached = [step for step in steps if step.at_least <= size]
        if not reached:
            message = f"rule {rule_id} starts at {steps[0].at_least}, so it says nothing at {size}"
            raise LookupError(message)
        return Fraction(reached[-1].value)

    def steps(self, rule_id: str, on: date) -> tuple[Step, ...]:
        """Return the steps that a rule gives on a date."""
        steps = self._value(rule_id, on)
        if not isinstance(steps, tuple):
            raise _other_shape(rule_id, "steps")
        return steps

    def text(self, rule_id: str, on: date) -> str:
        """Return the value on a date as people read it, such as `10 ft` or `1/4 in`."""
        unit = self.rule(rule_id).unit
        value = self._value(rule_id, on)
        if isinstance(value, str):
            return value
        if isinstance(value, Decimal):
            return with_unit(number_text(value, unit), unit, one=value == 1)
        if isinstance(value, Range):
            ends = f"{number_text(value.least, unit)} to {number_text(value.most, unit)}"
            return with_unit(ends, unit, one=False)
        raise _other_shape(rule_id, "a number, a range or text")

    def _value(self, rule_id: str, on: date) -> Value:
        return self.rule(rule_id).at(on).value


def _other_shape(rule_id: str, wanted: str) -> TypeError:
    return TypeError(f"trade rule {rule_id} is not {wanted}")
