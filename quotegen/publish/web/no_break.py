"""Numbers that stay with what they count: no line ends in one while its unit begins the next."""

import re
from collections.abc import Callable
from functools import lru_cache

from babel.dates import get_month_names

NO_BREAK = "\N{NO-BREAK SPACE}"

_NOT_READ = re.compile(
    r"(<(?:script|style|svg|title)\b.*?</(?:script|style|svg|title)>|<[^>]*>)", re.DOTALL
)
_COUNTED = re.compile(r"(?<=\d) (?=[^\W\d_]|[%°])")
_FOR_EACH = re.compile(r"(?<=\d) / (?=\w)")
_WHOLE = re.compile(r"\d+(?:-\d[\d/]*)+|(?<=\s)[+−][^\w\s]\d[\d.,]*\d")


@lru_cache(maxsize=8)
def ties(locale: str, units: tuple[str, ...]) -> Callable[[str], str]:
    """Return what ties the numbers of a text: `7 days`, `340 sq ft`, `Jul 10` stay on one line.

    Args:
        locale: as Babel names it; its months are tied to the day beside them.
        units: words of the units; one of two words is tied throughout.
    """
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


def tied_page(page: str, tied: Callable[[str], str]) -> str:
    """Tie the numbers of each text of a page; scripts, styles, drawings and tags stay as they are.

    A number with a hyphen, such as `4-3/4` or a telephone number, does not break there; neither
    does a sum within a sentence behind its sign.
    """
    parts = _NOT_READ.split(page)
    return "".join(part if index % 2 else _whole(tied(part)) for index, part in enumerate(parts))


def _whole(text: str) -> str:
    return _WHOLE.sub(r'<span class="tie">\g<0></span>', text)
