"""A page made lighter for a browser: what it says over and over is said once, and shortly.

The print engine gets the page as it was written, since it does not know these classes in a
drawing. Both show the same.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from html import unescape
from itertools import chain, product
from string import ascii_lowercase

from quotegen.publish.web.lean_drawing import lean_drawings

BLOCKS = (
    "address|article|caption|dd|details|div|dl|dt|fieldset|figcaption|figure|footer|h[1-6]|head|"
    "header|label|legend|li|link|main|meta|nav|ol|p|script|section|style|summary|table|tbody|td|"
    "tfoot|th|thead|title|tr|ul"
)
"""Elements before and after which a blank is nothing."""

RULE_LETTERS = len('[data-l=a]{--label:""}')
"""What a rule of the style sheet takes beside the name of a column that it says."""

_BETWEEN_TAGS = re.compile(r">\s*\n\s*<")
_BETWEEN_BLOCKS = re.compile(rf"(</?(?:{BLOCKS})\b[^>]*>)\n(?=</?(?:{BLOCKS})\b)")
_CLOSED_ANYWAY = re.compile(
    r"</(?:p|li|dt|dd|td|th)>(?=</(?:div|dd|dl|fieldset|figcaption|footer|li|ol|section|td|tr|ul)>|"
    r"<(?:dl|dt|dd|div|fieldset|figure|h[1-6]|li|ol|p|table|td|th|ul)\b)"
)
"""End tags that may be left out before what follows (HTML, 13.1.2.4, optional tags)."""

_NOT_MARKUP = re.compile(r"(<script\b.*?</script>|<style>.*?</style>)", re.DOTALL)
_TAG = re.compile(r"<[a-z][^>]*>", re.IGNORECASE)
_CLASS = re.compile(r'\sclass="([^"]*)"')
_LABEL = re.compile(r'(?<=\sdata-label=")[^"]*(?=")')
_RULE = re.compile(r"(?<=[{}])([^{}@]+)\{([^{}]*)\}")
_IN_SELECTOR = re.compile(r"\.([a-zA-Z][\w-]*)")
_WITHOUT = re.compile(r":not\(\.([a-zA-Z][\w-]*)\)")
_NEXT_SELECTOR = re.compile(r",(?![^()]*\))")
_TOKEN = re.compile(r"(--[\w-]+):[^;}]*;?")
_READ_TOKEN = re.compile(r"var\((--[\w-]+)")
_SCOPE = re.compile(r'\sscope="(?:row|col)"')
_TEXT = re.compile(r">[^<]+<")
_QUOTE_MARK = re.compile(r"&(?:quot|#34|#39|#x27);")
_QUOTED = re.compile(r"""="([^"\s'=<>`]+)"(?=[\s>])""")
_QUOTED_LAST = re.compile(r"""="([^"\s'=<>`]+)"/>""")


def lean(page: str, css: str) -> tuple[str, str]:
    """Return a page with less to load, and the style sheet that it then needs."""
    page = _BETWEEN_BLOCKS.sub(r"\1", _BETWEEN_TAGS.sub(">\n<", page))
    page, rules = lean_drawings(page)
    page, labels = _labelled(page)
    page = page.replace(' data-label="', ' data-l="')  # no text has an unescaped quotation mark
    css = (css + rules + labels).replace("data-label", "data-l")
    page, css = _short_classes(page, _in_use(css, page))
    return _in_markup(page, _shortly_written), css


def _in_markup(page: str, change: Callable[[str], str]) -> str:
    """Change a page outside of its scripts and styles."""
    parts = _NOT_MARKUP.split(page)
    return "".join(part if _NOT_MARKUP.match(part) else change(part) for part in parts)


def _shortly_written(markup: str) -> str:
    """Leave out end tags, quotes and scopes that a browser adds by itself (HTML, 13.1.2, 4.9.12).

    Quotation marks stand for themselves in a text. The scope of a header cell without data cells
    in its row, or in its column, is known.
    """
    markup = _SCOPE.sub("", _CLOSED_ANYWAY.sub("", markup))
    markup = _TAG.sub(lambda found: _unquoted(found[0]), markup)
    return _TEXT.sub(lambda found: _QUOTE_MARK.sub(_character, found[0]), markup)


def _unquoted(tag: str) -> str:
    return _QUOTED.sub(r"=\1", _QUOTED_LAST.sub(r"=\1 />", tag))


def _character(reference: re.Match[str]) -> str:
    return unescape(reference[0])


def _labelled(page: str) -> tuple[str, str]:
    """Move the name of a column, where many of its cells carry it, into the style sheet."""
    counted = Counter(label for label in _LABEL.findall(page) if "&" not in label)
    many = {label: times for label, times in counted.items()
            if times * len(label) > len(label) + RULE_LETTERS}  # fmt: skip
    names = _short_names(many)
    page = _LABEL.sub(lambda found: names.get(found[0], found[0]), page)
    rules = (
        f'[data-label={name}]{{--label:"{label.translate(_QUOTES)}"}}'
        for label, name in names.items()
    )
    return page, "".join(rules)


_QUOTES = str.maketrans({"\\": "\\\\"})


def _in_use(css: str, page: str) -> str:
    """Drop rules for classes that are not on the page, and tokens that no rule reads.

    A script sets the class `live`. What is not of a class that nothing has is everything.
    """
    here = {"live", *(name for found in _CLASS.findall(page) for name in found.split())}
    css = _WITHOUT.sub(lambda found: found[0] if found[1] in here else "", css)

    def kept(found: re.Match[str]) -> str:
        selectors = [
            one for one in _NEXT_SELECTOR.split(found[1]) if {*_IN_SELECTOR.findall(one)} <= here
        ]
        return f"{','.join(selectors)}{{{found[2]}}}" if selectors else ""

    css = _RULE.sub(kept, css)
    read = {*_READ_TOKEN.findall(css)}
    return _TOKEN.sub(lambda found: found[0] if found[1] in read else "", css)


def _short_classes(page: str, css: str) -> tuple[str, str]:
    """Give each class that has a rule a name of a letter or two, the commonest first."""
    ruled = {*_IN_SELECTOR.findall(css)}
    names = _short_names(
        Counter(name for classes in _CLASS.findall(page) for name in classes.split()
                if name in ruled)
    )  # fmt: skip

    def shortened(found: re.Match[str]) -> str:
        kept = [names[name] for name in found[1].split() if name in names]
        return f' class="{" ".join(kept)}"' if kept else ""

    page = _CLASS.sub(shortened, page)
    return page, re.sub(
        r"(?<=\.)[a-zA-Z][\w-]*(?=[^}]*\{)", lambda found: names.get(found[0], found[0]), css
    )


def _short_names(counted: Mapping[str, int]) -> dict[str, str]:
    commonest = sorted(counted, key=lambda name: (-counted[name], name))
    return dict(zip(commonest, _names(), strict=False))


def _names() -> Iterator[str]:
    return chain(ascii_lowercase, map("".join, product(ascii_lowercase, repeat=2)))
