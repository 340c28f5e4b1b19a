"""The end of the guide: words of the trade, and where the printed figures come from."""

import re

from quotegen.explain.results import Results
from quotegen.explain.words.rows import Row
from quotegen.explain.words.rule_words import rule_about, rule_text
from quotegen.trade.rules import Certainty, Reference, Rule

BEHIND_THE_DATES = ("walk_wait", "furniture_wait", "sealer_walk_wait", "sealer_load_wait")
"""Rules that a reader meets as dates, not as figures in a text."""


def glossary_rows(results: Results, printed: str) -> tuple[Row, ...]:
    """The words of the trade that stand in the texts, with what they mean."""
    return tuple(
        Row(name=word, text=meaning)
        for word, meaning in sorted(results.content.glossary.items())
        if re.search(rf"\b{word}", printed, re.IGNORECASE)
    )


def source_rows(results: Results, printed: str) -> tuple[Row, ...]:
    """Each source once, with the printed figures that rest on it."""
    by_source: dict[str, list[str]] = {}
    used = {*re.findall(r"\{\{ rule\.(\w+) \}\}", printed), *BEHIND_THE_DATES}
    for rule_id in sorted(used):
        rule = results.rules.rule(rule_id)
        by_source.setdefault(_source(results, rule), []).append(_stated(results, rule))
    return tuple(
        Row(name=source, text=" ".join(stated)) for source, stated in sorted(by_source.items())
    )


def _stated(results: Results, rule: Rule) -> str:
    about = rule_about(results.words, rule)
    value = rule_text(results, rule.rule_id)
    reference = _published(results, rule)
    if reference is None:
        return results.words("source_stated", about=about, value=value)
    return results.words("source_stated_at", about=about, value=value, clause=reference.clause)


def _source(results: Results, rule: Rule) -> str:
    """The publication that a rule rests on; what was not read in print is the trade's practice."""
    if rule.rule_id in results.job.company.standards.own_inches():
        return results.words("source_own")
    reference = _published(results, rule)
    if reference is None:
        return results.words("source_practice")
    return f"{reference.title} ({reference.edition})"


def _published(results: Results, rule: Rule) -> Reference | None:
    """What a figure was read in: none for our own, and none where another state published it."""
    reference = rule.at(results.job.quote_date).reference
    own = rule.rule_id in results.job.company.standards.own_inches()
    elsewhere = reference.state not in {"", results.job.site.state}
    return None if own or elsewhere or rule.sure is not Certainty.PUBLISHED else reference
