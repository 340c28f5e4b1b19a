"""The drawing module: SVG from numbers, the same for the page and the printed sheet.

Coordinates are CSS pixels of 1/96 inch, y down. Text attributes are spelled out one by one,
since the print engine ignores the `font` shorthand in SVG.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape
from math import atan2, cos, degrees, hypot, pi, sin

from markupsafe import Markup

from quotegen.explain.curves import Pixel, number, path_data

INK = "#1a1a1a"
GREY = "#5a5a5a"
PAPER = "#fff"
THIN = 0.8
LINE = 1.2
THICK = 2.0
SANS = "Atkinson Hyperlegible Next, sans-serif"


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A finished drawing and what it shows, in words."""

    svg: Markup
    title: str
    scale: str = ""


def element(tag: str, content: str = "", **attributes: str | float) -> str:
    """Write one element; `_` in a name stands for `-`, and numbers are cut to a tenth."""
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
        at: where its baseline begins, or its middle.
        words: the text.
        size: in pixels.
        anchor: `start`, `middle` or `end`.
        turn: in degrees, clockwise.
        face: `plain` or `bold`.
        halo: whether to draw one.
    """
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


def text_width(words: str, size: float) -> float:
    """Estimate how wide a text runs."""
    return len(words) * size * 0.53


def wrapped(words: str, width: float, size: float) -> tuple[str, ...]:
    """Break a text into lines that fit a width."""
    lines = [""]
    for word in words.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and text_width(longer, size) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(lines)


def dimension(
    start: Pixel,
    end: Pixel,
    words: str,
    *,
    size: float = 12,
    extension: tuple[Pixel, Pixel] | None = None,
    text_at: float = 0.5,
) -> str:
    """Draw a dimension line with oblique ticks and its text above, to be read from below or right.

    Args:
        start: one end of the dimension line.
        end: its other end.
        words: the dimension.
        size: of the text.
        extension: the two points on the object that thin projection lines come from.
        text_at: how far along the line the text stands.
    """
    parts = [line(start, end)]
    for measured, near in zip(extension or (), (start, end), strict=False):
        parts.append(line(_toward(measured, near, 4), _toward(near, measured, -5)))
    angle = atan2(end[1] - start[1], end[0] - start[0])
    tick = (5 * cos(angle - 0.785), 5 * sin(angle - 0.785))
    for x, y in (start, end):
        parts.append(line((x - tick[0], y - tick[1]), (x + tick[0], y + tick[1]), width=1.6))
    at = dimension_text_at(start, end, text_at)
    parts.append(text(at, words, size=size, turn=degrees(_reading_angle(start, end)), halo=True))
    return "".join(parts)


def dimension_text_at(start: Pixel, end: Pixel, share: float) -> Pixel:
    """Return where the text of a dimension stands: above its line as it is read."""
    up = _reading_angle(start, end)
    return (
        start[0] + (end[0] - start[0]) * share + 4 * sin(up),
        start[1] + (end[1] - start[1]) * share - 4 * cos(up),
    )


def _reading_angle(start: Pixel, end: Pixel) -> float:
    """Return the angle of a text along a line, so that it reads from below or from the right."""
    angle = atan2(end[1] - start[1], end[0] - start[0])
    if angle > pi / 2 - 0.01:
        return angle - pi
    return angle + pi if angle <= -pi / 2 - 0.01 else angle


def arrow(start: Pixel, end: Pixel, *, width: float = 1.4, dash: str = "") -> str:
    """Draw an arrow with a slender head."""
    angle = atan2(end[1] - start[1], end[0] - start[0])
    wings = [
        (end[0] - 10 * cos(angle + side), end[1] - 10 * sin(angle + side)) for side in (0.3, -0.3)
    ]
    head = element("path", d=rings_path([[end, *wings]]), fill=INK)
    return line(start, end, width=width, dash=dash) + head


def station(at: Pixel, radius: float) -> str:
    """Draw a place on the ground: a dot in a ring."""
    ring = element("circle", cx=at[0], cy=at[1], r=radius, fill="none", stroke=INK)
    return ring + element("circle", cx=at[0], cy=at[1], r=radius / 3, fill=INK)


def mark(at: Pixel, letter: str) -> str:
    """Draw a callout: a letter in a ring, tied to a row of the table."""
    ring = element("circle", cx=at[0], cy=at[1], r=9.5, fill="#fff", stroke=INK, stroke_width=THIN)
    return ring + text((at[0], at[1] + 4.5), letter, size=13)


def document(
    width: float, height: float, content: str, *, title: str, ident: str, css_class: str = ""
) -> Markup:
    """Wrap a drawing; its title is its alternative text on the page and in the PDF."""
    name = element("title", escape(title), id=f"{ident}-t")
    return Markup(element(  # noqa: S704 - every text in it went through escape
        "svg", name + content, xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {number(width)} {number(height)}", width=width, height=height,
        font_family=SANS, role="img", aria_labelledby=f"{ident}-t",
        class_=css_class or "drawing",
    ))  # fmt: skip


def _toward(start: Pixel, end: Pixel, distance: float) -> Pixel:
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1
    return (
        start[0] + (end[0] - start[0]) / length * distance,
        start[1] + (end[1] - start[1]) / length * distance,
    )
