"""The company's logo: a PNG made small, or an SVG of which only the drawing is kept.

An SVG can hold a program, or fetch from elsewhere (SVG 2, 15 and 16.1). Kept is what is on the list
below; what cannot draw is left out, and what could act or reach out is refused, not repaired, so
that the owner sees what the file held.
"""

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree as ET

from PIL import Image

from quotegen.problem import Problem, Source
from quotegen.reading.images.photos import inside, opened, whole_pictures_only

LARGEST_BYTES = 200_000
LARGEST_SIDE_PX = 600
MOST_PIXELS = 16_000_000
MOST_PARTS = 5_000
_SVG, _XLINK = "{http://www.w3.org/2000/svg}", "{http://www.w3.org/1999/xlink}"
_DRAWS = frozenset({
    "svg", "g", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "defs", "use",
    "symbol", "linearGradient", "radialGradient", "stop", "clipPath", "title", "desc", "style",
})  # fmt: skip
_SAYS = frozenset({
    "id", "class", "style", "transform", "viewBox", "width", "height", "x", "y", "x1", "y1", "x2",
    "y2", "cx", "cy", "r", "rx", "ry", "fx", "fy", "d", "points", "offset", "href", "opacity",
    "fill", "fill-opacity", "fill-rule", "clip-rule", "clip-path", "stroke", "stroke-width",
    "stroke-opacity", "stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "stroke-dasharray",
    "stop-color", "stop-opacity", "gradientUnits", "gradientTransform", "spreadMethod",
    "clipPathUnits", "preserveAspectRatio", "color", "display", "visibility",
})  # fmt: skip
_REACHES_OUT = re.compile(r"url\((?!\s*['\"]?#)|@|\\|javascript:|expression\(", re.IGNORECASE)

_NAMES = re.compile(r"^#(.+)$|url\(\s*['\"]?#([^)'\"]+)")
"""Another part of the drawing, as `href` and as a paint or a clip name it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Logo:
    """A logo as it may be shown: its media type and its bytes."""

    kind: str
    data: bytes


class _RefusedError(Exception):
    """What the file holds that a logo may not; its words end the message."""


def shown_logo(folder: Path, name: str, source: Source) -> Logo | Problem:
    """Read the logo of a company file that lies in a folder."""
    path = inside(folder, name)
    if path is None:
        said = f"`{name}` leads out of the folder of this file"
        hint = "copy the logo beside this file or below it, and name it from there"
        return _fault(source, "path-leaves-folder", said, hint)
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_BYTES + 1)
    except OSError:
        said = f"there is no file `{name}`"
        return _fault(source, "no-logo", said, "check the name, or delete the line")
    if len(data) > LARGEST_BYTES:
        said = f"`{name}` has more than {LARGEST_BYTES // 1000} kB"
        hint = "a logo is a small drawing: export it smaller"
        return _fault(source, "logo-too-large", said, hint)
    try:
        if data.startswith(b"\x89PNG"):
            return Logo(kind="image/png", data=_png(data))
        return Logo(kind="image/svg+xml", data=_svg(data))
    except _RefusedError as refused:
        said = f"`{name}` holds {refused}, and a logo may only draw"
        hint = "export it as plain SVG with all text turned into paths, or use a PNG"
        return _fault(source, "logo-acts", said, hint)
    except Exception:  # noqa: BLE001 - a broken picture fails in more ways than can be named
        said = f"`{name}` is no SVG or PNG that can be read"
        return _fault(source, "not-a-logo", said, "use an SVG or a PNG")


def _png(data: bytes) -> bytes:
    """Return the pixels alone: no text chunk, no location, no side over 600 px.

    Raises:
        _RefusedError: it has so many that they would fill the memory.
    """
    with whole_pictures_only(), opened(io.BytesIO(data), ("PNG",)) as image:
        if image.width * image.height > MOST_PIXELS:
            message = f"{image.width} by {image.height} pixels, more than {MOST_PIXELS:,}"
            raise _RefusedError(message)
        shown = image.convert("RGBA")
    shown.thumbnail((LARGEST_SIDE_PX, LARGEST_SIDE_PX))
    clean = Image.new("RGBA", shown.size)
    clean.paste(shown)
    out = io.BytesIO()
    clean.save(out, "PNG", optimize=True)
    return out.getvalue()


def _svg(data: bytes) -> bytes:
    """Return the drawing alone.

    Raises:
        _RefusedError: it holds what could act or reach out, or draws without end.
    """
    if b"<!ENTITY" in data:
        message = "an entity"
        raise _RefusedError(message)
    root = ET.fromstring(data)  # noqa: S314 - no entity is in it
    if root.tag != f"{_SVG}svg":
        message = f"no <svg> but <{root.tag}>"
        raise _RefusedError(message)
    if not root.get("viewBox"):
        root.set("viewBox", f"0 0 {_pixels(root, 'width')} {_pixels(root, 'height')}")
    ET.register_namespace("", _SVG.strip("{}"))
    kept = _kept(root)
    if _Drawn(kept).parts_of(kept) > MOST_PARTS:
        message = f"more than {MOST_PARTS:,} parts, each as often as it is drawn"
        raise _RefusedError(message)
    return ET.tostring(kept, encoding="unicode").encode()


class _Drawn:
    """How often the parts of a drawing are drawn, where one part may draw another again."""

    def __init__(self, root: ET.Element) -> None:
        self._named = {element.get("id"): element for element in root.iter() if element.get("id")}
        self._begun: set[ET.Element] = set()
        self._known: dict[ET.Element, int] = {}

    def parts_of(self, element: ET.Element) -> int:
        """Return how many parts an element draws, itself and each again that it names.

        Raises:
            _RefusedError: it draws itself.
        """
        if element in self._known:
            return self._known[element]
        if element in self._begun:
            message = "a part that draws itself"
            raise _RefusedError(message)
        self._begun.add(element)
        names = (
            href or url for value in element.attrib.values() for href, url in _NAMES.findall(value)
        )
        again = [self._named[name] for name in names if name in self._named]
        parts = 1 + sum(map(self.parts_of, (*element, *again)))
        self._known[element] = parts
        return parts


def _pixels(root: ET.Element, side: str) -> str:
    found = re.fullmatch(r"(\d+(?:\.\d+)?)(?:px)?", root.get(side, "").strip())
    if not found:
        message = "no viewBox and no size in pixels"
        raise _RefusedError(message)
    return found[1]


def _kept(element: ET.Element) -> ET.Element:
    name = element.tag.removeprefix(_SVG)
    if name not in _DRAWS:
        message = f"<{name}>"
        raise _RefusedError(message)
    kept = ET.Element(f"{_SVG}{name}", dict(_attributes(element)))
    if name in {"style", "title", "desc"}:
        kept.text = _harmless(element.text or "", f"<{name}>")
        if name == "style" and "clip-path" in kept.text:  # what it would draw, we could not count
            message = "a `clip-path` in <style>"
            raise _RefusedError(message)
    # Another namespace is an editor's own memory, and draws nothing.
    for child in element:
        if str(child.tag).startswith(_SVG):
            kept.append(_kept(child))
    return kept


def _attributes(element: ET.Element) -> Iterator[tuple[str, str]]:
    for full, value in element.attrib.items():
        name = full.removeprefix(_XLINK)
        if name.lower().startswith("on"):
            message = f"`{name}=`"
            raise _RefusedError(message)
        if name == "href" and not value.startswith("#"):
            message = f"a link to `{value[:40]}`"
            raise _RefusedError(message)
        if name in _SAYS:
            yield name, _harmless(value, f"`{name}=`")


def _harmless(text: str, where: str) -> str:
    if _REACHES_OUT.search(text):
        message = f"an address in {where}"
        raise _RefusedError(message)
    return text


def _fault(source: Source, code: str, message: str, hint: str) -> Problem:
    return Problem(code=code, source=source, path="logo", message=message, hint=hint)
