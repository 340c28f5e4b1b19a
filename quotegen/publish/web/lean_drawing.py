"""Drawings made lighter for a browser: shared looks become classes, long paths short ones."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import count, groupby, product
from string import ascii_lowercase, digits

from quotegen.explain.drawing.svg import INK
from quotegen.publish.web.lean_path import path_in_steps

LOOKS = (
    "fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin",
    "font-size", "font-weight", "text-anchor",
)  # fmt: skip
"""Attributes that a style sheet may say as well (SVG 2, 6.6, presentation attributes)."""

HALO = "use{stroke:#fff;stroke-width:6px;stroke-linejoin:round}"
"""A halo is its text used once before, with a white line round it that no text has itself."""

INKED = f"text{{fill:{INK}}}"
"""Every text of a drawing is in ink."""

DRAWING = re.compile(r"<svg\b.*?</svg>", re.DOTALL)

_HALO = re.compile(r'<text(?=[^>]*aria-hidden="true")[^>]*>([^<]*)</text><text([^>]*>\1</text>)')
_NAME = re.compile(r' aria-labelledby="([^"]+)"(?=[^>]*><title id="\1">)')
_NAMED = re.compile(r'(?<=<title) id="[^"]+"')
_INK = re.compile(rf'(<text[^>]*) fill="{INK}"')
_INITIAL = re.compile(r' (?:stroke-width="1"|stroke-linecap="butt")')  # as they are unsaid
_TAG = re.compile(r"<([a-z]+)((?:\s[\w:-]+=\"[^\"]*\")+)(\s*/?)>", re.IGNORECASE)
_ATTRIBUTE = re.compile(r'\s([\w:-]+)="([^"]*)"')
_PATH = re.compile(r'(?<=\sd=")[^"]+(?=")')
_LINE = re.compile(r'<line x1="([^"]+)" y1="([^"]+)" x2="([^"]+)" y2="([^"]+)"([^>]*)/>')
_ONE_PATH = re.compile(r"<path([^>]*)/>")
_PATTERN = re.compile(r'<pattern id="([^"]+)"(.*?</pattern>)', re.DOTALL)
_URL = re.compile(r"url\(#([^)]+)\)")
_NAMESPACE = ' xmlns="http://www.w3.org/2000/svg"'
_FACE = re.compile(' font-family="[^"]*"')  # that of the whole page

Looks = tuple[tuple[str, str], ...]


def lean_drawings(page: str) -> tuple[str, str]:
    """Return a page with lighter drawings, and the style rules that they then need."""
    page = _shared_patterns(DRAWING.sub(lambda found: _shortened(found[0]), _haloed(page)))
    counted = Counter(
        looks for drawing in DRAWING.findall(page) for looks in _looks_in(drawing) if looks
    )
    repeated = (looks for looks, times in counted.most_common() if times > 1)
    names = dict(zip(repeated, _names(), strict=False))
    page = DRAWING.sub(lambda found: _named(found[0], names), page)
    rules = "".join(f".{name}{{{_declared(looks)}}}" for looks, name in names.items())
    return page, (HALO if "<use " in page else "") + (INKED if "<text" in page else "") + rules


def _haloed(page: str) -> str:
    """Name each text with a halo, and draw the halo by that name."""
    numbers = count()
    return _HALO.sub(lambda found: _named_text(f"h{next(numbers)}", found[2]), page)


def _named_text(name: str, rest: str) -> str:
    return f'<use href="#{name}"/><text id="{name}"{rest}'


def _shortened(drawing: str) -> str:
    """Write a drawing in fewer letters.

    Its title names it without being pointed at (SVG Accessibility API Mappings, 5.2).
    """
    drawing = _FACE.sub("", drawing.replace(_NAMESPACE, ""))
    drawing = _NAMED.sub("", _NAME.sub("", drawing))
    drawing = _INITIAL.sub("", _INK.sub(r"\1", drawing))
    drawing = _LINE.sub(r'<path d="M\1 \2 L\3 \4" fill="none"\5/>', drawing)
    drawing = re.sub(r"(?:<path[^>]*/>){2,}", lambda found: _joined(found[0]), drawing)
    return _PATH.sub(lambda found: path_in_steps(found[0]), drawing)


def _shared_patterns(page: str) -> str:
    """Keep the first of equal patterns, and let every drawing use it."""
    first: dict[str, str] = {}
    same: dict[str, str] = {}
    for found in _PATTERN.finditer(page):
        same[found[1]] = first.setdefault(found[2], found[1])
    page = _PATTERN.sub(lambda found: found[0] if same[found[1]] == found[1] else "", page)
    page = _URL.sub(lambda found: f"url(#{same.get(found[1], found[1])})", page)
    return page.replace("<defs></defs>", "")


def _joined(paths: str) -> str:
    """Draw neighbours with the same looks as one path: strokes alone, which cover alike."""
    written = []
    for looks, same in groupby(_ONE_PATH.findall(paths), key=_without_data):
        data = [dict(_ATTRIBUTE.findall(one))["d"] for one in same]
        whole = [f'<path d="{one}"{looks}/>' for one in data]
        alone = 'fill="none"' in looks and " transform=" not in looks
        written += [f'<path d="{"".join(data)}"{looks}/>'] if alone else whole
    return _outlined("".join(written))


def _outlined(paths: str) -> str:
    """Draw a field and the outline on it, which follow each other, as one path."""
    return re.sub(
        r'<path d="([^"]+)" fill="(url[^"]+)"((?: fill-rule="evenodd")?)/>'
        r'<path d="\1" fill="none"([^>]*)/>',
        r'<path d="\1" fill="\2"\3\4/>',
        paths,
    )


def _without_data(attributes: str) -> str:
    return "".join(
        f' {name}="{value}"' for name, value in _ATTRIBUTE.findall(attributes) if name != "d"
    )


def _looks_in(drawing: str) -> Iterator[Looks]:
    for found in _TAG.finditer(drawing):
        yield _looks(found[2])


def _looks(attributes: str) -> Looks:
    return tuple(
        (name, value)
        for name, value in _ATTRIBUTE.findall(attributes)
        if name in LOOKS and not value.startswith("url(")
    )


def _named(drawing: str, names: Mapping[Looks, str]) -> str:
    return _TAG.sub(lambda found: _with_class(found, names), drawing)


def _with_class(found: re.Match[str], names: Mapping[Looks, str]) -> str:
    whole, tag, attributes, end = found.group(0, 1, 2, 3)
    looks = _looks(attributes)
    if looks not in names:
        return whole
    kept = [pair for pair in _ATTRIBUTE.findall(attributes) if pair not in looks]
    classes = (*(value for name, value in kept if name == "class"), names[looks])
    others = "".join(f' {name}="{value}"' for name, value in kept if name != "class")
    return f'<{tag} class="{" ".join(classes)}"{others}{end}>'


def _declared(looks: Looks) -> str:
    return ";".join(f"{name}:{value}{'px' if name == 'font-size' else ''}" for name, value in looks)


def _names() -> Iterator[str]:
    for letter, other in product(ascii_lowercase, digits + ascii_lowercase):
        yield f"{letter}{other}"
