"""Another language beside English: every text is there, with the values that it must hold."""

import re

from quotegen.problem import Problem
from quotegen.reading.content.content import ROOMS, Content
from quotegen.reading.yaml.located import Places
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
            said = f"`{key}` lacks {', '.join(sorted(lost))}, which English has"
            sentences = Places("content/sentences.yaml")
            problems.append(
                sentences.fault((key,), "lost-value", said, "keep every name in braces")
            )
    for room in ROOMS:
        lacking = getattr(english, room).keys() - getattr(made, room).keys()
        for page in sorted(lacking):
            said, hint = f"there is no page `{page}`", "translate the one in content/en"
            problems.append(Places(f"content/{room}").fault((), "missing-page", said, hint))
    needed = (key for rule in rules.rules.values() for key in _rule_keys(rule))
    problems += [_missing(key) for key in needed if key not in made.labels]
    return tuple(problems)


def _missing(key: str) -> Problem:
    said = f"there is no text `{key}`"
    hint = "translate the one in content/en, or the rule's own words in trade/data"
    return Places("content/labels.yaml").fault((key,), "missing-text", said, hint)


def _rule_keys(rule: Rule) -> tuple[str, ...]:
    about = f"rule_{rule.rule_id}"
    said = any(isinstance(value.value, str) for value in rule.values)
    return (about, f"{about}_says") if said else (about,)
