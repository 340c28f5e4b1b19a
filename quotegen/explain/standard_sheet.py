"""Sheet 7, standards, safety and care: what is normal, what to mind, how to keep it."""

import re
from collections.abc import Iterator

from quotegen.explain.care_rows import care_rows
from quotegen.explain.change_sheet import clause
from quotegen.explain.present import kinds, present
from quotegen.explain.prose import prose
from quotegen.explain.results import Results
from quotegen.explain.views import Row, StandardsSheet
from quotegen.trade.rules import Certainty, Rule

EVERY_FINISH = "all"


def standard_sheet(results: Results) -> StandardsSheet:
    """Build sheet 7 from the pages that fit this job."""
    content, there = results.content, present(results)
    finishes = {EVERY_FINISH, *(kind.value for kind in kinds(results))}
    safety = [p for p in content.safety.values() if there & set(p.front.applies)]
    care = [p for p in content.care.values() if finishes & set(p.front.finishes)]
    printed = (*(p.markdown for p in safety), *(p.markdown for p in care))
    return StandardsSheet(
        promised=clause("promised", results),
        normal=clause("what_is_normal", results),
        care_dates=care_rows(results),
        safety=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in safety),
        care=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in care),
        questions=tuple(
            prose(p.front.id, p.front.question, p.markdown, results)
            for p in content.questions.values()
        ),
        sources=tuple(_sources(results, printed)),
    )


def _sources(results: Results, printed: tuple[str, ...]) -> Iterator[Row]:
    """Name each source once, with the numbers on the printed pages that rest on it."""
    scope = (results.content.scope[item].markdown for item in results.scope_items())
    clauses = (page.markdown for page in results.content.clauses.values())
    questions = (page.markdown for page in results.content.questions.values())
    texts = "".join((*printed, *scope, *clauses, *questions))
    by_source: dict[str, list[str]] = {}
    for rule_id in sorted(set(re.findall(r"\{\{ rule\.(\w+) \}\}", texts))):
        rule = results.rules.rule(rule_id)
        by_source.setdefault(_source(results, rule), []).append(_stated(results, rule))
    for source, stated in sorted(by_source.items()):
        yield Row(name=source, text=" ".join(stated))


def _stated(results: Results, rule: Rule) -> str:
    on = results.job.quote_date
    value, reference = results.rules.text(rule.rule_id, on), rule.at(on).reference
    plain = rule.description.removesuffix(".")
    if rule.sure is Certainty.PRACTICE:
        return f"{plain}: {value}."
    return f"{plain}: {value} ({reference.clause})."


def _source(results: Results, rule: Rule) -> str:
    """Name the publication, so that what rests on one stands together."""
    words, reference = results.words, rule.at(results.job.quote_date).reference
    named = f"{reference.title} ({reference.edition})"
    if rule.rule_id in results.job.company.standards.own_inches():
        return words("source_own", reference=named)
    return {
        Certainty.PUBLISHED: named,
        Certainty.PRACTICE: words("source_practice"),
        Certainty.MEMORY: words("source_memory", reference=named),
    }[rule.sure]
