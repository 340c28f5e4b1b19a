"""Sheet 7, standards, safety and care: what is normal, what to mind, how to keep it."""

import re
from collections.abc import Iterator

from quotegen.explain.change_sheet import clause
from quotegen.explain.plan_sheet import against_something
from quotegen.explain.prose import prose
from quotegen.explain.results import Results
from quotegen.explain.rule_words import rule_about, rule_text
from quotegen.explain.views import Row, StandardsSheet
from quotegen.schedule.openings import DRIVEN_ON
from quotegen.spec.content import Page, QuestionFront, When
from quotegen.spec.rate_book import Sealer
from quotegen.takeoff.records import Against
from quotegen.trade.rules import Certainty, Rule

EVERY_FINISH = "all"


def standard_sheet(results: Results) -> StandardsSheet:
    """Build sheet 7 from the pages that fit this job."""
    content, present = results.content, frozenset(_present(results))
    kinds = {
        results.job.finish_of(p, results.job.finish)[1].kind.value for p in results.job.placements
    }
    safety = [p for p in content.safety.values() if present & set(p.front.applies)]
    care = [p for p in content.care.values() if {EVERY_FINISH, *kinds} & set(p.front.finishes)]
    printed = (*(p.markdown for p in safety), *(p.markdown for p in care))
    return StandardsSheet(
        normal=clause("what_is_normal", results),
        safety=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in safety),
        care=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in care),
        questions=tuple(
            prose(p.front.id, p.front.question, p.markdown, results)
            for p in _questions(results, present)
        ),
        sources=tuple(_sources(results, printed)),
    )


def _present(results: Results) -> Iterator[When]:
    """Yield what the job contains that a caution may speak of."""
    items, job = results.scope_items(), results.job
    yield When.ALWAYS
    if against_something(results, Against.POOL):
        yield When.POOL
    if against_something(results, Against.HOUSE):
        yield When.HOUSE
    if "steps" in items:
        yield When.STEPS
    if "joints" in items or "demolition" in items:
        yield When.SAW
    if any(job.finish_of(p, job.finish)[1].sealer is not Sealer.NONE for p in job.placements):
        yield When.SEALER
    if any(p.use in DRIVEN_ON for p in job.placements):
        yield When.DRIVE
    if "dig_out" in items or "demolition" in items:
        yield When.DIGGING


def _questions(results: Results, present: frozenset[When]) -> Iterator[Page[QuestionFront]]:
    for page in results.content.questions.values():
        if page.front.id != "bonding" or When.POOL in present:
            yield page


def _sources(results: Results, printed: tuple[str, ...]) -> Iterator[Row]:
    """Name each source once, with the numbers on the printed pages that rest on it."""
    scope = (results.content.scope[item].markdown for item in results.scope_items())
    clauses = (page.markdown for page in results.content.clauses.values())
    texts = "".join((*printed, *scope, *clauses))
    by_source: dict[str, list[str]] = {}
    for rule_id in sorted(set(re.findall(r"\{\{ rule\.(\w+) \}\}", texts))):
        rule = results.rules.rule(rule_id)
        by_source.setdefault(_source(results, rule), []).append(_stated(results, rule))
    for source, stated in sorted(by_source.items()):
        yield Row(name=source, text=" ".join(stated))


def _stated(results: Results, rule: Rule) -> str:
    about = rule_about(results.words, rule)
    return results.words("source_stated", about=about, value=rule_text(results, rule.rule_id))


def _source(results: Results, rule: Rule) -> str:
    words = results.words
    reference = str(rule.at(results.job.quote_date).reference)
    return {
        Certainty.PUBLISHED: reference,
        Certainty.PRACTICE: words("source_practice"),
        Certainty.MEMORY: words("source_memory", reference=reference),
    }[rule.sure]
