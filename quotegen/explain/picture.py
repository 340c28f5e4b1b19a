"""A drawing with its title and a description, as every chart, timeline and swatch has."""

from html import escape

from quotegen.explain import svg
from quotegen.explain.svg import Drawing


def picture(
    size: tuple[float, float], content: str, *, title: str, about: str, ident: str, css: str = ""
) -> Drawing:
    """Wrap a drawing; `about` says in a sentence or two what its lines and fills show."""
    described = svg.element("desc", escape(about)) + content
    drawn = svg.document(
        *size, described, title=title, ident=ident, css_class=f"drawing {css}".strip()
    )
    return Drawing(svg=drawn, title=title)


def scaled(length_px: float, part: tuple[int, int]) -> float:
    """Return a part of a length, given as numerator and denominator."""
    return length_px * part[0] / (part[1] or 1)
