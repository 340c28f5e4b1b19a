"""Content pages to HTML: rules and terms are filled in, then Markdown is rendered."""

import re
from functools import cache, lru_cache

import markdown
from jinja2 import StrictUndefined, Template
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup, escape

from quotegen.explain.results import Results
from quotegen.explain.words.no_break import in_one_piece, ties
from quotegen.explain.words.rows import Prose
from quotegen.explain.words.rule_words import rule_text

_MARKS = re.compile(r"[`*_\[\]\\]")
_BEGINS_A_BLOCK = re.compile(r"^(\d*)([-+#=.])")
"""A list, a heading or a rule, which only the beginning of a line can be."""


class _RuleTexts:
    """Answers `rule.some_id` with the text of the rule on the date of the quote."""

    def __init__(self, results: Results) -> None:
        self._results = results

    def __getattr__(self, rule_id: str) -> str:
        return rule_text(self._results, rule_id)


@cache
def _environment() -> ImmutableSandboxedEnvironment:
    return ImmutableSandboxedEnvironment(undefined=StrictUndefined, autoescape=False)


@lru_cache(maxsize=512)  # more than there are pages, so that each is parsed once for all jobs
def _template(text: str) -> Template:
    return _environment().from_string(text)


def filled(text: str, results: Results) -> str:
    """Fill the texts of rules and the company's terms into a piece of Markdown."""
    adjustment, words = results.job.company.adjustment, results.words
    terms = {
        "rounding": words.area_step(),
        "no_pour_above": words.percent(adjustment.no_pour_above),
        "reopen_outside": words.percent(adjustment.reopen_outside),
        "warranty": as_typed(sentence(results.job.company.warranty)),
    }
    if "{" not in text:
        return text
    return _template(text).render(rule=_RuleTexts(results), terms=terms)


def as_typed(text: str) -> str:
    """Write a text of the owner's so that neither HTML nor Markdown finds anything in it."""
    safe = _MARKS.sub(lambda mark: f"&#{ord(mark[0])};", str(escape(text.strip())))
    return _BEGINS_A_BLOCK.sub(lambda mark: f"{mark[1]}&#{ord(mark[2])};", safe)


def html(text: str, results: Results) -> Markup:
    """Render a piece of our own Markdown as HTML."""
    tied = in_one_piece(ties(results.words)(filled(text, results)))
    return Markup(markdown.markdown(tied, output_format="html"))  # noqa: S704


def prose(page_id: str, title: str, text: str, results: Results) -> Prose:
    """Render a page under its title."""
    return Prose(id=page_id, title=title, html=html(text, results))


def clause(clause_id: str, results: Results) -> Prose:
    """Render one clause under its title."""
    page = results.content.clauses[clause_id]
    return prose(clause_id, page.front.title, page.markdown, results)


def short_clause(clause_id: str, results: Results) -> Prose:
    """Render what the sheet says of a clause; in full it stands in the terms."""
    front = results.content.clauses[clause_id].front
    return prose(f"{clause_id}-short", front.title, front.short or "", results)


def sections(text: str) -> tuple[str, ...]:
    """Split a page at its level-2 headings, in order, without the headings."""
    parts = f"\n{text}".split("\n## ")[1:]
    return tuple(part.partition("\n")[2].strip() for part in parts)


def comma_joined(*parts: str | None) -> str:
    """The facts that there are, with commas between."""
    return ", ".join(part for part in parts if part)


def in_a_sentence(name: str) -> str:
    """Begin a name with a small letter, for its place inside a sentence.

    Not where its capital is its own: in `L-shaped`, `PVC pipe`, `Back Patio`.
    """
    plain = re.match(r"(?:[^\W\d_][^\WA-Z\d_]+|A)(?:$|\W+(?![A-Z]))", name)
    return name[:1].lower() + name[1:] if plain else name


def sentence(text: str) -> str:
    """Begin with a capital and end with a full stop, as a sentence of its own does."""
    plain = text.strip()
    return plain[:1].upper() + plain[1:] + ("" if plain.endswith((".", "?", "!")) else ".")
