"""The content pages: Markdown with front matter, read into typed pages."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from importlib.resources.abc import Traversable
from types import MappingProxyType
from typing import Generic, TypeVar

from babel import localedata

from quotegen.problem import Problem
from quotegen.reading.fields.typed_fields import Model, Slug, Text, WholeField, Word
from quotegen.reading.files.rate_book import FinishKind
from quotegen.reading.yaml.located import Document, Places, parse
from quotegen.reading.yaml.validate import validate


class When(StrEnum):
    """What a job must contain for a page to be printed."""

    ALWAYS = "always"
    POOL = "pool"
    STEPS = "steps"
    HOUSE = "house"
    SAW = "saw"
    SEALER = "sealer"
    DRIVE = "drive"
    WAY = "way"
    DIGGING = "digging"
    STEEL = "steel"
    STAMPED = "stamped"
    EXPOSED = "exposed"


class Language(Model):
    """How a language writes; `locale` as the Unicode CLDR names it, such as `en_US`."""

    locale: Word


class FrontMatter(Model):
    """What every page begins with; an owner's own says `of` which page of ours it was made."""

    id: Word
    of: Word | None = None
    rules: tuple[Slug, ...] = ()


class ScopeGroup(StrEnum):
    """What a scope item belongs to where a price is shown in groups."""

    GROUND = "ground"
    CONCRETE = "concrete"
    SURFACE = "surface"
    SITE = "site"


class ScopeFront(FrontMatter):
    """A scope item: what a price covers; what to ask any bidder of it, and how to check."""

    title: Word
    short: Word
    ask: Word
    check: Word
    order: WholeField
    group: ScopeGroup


class FinishFront(FrontMatter):
    """A kind of finish, honest both ways."""

    title: Word
    short: Word
    grip: Word
    heat: Word
    repair: Word
    judge: Word
    work: Word


class First(StrEnum):
    """The stretch after the pour that a page on care is about."""

    DAY = "day"
    WEEK = "week"
    MONTH = "month"


class CareFront(FrontMatter):
    """Care of the slab at one time; `finishes` says for which.

    A page on the `first` day, week or month is left out of a hand-over that comes later.
    """

    title: Word
    short: Word
    order: WholeField
    finishes: tuple[Word, ...]
    first: First | None = None


class SafetyFront(FrontMatter):
    """A caution; `applies` says on which jobs, `short` is its line on sheet 5."""

    title: Word
    short: Word
    order: WholeField
    applies: tuple[When, ...]


class SiteObservationFront(FrontMatter):
    """What is seen while we work: the page says of that day, `later` of a week after."""

    title: Word
    order: WholeField
    applies: tuple[When, ...]
    later: Word
    speak_up: Word


class DoneBefore(StrEnum):
    """What of ours waits for work of others."""

    START = "start"
    POUR = "pour"


class ResponsibilityFront(FrontMatter):
    """Work beside ours: by us where the price covers one of `ours`, else as the page says.

    `before` says what of ours waits for it, so that the page can name the day.
    """

    title: Word
    order: WholeField
    applies: tuple[When, ...]
    ours: tuple[Slug, ...]
    before: DoneBefore | None = None


class ClauseFront(FrontMatter):
    """A promise or a rule of the contract; `short` is what a sheet says of it."""

    title: Word
    order: WholeField
    short: Text | None = None


class QuestionFront(FrontMatter):
    """A question that homeowners ask; `applies` says on which jobs, on all where it is left out."""

    question: Word
    order: WholeField
    applies: tuple[When, ...] = (When.ALWAYS,)


ROOMS: Mapping[str, type[FrontMatter]] = MappingProxyType({
    "scope": ScopeFront,
    "finishes": FinishFront,
    "care": CareFront,
    "safety": SafetyFront,
    "site_observations": SiteObservationFront,
    "responsibilities": ResponsibilityFront,
    "clauses": ClauseFront,
    "questions": QuestionFront,
})  # fmt: skip
"""The folders of pages, each with what its pages begin with."""

LANGUAGE_FILE = "language.yaml"
TEXT_FILES = ("labels.yaml", "sentences.yaml")

F = TypeVar("F", bound=FrontMatter)


@dataclass(frozen=True, slots=True, kw_only=True)
class Page(Generic[F]):
    """One page: its front matter, its Markdown, and what its bytes are told apart by."""

    front: F
    markdown: str
    digest: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Content:
    """Everything that we say in one language.

    Attributes:
        locale: how it writes numbers, money, dates and plurals, as the Unicode CLDR names it.
        scope, finishes, care, safety, site_observations, responsibilities, clauses,
            questions: the pages by id, in their order.
        glossary: words of the trade and what they mean.
        labels: every fixed word, by key: those of the templates from labels.yaml, and those that
            take values from sentences.yaml; in another language rules and laws too.
    """

    locale: str
    scope: Mapping[str, Page[ScopeFront]]
    finishes: Mapping[str, Page[FinishFront]]
    care: Mapping[str, Page[CareFront]]
    safety: Mapping[str, Page[SafetyFront]]
    site_observations: Mapping[str, Page[SiteObservationFront]]
    responsibilities: Mapping[str, Page[ResponsibilityFront]]
    clauses: Mapping[str, Page[ClauseFront]]
    questions: Mapping[str, Page[QuestionFront]]
    glossary: Mapping[str, str]
    labels: Mapping[str, str]


def read_content(folder: Traversable) -> Content | tuple[Problem, ...]:
    """Read all pages of one language.

    Returns:
        The content, or every fault found in it.
    """
    problems: list[Problem] = []
    content = Content(
        locale=_locale(folder / LANGUAGE_FILE, problems),
        scope=_pages(folder, "scope", ScopeFront, problems),
        finishes=_pages(folder, "finishes", FinishFront, problems),
        care=_pages(folder, "care", CareFront, problems),
        safety=_pages(folder, "safety", SafetyFront, problems),
        site_observations=_pages(folder, "site_observations", SiteObservationFront, problems),
        responsibilities=_pages(folder, "responsibilities", ResponsibilityFront, problems),
        clauses=_pages(folder, "clauses", ClauseFront, problems),
        questions=_pages(folder, "questions", QuestionFront, problems),
        glossary=_labels((folder / "glossary.yaml",), problems),
        labels=_labels(_label_files(folder), problems),
    )
    for kind in FinishKind:
        if kind.value not in content.finishes:
            page = Places(f"content/finishes/{kind.value}.md")
            said = f"there is no page for the finish kind `{kind.value}`"
            hint = "write one like the others in content/en/finishes/"
            problems.append(page.fault((), "no-finish-page", said, hint))
    return tuple(problems) or content


def _pages(
    folder: Traversable, room: str, model: type[F], problems: list[Problem]
) -> Mapping[str, Page[F]]:
    pages: list[Page[F]] = []
    for entry in sorted((folder / room).iterdir(), key=lambda e: e.name):
        if entry.name.endswith(".md"):
            page = read_page(entry.read_bytes(), f"content/{room}/{entry.name}", model)
            if isinstance(page, Page):
                pages.append(page)
            else:
                problems.extend(page)
    pages.sort(key=lambda page: getattr(page.front, "order", 0))
    return MappingProxyType({page.front.id: page for page in pages})


def read_page(data: bytes, file: str, model: type[F]) -> Page[F] | tuple[Problem, ...]:
    """Read one page: front matter between two lines of `---`, then Markdown."""
    parts = data.split(b"---\n", 2)
    if len(parts) != 3 or parts[0]:
        said = "the page does not begin with front matter"
        hint = "begin with a line ---, then `id: ...` and so on, then a line ---"
        return (Places(file).fault((), "no-front-matter", said, hint),)
    # One empty line stands for the `---`, so that line numbers are those of the page.
    document = parse(b"\n" + parts[1], file, ours=True)
    if not isinstance(document, Document):
        return document
    front = validate(document, model)
    if isinstance(front, tuple):
        return front
    return Page(front=front, markdown=parts[2].decode("utf-8").strip(), digest=digest_of(data))


def digest_of(data: bytes) -> str:
    """Return a few letters that tell one version of a page of ours from the next."""
    return hashlib.sha256(data).hexdigest()[:8]


def _locale(file: Traversable, problems: list[Problem]) -> str:
    read = read_locale(file.read_bytes(), f"content/{LANGUAGE_FILE}")
    problems.extend(() if isinstance(read, str) else read)
    return read if isinstance(read, str) else ""


def read_locale(data: bytes, file: str) -> str | tuple[Problem, ...]:
    """Return the locale that a language is written by, or what is wrong with its file."""
    document = parse(data, file)
    read = validate(document, Language) if isinstance(document, Document) else document
    if isinstance(read, tuple):
        return read
    if not localedata.exists(read.locale):
        said = f"`{read.locale}` is no locale that is known here"
        hint = "a language and a country, such as en_US or es_US"
        return (Places(file).fault(("locale",), "no-locale", said, hint),)
    return read.locale


def _label_files(folder: Traversable) -> tuple[Traversable, ...]:
    return tuple(folder / name for name in TEXT_FILES)


def _labels(entries: tuple[Traversable, ...], problems: list[Problem]) -> Mapping[str, str]:
    labels: dict[str, str] = {}
    for entry in entries:
        document = parse(entry.read_bytes(), f"content/{entry.name}", ours=True)
        if not isinstance(document, Document):
            problems.extend(document)
            continue
        for key, value in document.content.items():
            if key in labels or not isinstance(value, str):
                said = f"`{key}` is not a single text, or stands in another file too"
                problems.append(
                    document.places.fault((key,), "bad-label", said, "one key, one text")
                )
            else:
                labels[key] = value
    return MappingProxyType(labels)
