"""A language of the owner's: a folder in content/ that stands in for English, file by file."""

import re
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path

from babel.dates import format_date, get_day_names, get_month_names
from babel.numbers import format_decimal

from quotegen.problem import Problem
from quotegen.reading.content.content import LANGUAGE_FILE, ROOMS, Content, read_locale
from quotegen.reading.yaml.letters import bundled_letters
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.unreadable import LARGEST_FILE_BYTES
from quotegen.trade.contract_law import ContractLaws
from quotegen.trade.rules import RuleBook

_OTHER = "_other"
_FORMS = ("_zero", "_one", "_two", "_few", "_many")
_MOST_NAMED = 5
_VALUE, _WORD = re.compile(r"\{.*?\}"), re.compile(r"[^\W\d_]{2,}")


def locale_of(folder: Path) -> str | tuple[Problem, ...]:
    """Return the locale of a language, or what is wrong with it: none, or not in our letters."""
    file = folder / LANGUAGE_FILE
    try:
        with file.open("rb") as opened:
            read = read_locale(opened.read(LARGEST_FILE_BYTES + 1), str(file))
    except OSError:
        said = f"there is no language `{folder.name}` here"
        hint = f"begin with a file {file} that holds a line like `locale: es_US`"
        return (Places(str(folder)).fault((), "no-language", said, hint),)
    if isinstance(read, str) and set(_written(read)) - bundled_letters():
        said = (
            f"`{read}` writes dates or numbers with letters that are not among those of the pages"
        )
        return (
            Places(str(file)).fault(("locale",), "no-locale", said, "a Latin one, such as es_US"),
        )
    return read


def _written(locale: str) -> str:
    """Return letters that a locale writes dates and numbers with."""
    names = (*get_month_names("wide", locale=locale).values(),
             *get_day_names("wide", locale=locale).values())  # fmt: skip
    day = format_date(date(2026, 11, 28), format="long", locale=locale)
    return "".join((*names, day, format_decimal(1234567890, locale=locale)))


def texts_to_say(ours: Mapping[str, str], rules: RuleBook, laws: ContractLaws) -> Mapping[str, str]:
    """Return every text that a language may say, by key, with the English of it.

    Beside ours these are other plural forms, and the words of rules and laws.
    """
    plural = (key.removesuffix(_OTHER) for key in ours if key.endswith(_OTHER))
    forms = {f"{key}{form}": ours[f"{key}{_OTHER}"] for key in plural for form in _FORMS}
    about = {f"rule_{name}": rule.description for name, rule in rules.rules.items()}
    says = {
        f"rule_{name}_says": value.value
        for name, rule in rules.rules.items()
        for value in rule.values
        if isinstance(value.value, str)
    }
    meant = {f"element_{element.value}": meaning for element, meaning in laws.meanings}
    return {**about, **says, **meant, **forms, **ours}


def said_in(language: Mapping[str, str], ours: Mapping[str, str]) -> Mapping[str, str]:
    """Return ours with a language's texts in their place, without a plural form that is English."""
    kept = {
        key: text
        for key, text in ours.items()
        if not any(f"{key.removesuffix(form)}{_OTHER}" in language for form in _FORMS)
        or not key.endswith(_FORMS)
    }
    return {**kept, **language}


def still_english(
    folder: Path,
    made: Content,
    english: Content,
    given: Mapping[str, str],
    to_say: Mapping[str, str],
) -> Iterator[Problem]:
    """Yield a warning for each kind of page, and for the texts, of which some are still English.

    A page or a text that is ours to the letter counts as English; not a word alone, which may be
    the same in both.
    """
    for room in ROOMS:
        ours, theirs = getattr(english, room), getattr(made, room)
        lacking = [one for one, page in theirs.items() if page.markdown == ours[one].markdown]
        if lacking:
            first = f"{room}/{lacking[0]}"
            hint = f"`quotegen copy {first} --language {folder.name}` copies one, to be translated"
            yield _lacks(folder / room, _counted(len(lacking), "page"), lacking, hint)
    said = {key for key, text in given.items() if text != to_say.get(key) or not _is_prose(text)}
    texts = sorted({key for key in to_say if not key.endswith(_FORMS)} - said)
    if texts:
        hint = (
            f"`quotegen copy labels sentences --language {folder.name}` copies ours with their keys"
        )
        yield _lacks(folder, _counted(len(texts), "text"), texts, hint)
    if made.glossary is english.glossary:
        hint = "write `word: what it means` for the words that your pages use"
        yield _lacks(folder, "the glossary", ["glossary.yaml"], hint)


def _is_prose(text: str) -> bool:
    """Whether a text has words beside the values in braces, and more than one."""
    return len(_WORD.findall(_VALUE.sub("", text))) > 1


def _counted(number: int, what: str) -> str:
    return f"{number:,} {what}{'' if number == 1 else 's'}"


def _lacks(place: Path, what: str, names: list[str], hint: str) -> Problem:
    more = f" and {len(names) - _MOST_NAMED:,} more" if len(names) > _MOST_NAMED else ""
    said = f"still English: {what}: {', '.join(names[:_MOST_NAMED])}{more}"
    return Places(str(place)).warning((), "language-lacks", said, hint)
