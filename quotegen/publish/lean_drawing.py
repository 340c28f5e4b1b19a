"""Drawings made lighter for a browser: shared looks become classes, long paths short ones."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import count, groupby, product
from string import ascii_lowercase, digits

from quotegen.explain.svg import SANS

LOOKS = (
    "fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin",
    "font-size", "font-weight", "text-anchor",
)  # fmt: skip
"""Attributes that a style sheet may say as well (SVG 2, 6.6, presentation attributes)."""

HALO = "use{stroke:#fff;stroke-width:6px;stroke-linejoin:round}"
"""A halo is its text used once before, with a white line round it that no text has itself."""

DRAWING = re.compile(r"<svg\b.*?</svg>", re.DOTALL)

_HALO = re.compile(r'<text(?=[^>]*aria-hidden="true")[^>]*>([^<]*)</text><text([^>]*>\1</text>)')
_TAG = re.compile(r"<([a-z]+)((?:\s[\w:-]+=\"[^\"]*\")+)(\s*/?)>", re.IGNORECASE)
_ATTRIBUTE = re.compile(r'\s([\w:-]+)="([^"]*)"')
_ABSOLUTE = re.compile(r'(?<=\sd=")[MLAZ\d. -]+(?=")')
_COMMAND = re.compile(r"([MLAZ])([^MLAZ]*)")
_PATH = re.compile(r'(?<=\sd=")[^"]+(?=")')
_LINE = re.compile(r'<line x1="([^"]+)" y1="([^"]+)" x2="([^"]+)" y2="([^"]+)"([^>]*)/>')
_ONE_PATH = re.compile(r"<path([^>]*)/>")
_PATTERN = re.compile(r'<pattern id="([^"]+)"(.*?</pattern>)', re.DOTALL)
_URL = re.compile(r"url\(#([^)]+)\)")
_NAMESPACE = ' xmlns="http://www.w3.org/2000/svg"'
_FACE = f' font-family="{SANS}"'  # that of the whole page

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
    return page, (HALO if "<use " in page else "") + rules


def _haloed(page: str) -> str:
    """Name each text with a halo, and draw the halo by that name."""
    numbers = count()
    return _HALO.sub(lambda found: _named_text(f"h{next(numbers)}", found[2]), page)


def _named_text(name: str, rest: str) -> str:
    return f'<use href="#{name}"/><text id="{name}"{rest}'


def _shortened(drawing: str) -> str:
    for known in (_NAMESPACE, _FACE):
        drawing = drawing.replace(known, "")
    drawing = _LINE.sub(r'<path d="M\1 \2 L\3 \4" fill="none"\5/>', drawing)
    drawing = _ABSOLUTE.sub(lambda found: _relative(found[0]), drawing)
    drawing = _PATH.sub(lambda found: _compact(found[0]), drawing)
    return re.sub(r"(?:<path[^>]*/>){2,}", lambda found: _joined(found[0]), drawing)


def _shared_patterns(page: str) -> str:
    """Keep the first of equal patterns, and let every drawing use it."""
    first: dict[str, str] = {}
    same: dict[str, str] = {}
    for found in _PATTERN.finditer(page):
        same[found[1]] = first.setdefault(found[2], found[1])
    page = _PATTERN.sub(lambda found: found[0] if same[found[1]] == found[1] else "", page)
    page = _URL.sub(lambda found: f"url(#{same.get(found[1], found[1])})", page)
    return page.replace("<defs></defs>", "")


def _relative(data: str) -> str:
    """Write corners and arcs as steps from the one before, in exact tenths of a pixel.

    The command of a step stands once where the next is of its kind (SVG 2, 9.3.4 and 9.3.9).
    """
    written: list[str] = []
    at, start, last = (0, 0), (0, 0), ""
    for command, numbers in _COMMAND.findall(data):
        if command == "Z":
            written, at, last = [*written, "Z"], start, ""
            continue
        *shape, x, y = numbers.split()
        to = (_tenths(x), _tenths(y))
        if command == "M":
            start, step, kind = to, to, "M"
        else:
            step, kind = (to[0] - at[0], to[1] - at[1]), command.lower()
        before = " " if kind == last else kind
        written.append(before + " ".join((*shape, _in_pixels(step[0]), _in_pixels(step[1]))))
        at, last = to, kind
    return "".join(written)


def _tenths(number: str) -> int:
    whole, _, part = number.partition(".")
    sign = -1 if number.startswith("-") else 1
    return sign * (abs(int(whole)) * 10 + int(part[:1] or 0))


def _in_pixels(tenths: int) -> str:
    whole, part = divmod(abs(tenths), 10)
    sign = "-" if tenths < 0 else ""
    return f"{sign}{whole}.{part}" if part else f"{sign}{whole}"


def _compact(data: str) -> str:
    """Leave out what path data does not need (SVG 2, 9.3.9)."""
    data = re.sub(r"(\d)\.0(?!\d)", r"\1", data)
    data = re.sub(r"(?<![\d.])0\.", ".", data)
    return re.sub(r"\s*([A-Za-z])\s*", r"\1", data).replace(" -", "-")


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
