"""SVG from numbers, the same for the page and the printed sheet.

Coordinates are CSS pixels of 1/96 inch, y down. Text attributes are spelled out one by one,
since the print engine ignores the `font` shorthand in SVG.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape
from math import atan2, cos, floor, sin

from markupsafe import Markup

from quotegen.explain.drawing.curves import Pixel, number, path_data

INK = "#1a1a1a"
PAPER = "#fff"
THIN = 0.8
LINE = 1.2
THICK = 2.0
MARK_PX = 9.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A finished drawing, what it shows in words, and its scale if it has one."""

    svg: Markup
    title: str
    scale: str = ""


def element(tag: str, content: str = "", **attributes: str | float) -> str:
    """Write one element; `_` in a name stands for `-`, and numbers are rounded to a tenth."""
    written = "".join(
        f' {name.rstrip("_").replace("_", "-")}="'
        f'{escape(value) if isinstance(value, str) else number(value)}"'
        for name, value in attributes.items()
    )
    return f"<{tag}{written}>{content}</{tag}>" if content else f"<{tag}{written}/>"


def line(start: Pixel, end: Pixel, *, width: float = THIN, dash: str = "") -> str:
    """Draw a straight line."""
    extra = {"stroke_dasharray": dash} if dash else {}
    return element(
        "line",
        x1=start[0],
        y1=start[1],
        x2=end[0],
        y2=end[1],
        stroke=INK,
        stroke_width=width,
        **extra,
    )


def rings_path(rings: Iterable[Iterable[Pixel]]) -> str:
    """Write closed rings as path data."""
    return " ".join(path_data(tuple(ring), closed=True) for ring in rings)


def polyline(
    points: Iterable[Pixel], *, width: float = THICK, ink: str = INK, dash: str = ""
) -> str:
    """Draw an open line through points."""
    data = path_data(tuple(points), closed=False)
    extra = {"stroke_dasharray": dash} if dash else {}
    return element(
        "path",
        d=data,
        fill="none",
        stroke=ink,
        stroke_width=width,
        stroke_linejoin="round",
        **extra,
    )


def text(
    at: Pixel,
    words: str,
    *,
    size: float = 13,
    anchor: str = "middle",
    turn: float = 0,
    face: str = "plain",
    halo: bool = False,
) -> str:
    """Write a text; a halo, drawn under it, keeps it legible over hatching.

    Args:
        at: where its baseline begins, or as `anchor` says; rounded to a whole pixel.
        words: the text.
        size: in pixels.
        anchor: `start`, `middle` or `end`.
        turn: in degrees, clockwise.
        face: `plain` or `bold`.
        halo: whether to draw one.
    """
    at = whole(at)
    attributes: dict[str, str | float] = {
        "x": at[0],
        "y": at[1],
        "font_size": size,
    }
    if anchor != "start":
        attributes["text_anchor"] = anchor
    if face == "bold":
        attributes["font_weight"] = "700"
    if turn:
        attributes["transform"] = f"rotate({number(turn)} {number(at[0])} {number(at[1])})"
    written = element("text", escape(words), **attributes, fill=INK)
    if not halo:
        return written
    under = element(
        "text",
        escape(words),
        **attributes,
        fill="#fff",
        stroke="#fff",
        stroke_width=6,
        stroke_linejoin="round",
        aria_hidden="true",
    )
    return under + written


def whole(at: Pixel) -> Pixel:
    """The nearest whole pixel."""
    return (floor(at[0] + 0.5), floor(at[1] + 0.5))


def arrow(start: Pixel, end: Pixel, *, width: float = 1.4, dash: str = "") -> str:
    """Draw an arrow with a slender head."""
    angle = atan2(end[1] - start[1], end[0] - start[0])
    wings = [
        (end[0] - 10 * cos(angle + side), end[1] - 10 * sin(angle + side)) for side in (0.3, -0.3)
    ]
    head = element("path", d=rings_path([[end, *wings]]), fill=INK)
    return line(start, end, width=width, dash=dash) + head


def station(at: Pixel, radius: float) -> str:
    """Draw a point on the ground: a dot in a ring."""
    ring = element("circle", cx=at[0], cy=at[1], r=radius, fill="none", stroke=INK)
    return ring + element("circle", cx=at[0], cy=at[1], r=radius / 3, fill=INK)


def mark(at: Pixel, letter: str) -> str:
    """Draw a callout: a letter in a ring, which a row of the table explains."""
    x, y = whole(at)
    ring = element("circle", cx=x, cy=y, r=MARK_PX, fill="#fff", stroke=INK, stroke_width=THIN)
    return ring + text((x, y + 5), letter, size=13)


def drawing(
    size: tuple[float, float],
    content: str,
    *,
    title: str,
    ident: str,
    about: str = "",
    family: str = "",
    css_class: str = "drawing",
    scale: str = "",
) -> Drawing:
    """Finish a drawing.

    Args:
        size: its width and height in pixels.
        content: all that is drawn.
        title: its alternative text, on the page and in the PDF.
        ident: unique on the page.
        about: a sentence or two on what its lines and fills show.
        family: the font of its texts.
        css_class: for the style sheets.
        scale: as a ruler reads it, empty where it is drawn to none.
    """
    width, height = size
    named = element("title", escape(title), id=f"{ident}-t")
    described = element("desc", escape(about)) if about else ""
    lettered = {"font_family": f"{family}, sans-serif"} if family else {}
    svg = element(
        "svg", named + described + content, xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {number(width)} {number(height)}", width=width, height=height,
        **lettered, role="img", aria_labelledby=f"{ident}-t", class_=css_class,
    )  # fmt: skip
    return Drawing(svg=Markup(svg), title=title, scale=scale)  # noqa: S704 - every text is escaped
