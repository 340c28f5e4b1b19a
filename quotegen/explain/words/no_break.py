"""Numbers that stay with what they count: no line ends in one while its unit begins the next."""

import re
from collections.abc import Callable
from functools import lru_cache

from babel.dates import get_month_names
from markupsafe import Markup, escape

from quotegen.explain.wording import Words

NO_BREAK = "\N{NO-BREAK SPACE}"

_COUNTED = re.compile(r"(?<=\d) (?=[^\W\d_]|[%°])")
_FOR_EACH = re.compile(r"(?<=\d) / (?=\w)")
_WHOLE = re.compile(r"\d+(?:-\d[\d/]*)+|(?<!\S)[+−][^\w\s]\d[\d.,]*\d")


def ties(words: Words) -> Callable[[str], str]:
    """What ties the numbers of a text: `7 days`, `340 sq ft`, `Jul 10` stay on one line.

    Units and months are those of the language; a unit of two words is tied throughout.
    """
    return _ties(words.locale, words.units_said())


def in_one_piece(markup: str) -> str:
    """Keep a line from ending behind a hyphen in a number, or behind the sign of a sum.

    Args:
        markup: Markdown, or escaped text; each `4-3/4`, `555-0117` and `−$29.61` in it comes to
            stand in an element that does not wrap.
    """
    return _WHOLE.sub(r'<span class="tie">\g<0></span>', markup)


def on_page(text: str, tied: Callable[[str], str]) -> Markup:
    """Write a text as a page shows it: escaped, and its numbers tied."""
    return Markup(in_one_piece(str(escape(tied(text)))))  # noqa: S704 - escaped


@lru_cache(maxsize=8)
def _ties(locale: str, units: tuple[str, ...]) -> Callable[[str], str]:
    of_two = "|".join(re.escape(unit) for unit in units if " " in unit)
    long_unit = re.compile(rf"(?<=\d |/ )(?:{of_two})\b" if of_two else r"(?!)")
    named = (get_month_names(width, locale=locale).values() for width in ("abbreviated", "wide"))
    months = "|".join(re.escape(name) for names in named for name in names)
    month_and_day = re.compile(rf"\b({months}) (?=\d)")

    def tied(text: str) -> str:
        text = long_unit.sub(lambda unit: unit[0].replace(" ", NO_BREAK), text)
        text = month_and_day.sub(rf"\1{NO_BREAK}", text)
        text = _FOR_EACH.sub(f"{NO_BREAK}/{NO_BREAK}", text)
        return _COUNTED.sub(NO_BREAK, text)

    return tied
