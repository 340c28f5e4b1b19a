"""A made-up language: every word of content/en changed and 40 % longer, placeholders kept.

Each word ends in a letter that no English word has, so a word of English that still stands on a
page is found at once.
"""

import re
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path
from shutil import copytree

import yaml

from quotegen.explain.wording import Words
from quotegen.quantity import Units
from quotegen.resources import content_folder
from quotegen.trade.contract_law import load_laws
from quotegen.trade.rules import load_rules
from tests.explain.drawn import FONT

LOCALE = "es_US"
"""Its dates have no English month, and its money is in dollars."""

MARK = "ñ"
_AND = "y|e|o|u"
"""How a list ends in that locale: and, or."""
_CHANGED = str.maketrans("aeiouyAEIOUY", "áéíóúýÁÉÍÓÚÝ")
_KEPT = re.compile(r"\{\{.*?\}\}|\{\w+\}|<[^>]*>|\]\([^)]*\)|&\w+;")
_WORD = re.compile(r"[^\W\d_]+")
_IDENTIFIERS = frozenset(
    {"before", "id", "rules", "order", "group", "finishes", "applies", "ours", "first"}
)


def pseudo(text: str) -> str:
    """Change every word of a text, and nothing between braces or of its markup."""
    parts, at = [], 0
    for kept in _KEPT.finditer(text):
        parts += [_WORD.sub(_changed, text[at : kept.start()]), kept.group()]
        at = kept.end()
    return "".join((*parts, _WORD.sub(_changed, text[at:])))


def _changed(word: re.Match[str]) -> str:
    longer = MARK * -(-len(word.group()) * 2 // 5)
    return word.group().translate(_CHANGED) + longer


def pseudo_content(folder: Path) -> Path:
    """Make a content folder of the made-up language from content/en."""
    made = Path(copytree(str(content_folder()), folder / "xx"))
    (made / "language.yaml").write_text(f"locale: {LOCALE}\n", encoding="utf-8")
    for file in ("labels.yaml", "sentences.yaml"):
        texts = yaml.safe_load((made / file).read_text(encoding="utf-8"))
        _write(made / file, {key: pseudo(text) for key, text in texts.items()})
    glossary = yaml.safe_load((made / "glossary.yaml").read_text(encoding="utf-8"))
    _write(made / "glossary.yaml", {pseudo(key): pseudo(text) for key, text in glossary.items()})
    _write(made / "rules.yaml", dict(_rules()))
    for page in made.glob("*/*.md"):
        _, front, body = page.read_text(encoding="utf-8").split("---\n", 2)
        changed = {
            key: value if key in _IDENTIFIERS else pseudo(value)
            for key, value in yaml.load(front, Loader=yaml.BaseLoader).items()
        }
        _write(page, changed)
        text = page.read_text(encoding="utf-8")
        page.write_text(f"---\n{text}---\n{pseudo(body)}", encoding="utf-8")
    return made


def _rules() -> Iterator[tuple[str, str]]:
    """Yield what each rule is about, what it says where that is a text, and what a law asks for."""
    for rule_id, rule in load_rules().rules.items():
        yield f"rule_{rule_id}", pseudo(rule.description)
        for value in rule.values:
            if isinstance(value.value, str):
                yield f"rule_{rule_id}_says", pseudo(value.value)
    for element, meaning in load_laws().meanings:
        yield f"element_{element.value}", pseudo(meaning)


def _write(path: Path, texts: Mapping[str, str]) -> None:
    dumped = yaml.safe_dump(texts, allow_unicode=True, sort_keys=False, width=10_000)
    path.write_text(dumped, encoding="utf-8")


def typed_texts(*files: Path) -> str:
    """Return every text that an owner typed, as words: it stands on the page as it is."""
    return "\n".join(
        _as_words(text)
        for file in files
        for text in _values(yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.BaseLoader))
    )


def named_texts() -> str:
    """Return what no language changes: dates of the locale, titles of standards, kinds of files."""
    days = [date(2026, month, day) for month in range(1, 13) for day in range(1, 8)]
    words = Words(labels={}, locale=LOCALE, units=Units.US, font=FONT)
    written = [
        write(day) for day in days for write in (words.day, words.weekday, words.day_of_year)
    ]
    titles = [str(v.reference) for rule in load_rules().rules.values() for v in rule.values]
    laws = [
        text
        for law in load_laws().laws
        for text in (law.law, law.edition, law.link, *(demand.clause for demand in law.demands))
    ]
    known = (*written, *titles, *laws, words.listing(("1", "2", "3")), "PDF")
    return "\n".join(map(_as_words, known))


def strangers(text: str, known: str) -> set[str]:
    """Return each run of words that is neither of the made-up language nor known as it stands.

    A run ends at a mark, a digit, a line, or a word with which the locale ends a list; where two
    known texts stand side by side, as a name and its day, it is known too.
    """
    return {run for run in _runs(text) if len(run) > 1 and not _is_known(run, known)}


def _is_known(run: str, known: str) -> bool:
    words = run.split()
    parts = [(words[:at], words[at:]) for at in range(len(words))]
    return any(
        all(not half or f" {' '.join(half)} " in known for half in halves) for halves in parts
    )


def _runs(text: str) -> Iterator[str]:
    for part in re.split(rf"[^\w ]|[\d_]| (?:{_AND}) |\w*{MARK}\w*", text):
        if run := " ".join(part.lower().split()):
            yield run


def _as_words(text: str) -> str:
    return "".join(f" {run} \n" for run in _runs(text))


def _values(node: object) -> Iterator[str]:
    if isinstance(node, dict):
        for key, value in node.items():
            yield str(key).replace("_", " ")
            yield from _values(value)
    elif isinstance(node, list):
        for value in node:
            yield from _values(value)
    else:
        yield str(node).replace("_", " ")
