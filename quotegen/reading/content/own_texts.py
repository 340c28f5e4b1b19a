"""The owner's own words for what is fixed on each page: labels.yaml and sentences.yaml of theirs.

Each key that stands there is said in the owner's words; all others stay ours.
"""

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from string import Formatter

from quotegen.problem import Problem
from quotegen.reading.yaml.letters import bundled_letters
from quotegen.reading.yaml.located import Document, Places, parse
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.unreadable import LARGEST_FILE_BYTES

_MARKUP = re.compile(r"<[A-Za-z!/?]")


def own_texts(
    file: Path, ours: Mapping[str, str] | None
) -> tuple[Mapping[str, str], tuple[Problem, ...]]:
    """Read one file of the owner's words.

    Args:
        file: one of the files of texts in the owner's content/.
        ours: every text that may stand there, by key, as we say it; None where any may.

    Returns:
        The texts by key, and what is wrong with them: a key that we do not have, a value in
        braces that ours has and the text lacks, or has beside ours, markup, a letter without font.
    """
    try:
        with file.open("rb") as opened:
            data = opened.read(LARGEST_FILE_BYTES + 1)
    except OSError as error:
        said = f"the file cannot be opened: {(error.strerror or 'it cannot be read').lower()}"
        return {}, (Places(str(file)).fault((), "cannot-read", said, "only texts belong here"),)
    document = parse(data, str(file))
    if not isinstance(document, Document):
        return {}, document
    texts = {key: text for key, text in document.content.items() if isinstance(text, str)}
    problems = [
        document.places.fault((key,), "bad-label", f"`{key}` is not a single text", "one text")
        for key in document.content.keys() - texts.keys()
    ]
    for key, text in texts.items():
        problems += _faults(document.places, key, text, ours)
    return texts, tuple(problems)


def _faults(
    places: Places, key: str, text: str, ours: Mapping[str, str] | None
) -> Iterator[Problem]:
    if ours is not None and key not in ours:
        said = f"there is no text `{key}`"
        alike = near_miss(key, (one for one in ours if one[0] == key[:1]))
        yield places.fault((key,), "own-page-unknown", said, alike)
        return
    wanted, found = _values(ours[key] if ours else ""), _values(text)
    if found is None:
        said, hint = "a brace stands alone here", "braces hold the name of a value, such as {name}"
        yield places.fault((key,), "own-page-mark", said, hint)
    elif lost := sorted((wanted or frozenset()) - found):
        said = f"`{key}` lacks {', '.join(lost)}, which ours has"
        yield places.fault((key,), "own-page-lacks", said, "keep every name in braces")
    elif odd := sorted(found - (wanted or frozenset())):
        said = f"`{key}` is not given {', '.join(odd)}"
        hint = f"ours says: {ours[key]}" if ours else "leave the braces out"
        yield places.fault((key,), "own-page-mark", said, hint)
    if markup := _MARKUP.search(text):
        said = f"`{markup[0]}` begins HTML; a text is plain"
        yield places.fault((key,), "own-page-mark", said, "leave it out")
    for letter in sorted(set(text) - bundled_letters()):
        said = f"`{letter}` (U+{ord(letter):04X}) is not among the letters of the pages"
        hint = "leave it out, or write it in Latin letters"
        yield places.fault((key,), "letter-unknown", said, hint)


def _values(text: str) -> frozenset[str] | None:
    """Return the values that a text is given, in braces; None where a brace stands alone."""
    try:
        parts = [*Formatter().parse(text)]
    except ValueError:
        return None
    return frozenset(
        f"{{{name}{f'!{how}' if how else ''}{f':{form}' if form else ''}}}"
        for _, name, form, how in parts
        if name is not None
    )
