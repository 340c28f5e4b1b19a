"""Sheet 7, standards, safety and care: what is normal, what to mind, how to keep it."""

import re
from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.explain.sheets.care_rows import care_rows
from quotegen.explain.sheets.change_sheet import clause
from quotegen.explain.sheets.job_features import features_of, finish_kinds
from quotegen.explain.sheets.views import StandardsSheet
from quotegen.explain.words.prose import prose
from quotegen.explain.words.rows import Row
from quotegen.explain.words.rule_words import rule_about, rule_text
from quotegen.reading.content.content import CareFront, Page, SafetyFront
from quotegen.trade.rules import Certainty, Rule

EVERY_FINISH = "all"
BEHIND_THE_DATES = ("walk_wait", "furniture_wait", "sealer_walk_wait", "sealer_load_wait")
"""Rules that a reader meets as dates, not as figures in a text."""


def standard_sheet(results: Results) -> StandardsSheet:
    """Build sheet 7 from the pages that fit this job."""
    content, features = results.content, features_of(results)
    safety = [p for p in content.safety.values() if features & set(p.front.applies)]
    care = care_pages(results)
    printed = _printed(results, (*safety, *care))
    return StandardsSheet(
        promised=clause("promised", results),
        normal=clause("what_is_normal", results),
        care_dates=care_rows(results, results.chosen_visits),
        safety=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in safety),
        care=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in care),
        questions=tuple(
            prose(p.front.id, p.front.question, p.markdown, results)
            for p in content.questions.values()
            if features & set(p.front.applies)
        ),
        glossary=tuple(_glossary(results, printed)),
        sources=tuple(_sources(results, printed)),
    )


def care_pages(results: Results) -> list[Page[CareFront]]:
    """The pages on care that fit the finishes of the job."""
    finishes = {EVERY_FINISH, *(kind.value for kind in finish_kinds(results))}
    return [p for p in results.content.care.values() if finishes & set(p.front.finishes)]


def _printed(results: Results, chosen: tuple[Page[SafetyFront] | Page[CareFront], ...]) -> str:
    """All texts of content/ that this quote prints."""
    content = results.content
    scope = (content.scope[item].markdown for item in results.scope_items())
    clauses = (page.markdown for page in content.clauses.values())
    questions = (page.markdown for page in content.questions.values())
    return "\n".join((*(page.markdown for page in chosen), *scope, *clauses, *questions))


def _glossary(results: Results, printed: str) -> Iterator[Row]:
    """The words of the trade that stand in the texts, with what they mean."""
    for word, meaning in sorted(results.content.glossary.items()):
        if re.search(rf"\b{word}", printed, re.IGNORECASE):
            yield Row(name=word, text=meaning)


def _sources(results: Results, printed: str) -> Iterator[Row]:
    """Each source once, with the printed figures that rest on it."""
    by_source: dict[str, list[str]] = {}
    used = {*re.findall(r"\{\{ rule\.(\w+) \}\}", printed), *BEHIND_THE_DATES}
    for rule_id in sorted(used):
        rule = results.rules.rule(rule_id)
        by_source.setdefault(_source(results, rule), []).append(_stated(results, rule))
    for source, stated in sorted(by_source.items()):
        yield Row(name=source, text=" ".join(stated))


def _stated(results: Results, rule: Rule) -> str:
    about = rule_about(results.words, rule)
    value = rule_text(results, rule.rule_id)
    if rule.sure is not Certainty.PUBLISHED:
        return results.words("source_stated", about=about, value=value)
    clause = rule.at(results.job.quote_date).reference.clause
    return results.words("source_stated_at", about=about, value=value, clause=clause)


def _source(results: Results, rule: Rule) -> str:
    """The publication that a rule rests on, or how sure it is without one."""
    words, reference = results.words, rule.at(results.job.quote_date).reference
    named = f"{reference.title} ({reference.edition})"
    if rule.rule_id in results.job.company.standards.own_inches():
        return words("source_own", reference=named)
    return named if rule.sure is Certainty.PUBLISHED else words("source_practice")
