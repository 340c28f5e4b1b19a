"""A made-up language: every word of content/en changed and 40 % longer, placeholders kept.

Each word ends in a letter that no English word has, so a word of English that still stands on a
page is found at once.
"""

import re
from pathlib import Path
from shutil import copytree

import yaml

from quotegen.resources import content_folder

LOCALE = "es_US"
"""Its dates have no English month, and its money is in dollars."""

MARK = "ñ"
_CHANGED = str.maketrans("aeiouyAEIOUY", "áéíóúýÁÉÍÓÚÝ")
_KEPT = re.compile(r"\{\{.*?\}\}|\{\w+\}|<[^>]*>|\]\([^)]*\)|&\w+;")
_WORD = re.compile(r"[^\W\d_]+")
_IDENTIFIERS = frozenset({"id", "rules", "order", "finishes", "applies"})


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


def _write(path: Path, texts: dict[str, object]) -> None:
    dumped = yaml.safe_dump(texts, allow_unicode=True, sort_keys=False, width=10_000)
    path.write_text(dumped, encoding="utf-8")
