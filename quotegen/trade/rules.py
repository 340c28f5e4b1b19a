"""Reads the rule files that come with quotegen, and rejects a rule that lacks its source."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from types import MappingProxyType
from typing import Any

import yaml

from quotegen.quantity import decimal_from_text
from quotegen.trade.book import (
    Certainty,
    Range,
    Reference,
    Rule,
    RuleBook,
    RuleValue,
    Step,
    Value,
)

__all__ = [
    "Certainty",
    "Range",
    "Reference",
    "Rule",
    "RuleBook",
    "RuleFileError",
    "RuleValue",
    "Step",
    "load_rules",
]

_RULE_FIELDS = frozenset({"description", "unit", "values", "checked_on", "sure"})
_RULE_EXTRAS = frozenset({"note"})
_VALUE_FIELDS = frozenset({"from", "value", "reference"})
_REFERENCE_FIELDS = frozenset({"title", "edition", "clause"})
_REFERENCE_EXTRAS = frozenset({"link", "state"})


class RuleFileError(ValueError):
    """A fault in a rule file; names the file and the rule."""


@cache
def load_rules() -> RuleBook:
    """Read every rule that comes with quotegen, once."""
    return RuleBook(rules=MappingProxyType(read_rules()))


def rule_files() -> tuple[Traversable, ...]:
    """Return the rule files, by name."""
    folder = files("quotegen.trade") / "data"
    found = [entry for entry in folder.iterdir() if entry.name.endswith(".yaml")]
    return tuple(sorted(found, key=lambda entry: entry.name))


def read_rules() -> dict[str, Rule]:
    """Read every rule file into rules by name."""
    rules: dict[str, Rule] = {}
    for entry in rule_files():
        for rule in read_rule_text(entry.read_text(encoding="utf-8"), entry.name):
            if rule.rule_id in rules:
                raise _fault(entry.name, rule.rule_id, f"is also in {rules[rule.rule_id].file}")
            rules[rule.rule_id] = rule
    return rules


def read_rule_text(text: str, file: str) -> tuple[Rule, ...]:
    """Return the rules of one file; scalars stay text, so no number passes through a float.

    Raises:
        RuleFileError: a field is missing, unknown or of the wrong kind.
    """
    try:
        data = plain_yaml(text)
    except yaml.YAMLError as error:
        raise _fault(file, "(all)", f"is not YAML: {error}") from error
    return tuple(_rule(file, rule_id, fields) for rule_id, fields in _mapping(file, "", data))


def plain_yaml(text: str) -> Any:
    """Return YAML as text, lists and mappings only, read by libyaml where PyYAML has it."""
    loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
    return yaml.load(text, Loader=loader)  # noqa: S506 # a BaseLoader makes no objects


def _rule(file: str, rule_id: str, data: object) -> Rule:
    where = rule_id
    fields = _fields(file, where, data, _RULE_FIELDS, _RULE_EXTRAS)
    sure = _text(file, where, fields, "sure")
    if sure not in list(Certainty):
        raise _fault(file, where, f"sure is {sure!r}, not one of {', '.join(Certainty)}")
    values = fields["values"]
    if not isinstance(values, list) or not values:
        raise _fault(file, where, "values is not a list of one or more")
    read = [_rule_value(file, where, value) for value in values]
    read.sort(key=lambda value: value.from_date, reverse=True)
    if len({value.from_date for value in read}) < len(read):
        raise _fault(file, where, "two values start on the same date")
    return Rule(
        rule_id=rule_id,
        description=_text(file, where, fields, "description"),
        unit=_text(file, where, fields, "unit"),
        values=tuple(read),
        checked_on=_date(file, where, fields, "checked_on"),
        sure=Certainty(sure),
        note=_text(file, where, fields, "note") if "note" in fields else "",
        file=file,
    )


def _rule_value(file: str, where: str, data: object) -> RuleValue:
    fields = _fields(file, where, data, _VALUE_FIELDS)
    named = _fields(file, where, fields["reference"], _REFERENCE_FIELDS, _REFERENCE_EXTRAS)
    return RuleValue(
        from_date=_date(file, where, fields, "from"),
        value=_value(file, where, fields["value"]),
        reference=Reference(
            title=_text(file, where, named, "title"),
            edition=_text(file, where, named, "edition"),
            clause=_text(file, where, named, "clause"),
            link=_text(file, where, named, "link") if "link" in named else "",
            state=_text(file, where, named, "state") if "state" in named else "",
        ),
    )


def _value(file: str, where: str, data: object) -> Value:
    if isinstance(data, str):
        try:
            return decimal_from_text(data)
        except ValueError:
            return data
    if isinstance(data, list):
        rows = [_fields(file, where, row, frozenset({"at_least", "value"})) for row in data]
        steps = tuple(
            Step(
                at_least=_number(file, where, row["at_least"]),
                value=_number(file, where, row["value"]),
            )
            for row in rows
        )
        if not steps or list(steps) != sorted(steps, key=lambda step: step.at_least):
            raise _fault(file, where, "its steps do not rise")
        return steps
    table = {name: _number(file, where, cell) for name, cell in _mapping(file, where, data)}
    if table.keys() == {"least", "most"}:
        return Range(least=table["least"], most=table["most"])
    return MappingProxyType(table)


def _fields(
    file: str,
    where: str,
    data: object,
    needed: frozenset[str],
    allowed: frozenset[str] = frozenset(),
) -> Mapping[str, object]:
    fields = dict(_mapping(file, where, data))
    if missing := needed - fields.keys():
        raise _fault(file, where, f"lacks {', '.join(sorted(missing))}")
    if unknown := fields.keys() - needed - allowed:
        raise _fault(file, where, f"has unknown {', '.join(sorted(unknown))}")
    return fields


def _mapping(file: str, where: str, data: object) -> list[tuple[str, object]]:
    if not isinstance(data, dict) or not data:
        raise _fault(file, where or "(all)", "holds something else where names were expected")
    return list(data.items())


def _text(file: str, where: str, fields: Mapping[str, object], name: str) -> str:
    value = fields[name]
    if not isinstance(value, str) or not value.strip():
        raise _fault(file, where, f"{name} is empty or not text")
    return value.strip()


def _date(file: str, where: str, fields: Mapping[str, object], name: str) -> date:
    text = _text(file, where, fields, name)
    try:
        return date.fromisoformat(text)
    except ValueError as error:
        raise _fault(file, where, f"{name} is {text!r}, not a date like 2026-11-24") from error


def _number(file: str, where: str, data: object) -> Decimal:
    try:
        return decimal_from_text(str(data))
    except ValueError as error:
        raise _fault(file, where, str(error)) from error


def _fault(file: str, where: str, what: str) -> RuleFileError:
    return RuleFileError(f"{file}: rule {where} {what}")
