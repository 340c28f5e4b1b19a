"""Another language beside English: every text is there, with the values that it must hold."""

import re

from quotegen.problem import Problem, Source
from quotegen.reading.content.content import Content
from quotegen.trade.book import Rule, RuleBook

PLURAL = ("_zero", "_one", "_two", "_few", "_many")
_VALUE = re.compile(r"\{\w+\}|\{\{.*?\}\}")


def missing_texts(made: Content, english: Content, rules: RuleBook) -> tuple[Problem, ...]:
    """Find what a language does not say, or says without a value that English has.

    A plural form is free: a language has those that it needs, and `_other` always.
    """
    problems = []
    for key, text in english.labels.items():
        if key not in made.labels:
            if not key.endswith(PLURAL):
                problems.append(_missing(key))
        elif lost := set(_VALUE.findall(text)) - set(_VALUE.findall(made.labels[key])):
            problems.append(Problem(
                code="lost-value", source=Source(file="content/sentences.yaml"), path=key,
                message=f"`{key}` lacks {', '.join(sorted(lost))}, which English has",
                hint="keep every name in braces"))  # fmt: skip
    for room in (
        "scope",
        "finishes",
        "care",
        "safety",
        "site_observations",
        "responsibilities",
        "clauses",
        "questions",
    ):
        lacking = getattr(english, room).keys() - getattr(made, room).keys()
        problems += [Problem(
            code="missing-page", source=Source(file=f"content/{room}"),
            message=f"there is no page `{page}`",
            hint="translate the one in content/en") for page in sorted(lacking)]  # fmt: skip
    needed = (key for rule in rules.rules.values() for key in _rule_keys(rule))
    problems += [_missing(key) for key in needed if key not in made.labels]
    return tuple(problems)


def _missing(key: str) -> Problem:
    return Problem(
        code="missing-text", source=Source(file="content/labels.yaml"), path=key,
        message=f"there is no text `{key}`",
        hint="translate the one in content/en, or the rule's own words in trade/data",
    )  # fmt: skip


def _rule_keys(rule: Rule) -> tuple[str, ...]:
    about = f"rule_{rule.rule_id}"
    said = any(isinstance(value.value, str) for value in rule.values)
    return (about, f"{about}_says") if said else (about,)
