"""What a word that is not known was meant to be, without a guess that changes its meaning."""

import re
from collections.abc import Iterable
from difflib import SequenceMatcher

FORMER = {
    "colour": "color",
    "colours": "colors",
    "duty": "responsibility",
    "fibre": "fiber",
    "fieldbook": "notebook",
    "licence": "license",
    "with colour": "with color",
}
"""What some of our keys and words were called before, each with its name of today."""
_FEWEST_LETTERS = 3
_MOST_NAMED = 3
_BEGINNING = 2
_NEAR, _NEAR_FROM_THE_START, _AS_NEAR = 0.75, 0.6, 0.05
"""How alike two words are that one may be a slip for the other, whether they begin in the same way
or not; and how near two likenesses are that count as one."""


def renamed_or_near(word: str, allowed: Iterable[str]) -> str:
    """Return today's name of a key or word of ours that was renamed, else its near miss."""
    words = tuple(allowed)
    now = FORMER.get(word)
    return f"it is now called `{now}`" if now in words else near_miss(word, words)


def near_miss(word: str, allowed: Iterable[str]) -> str:
    """Return `did you mean ...?` for allowed words that are close, else the list of all of them."""
    words = sorted(allowed)
    if close := _close(word, words):
        return f"did you mean {' or '.join(f'`{one}`' for one in close)}?"
    return f"allowed here: {', '.join(words)}" if words else "there is none to choose from"


def _close(word: str, allowed: list[str]) -> list[str]:
    """Return the words that may be meant: the same, those that begin so, or the most alike."""
    typed = _letters(word)
    if same := [one for one in allowed if _letters(one) == typed]:
        return same
    begun = [one for one in allowed if _letters(one).startswith(typed)]
    if len(typed) >= _FEWEST_LETTERS and 0 < len(begun) <= _MOST_NAMED:
        return begun
    alike = {one: _alike(word.lower(), one.lower()) for one in allowed}
    best = max(alike.values(), default=0)
    near = [one for one in allowed if alike[one] >= max(_least(word, one), best - _AS_NEAR)]
    return sorted(near, key=lambda one: -alike[one])[:_MOST_NAMED]


def _least(word: str, other: str) -> float:
    same_start = word[:_BEGINNING].lower() == other[:_BEGINNING].lower()
    return _NEAR_FROM_THE_START if same_start else _NEAR


def _alike(word: str, other: str) -> float:
    """Return how alike two words are, from 0 to 1.

    Of names in several parts the least alike parts count: `inner_radius` is no slip for
    `outer_radius`.
    """
    parts, others = _parts(word), _parts(other)
    if len(parts) != len(others):
        return SequenceMatcher(None, _letters(word), _letters(other)).ratio()
    return min(SequenceMatcher(None, *pair).ratio() for pair in zip(parts, others, strict=True))


def _letters(word: str) -> str:
    return "".join(_parts(word))


def _parts(word: str) -> list[str]:
    return re.split("[ _-]+", word.lower())
