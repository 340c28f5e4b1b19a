"""The owner's own pages, words and languages: `content/` beside company.yaml stands in for ours."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

from quotegen.problem import Problem
from quotegen.reading.content.content import (
    LANGUAGE_FILE,
    ROOMS,
    TEXT_FILES,
    Content,
    FrontMatter,
    Page,
    read_page,
)
from quotegen.reading.content.languages import locale_of, said_in, still_english, texts_to_say
from quotegen.reading.content.own_texts import own_texts
from quotegen.reading.fields.typed_fields import LANGUAGE
from quotegen.reading.yaml.letters import bundled_letters
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.typed_file import beside
from quotegen.reading.yaml.unreadable import LARGEST_FILE_BYTES, decode
from quotegen.trade.contract_law import ContractLaws
from quotegen.trade.rules import RuleBook

FOLDER = "content"
RULES_FILE, GLOSSARY_FILE = "rules.yaml", "glossary.yaml"
"""Words of rules and laws, which a language alone has, and of the trade."""
_MARK = re.compile(r"\{\{ (rule|terms)\.(\w+) \}\}")
_NO_TEXT = re.compile(r"<[A-Za-z!/?]|\]\(|\]:|\{\{|\{%|\{#")
"""HTML, links and pictures, and marks that nobody fills: a page is text, which we set."""


def with_own_pages(
    job: Path, ours: Content, rules: RuleBook, laws: ContractLaws, language: str | None
) -> tuple[Content, tuple[Problem, ...]]:
    """Return the content with the owner's pages and texts in place of ours, and their faults.

    A page stands in for the one of ours that has its id. It has as many headings as ours, and each
    `terms` mark of ours: a figure of company.yaml that the price goes by. One that says of which
    page of ours it was made (`of`) is warned of once ours is another.

    Args:
        job: the job file; content/ lies beside its company's file.
        ours: what we say in English.
        rules: what pages may name, and a language may say in its own words.
        laws: of which it may say what they ask for.
        language: that of the job: the name of a folder in content/, which stands in for both.
    """
    company = beside(job, "company.yaml")
    folder = (company or job).parent / FOLDER
    if company is None or not (folder.is_dir() or language):
        return ours, ()
    problems: list[Problem] = []
    under, _ = _laid_over(ours, folder, ours.labels, rules, problems)
    if language is None:
        return under, tuple(problems)
    locale = locale_of(folder / language)
    if isinstance(locale, tuple):
        return under, (*problems, *locale)
    to_say = texts_to_say(under.labels, rules, laws)
    over, texts = _laid_over(under, folder / language, to_say, rules, problems)
    labels = MappingProxyType(said_in(texts, under.labels))
    problems += still_english(folder / language, over, under, texts, to_say)
    return replace(over, locale=locale, labels=labels), tuple(problems)


def _laid_over(
    ours: Content,
    folder: Path,
    known: Mapping[str, str],
    rules: RuleBook,
    problems: list[Problem],
) -> tuple[Content, Mapping[str, str]]:
    """Return content with the files of a folder over it, and the texts that stood there.

    Args:
        ours: what they are laid over.
        folder: the owner's, or that of a language in it.
        known: the texts that may stand there.
        rules: what pages may name.
        problems: gets what is wrong with the files.
    """
    texts: dict[str, str] = {}
    changed: dict[str, Any] = {}
    terms = _terms(*(page for room in ROOMS for page in getattr(ours, room).values()))
    is_language = (folder / LANGUAGE_FILE).is_file()
    for room in _entries(folder) if folder.is_dir() else ():
        if room.name == LANGUAGE_FILE or re.fullmatch(LANGUAGE, room.name):
            continue  # a language is read where a job asks for it
        if room.name in TEXT_FILES or (is_language and room.name == RULES_FILE):
            said, faults = own_texts(room, known)
            texts |= said
            problems += faults
        elif room.name == GLOSSARY_FILE:
            said, faults = own_texts(room, None)
            kept = {} if is_language else ours.glossary
            changed["glossary"] = MappingProxyType({**kept, **said})
            problems += faults
        elif room.name not in ROOMS or not room.is_dir():
            said_of = f"`{room.name}` is no folder of pages and no file of texts"
            problems.append(_unknown(room, said_of, (*ROOMS, *TEXT_FILES)))
        else:
            pages, faults = _pages_over(getattr(ours, room.name), room, rules, terms)
            changed[room.name] = pages
            problems += faults
    labels = MappingProxyType({**ours.labels, **texts})
    return replace(ours, labels=labels, **changed), texts


def _pages_over(
    ours: Mapping[str, Page[Any]], room: Path, rules: RuleBook, terms: frozenset[str]
) -> tuple[Mapping[str, Page[Any]], tuple[Problem, ...]]:
    """Return the pages of a room with an owner's in place of ours, and what is wrong with them."""
    pages, problems = dict(ours), list[Problem]()
    for file in _entries(room):
        own = _read(file, ROOMS[room.name])
        if isinstance(own, tuple):
            problems += own
        elif own.front.id not in pages:
            problems.append(_unknown(file, f"there is no page `{own.front.id}` here", pages))
        else:
            problems += _faults(file, own, pages[own.front.id], rules, terms)
            pages[own.front.id] = own
    in_order = sorted(pages.values(), key=lambda page: getattr(page.front, "order", 0))
    return MappingProxyType({page.front.id: page for page in in_order}), tuple(problems)


def _entries(folder: Path) -> list[Path]:
    """What lies in a folder, by name, without what a desktop leaves there unseen."""
    return sorted(entry for entry in folder.iterdir() if not entry.name.startswith("."))


def _unknown(entry: Path, said: str, allowed: Iterable[str]) -> Problem:
    hint = f"allowed here: {', '.join(sorted(allowed))}"
    return Places(str(entry)).fault((), "own-page-unknown", said, hint)


def _read(file: Path, model: type[FrontMatter]) -> Page[FrontMatter] | tuple[Problem, ...]:
    try:
        with file.open("rb") as opened:
            data = opened.read(LARGEST_FILE_BYTES + 1)
    except OSError as error:
        said = f"the page cannot be opened: {(error.strerror or 'it cannot be read').lower()}"
        return (Places(str(file)).fault((), "cannot-read", said, "only pages belong here"),)
    text = decode(data, str(file), len(data))
    if isinstance(text, Problem):
        return (text,)
    return read_page(text.replace("\r\n", "\n").encode(), str(file), model)


def _faults(
    file: Path, own: Page[Any], ours: Page[Any], rules: RuleBook, terms: frozenset[str]
) -> Iterator[Problem]:
    """Yield what a page of the owner's lacks, and what it holds that no page can."""
    page = Places(str(file))
    if own.front.of not in {None, ours.digest}:
        said = "our page has changed since yours was made of it"
        hint = f"compare the two; when yours says all that it should, type `of: {ours.digest}`"
        yield page.warning((), "own-page-behind", said, hint)
    for name in sorted(_terms(ours) - _terms(own)):
        said = f"the page lacks {{{{ terms.{name} }}}}, which ours has"
        hint = "it prints the figure of company.yaml that the price goes by; put it in"
        yield page.fault((), "own-page-lacks", said, hint)
    if (found := _headings(own)) != (wanted := _headings(ours)):
        said = f"the page has {found} headings (##), and ours has {wanted}"
        yield page.fault((), "own-page-lacks", said, "each has its place on the sheet")
    known: Mapping[str, Iterable[str]] = {"rule": rules.rules, "terms": terms}
    for kind, name in _MARK.findall(own.markdown):
        if name not in known[kind]:
            hint = "copy a mark from a page of ours"
            yield page.fault((), "own-page-mark", f"nothing is named {kind}.{name}", hint)
    if odd := _NO_TEXT.search(_MARK.sub("", own.markdown)):
        said = f"`{odd[0]}` begins HTML, a link, a picture or a mark that is not whole"
        hint = "a page is plain text, with marks such as {{ rule.crack_width }}"
        yield page.fault((), "own-page-mark", said, hint)
    for letter in sorted(set(own.markdown) - bundled_letters()):
        said = f"`{letter}` (U+{ord(letter):04X}) is not among the letters of the pages"
        yield page.fault((), "letter-unknown", said, "leave it out, or write it in Latin letters")


def _terms(*pages: Page[Any]) -> frozenset[str]:
    """The terms of the company that pages name."""
    marks = (mark for page in pages for mark in _MARK.findall(page.markdown))
    return frozenset(name for kind, name in marks if kind == "terms")


def _headings(page: Page[Any]) -> int:
    return f"\n{page.markdown}".count("\n## ")
