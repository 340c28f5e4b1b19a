"""Hatches: what a surface or a material looks like in a drawing, in strokes that photocopy.

Each is a pattern large enough not to read as tiles. The strokes of the irregular ones come from
a fixed sequence, so that the same drawing is always the same bytes.
"""

from collections.abc import Iterator
from math import cos, pi, sin

from quotegen.explain.drawing.svg import element
from quotegen.reading.files.rate_book import FinishKind

STROKE = "#8c8c8c"


def surface(kind: FinishKind, ident: str) -> str:
    """The pattern of a finish as seen from above."""
    by_kind = {
        FinishKind.BROOM: _broom,
        FinishKind.EXPOSED_AGGREGATE: _exposed,
        FinishKind.STAMPED_TEXTURE: _texture,
        FinishKind.STAMPED_PATTERN: _pattern,
    }
    return by_kind[kind](ident)


def ground(ident: str) -> str:
    """The pattern of earth, or of a house wall, cut through: lines at 45 degrees."""
    strokes = element("path", d="M-2 2 L2 -2 M0 8 L8 0 M6 10 L10 6", stroke=STROKE, stroke_width=1)
    return _tile(ident, 8, 8, strokes)


def stone(ident: str) -> str:
    """The pattern of crushed stone, cut through: small rough rings."""
    rings = "".join(
        element(
            "path", d=_pebble(x, y, 3 + 2 * size, turn), fill="none", stroke=STROKE, stroke_width=1
        )
        for (x, y), size, turn in zip(
            _spots(12, 54), _sequence(12, 7), _sequence(12, 3), strict=True
        )
    )
    return _tile(ident, 54, 54, rings)


def concrete(ident: str) -> str:
    """The pattern of concrete, cut through: scattered dots and a few small triangles."""
    dots = element(
        "path",
        d=" ".join(f"M{x:.1f} {y:.1f} h0.1" for x, y in _spots(26, 60)),
        stroke=STROKE,
        stroke_width=1.8,
        stroke_linecap="round",
    )
    triangles = "".join(
        element(
            "path",
            d=f"M{x - 3:.1f} {y + 2:.1f} l3 -5 l3 5 Z",
            fill="none",
            stroke=STROKE,
            stroke_width=0.9,
        )
        for x, y in _spots(5, 60, start=41)
    )
    return _tile(ident, 60, 60, dots + triangles)


def _broom(ident: str) -> str:
    lines = "".join(
        element("line", x1=0, y1=y, x2=96, y2=y, stroke=STROKE, stroke_width=0.5)
        for y in (3, 8, 13, 18)
    )
    return _tile(ident, 96, 20, lines)


def _exposed(ident: str) -> str:
    stones = "".join(
        element(
            "circle",
            cx=x,
            cy=y,
            r=0.8 + 1.1 * size,
            fill="none" if size < 0.5 else STROKE,
            stroke=STROKE,
            stroke_width=0.7,
        )
        for (x, y), size in zip(_spots(60, 96), _sequence(60, 5), strict=True)
    )
    return _tile(ident, 96, 96, stones)


def _texture(ident: str) -> str:
    strokes = []
    for (x, y), turn, size in zip(_spots(24, 108), _sequence(24, 3), _sequence(24, 7), strict=True):
        dx, dy = (6 + 8 * size) * cos(turn * pi), (6 + 8 * size) * sin(turn * pi) * 0.5
        curve = f"M{x - dx:.1f} {y - dy:.1f} q{dx * 0.8:.1f} {dy + 3:.1f} {dx * 2:.1f} {dy * 2:.1f}"
        strokes.append(element("path", d=curve, fill="none", stroke=STROKE, stroke_width=0.7))
    return _tile(ident, 108, 108, "".join(strokes))


def _pattern(ident: str) -> str:
    cuts = (
        ((0, 0), (96, 0)),
        ((0, 32), (56, 32)),
        ((56, 16), (96, 16)),
        ((56, 56), (96, 56)),
        ((0, 64), (56, 64)),
        ((56, 0), (56, 96)),
        ((24, 0), (24, 32)),
        ((76, 16), (76, 56)),
        ((36, 32), (36, 64)),
        ((20, 64), (20, 96)),
        ((72, 56), (72, 96)),
        ((96, 0), (96, 96)),
    )
    lines = "".join(
        element("line", x1=a[0], y1=a[1], x2=b[0], y2=b[1], stroke=STROKE, stroke_width=0.7)
        for a, b in cuts
    )
    return _tile(ident, 96, 96, lines)


def _tile(ident: str, width: float, height: float, content: str) -> str:
    return element(
        "pattern", content, id=ident, width=width, height=height, patternUnits="userSpaceOnUse"
    )


def _sequence(count: int, start: int) -> Iterator[float]:
    """Numbers from 0 to 1 that look scattered and are the same each time."""
    for index in range(count):
        yield (index + start) * 0.618033988749895 % 1


def _spots(count: int, side: float, start: int = 1) -> Iterator[tuple[float, float]]:
    """Points spread over a square, clear of its rim, in no order that the eye sees."""
    for index in range(start, start + count):
        x, y = index * 0.7548776662466927 % 1, index * 0.5698402909980532 % 1
        yield 5 + x * (side - 10), 5 + y * (side - 10)


def _pebble(x: float, y: float, size: float, turn: float) -> str:
    corners = [
        (
            x + size * (0.8 + 0.3 * ((i * 3) % 2)) * cos(turn * pi + i * pi / 3),
            y + size * 0.8 * sin(turn * pi + i * pi / 3),
        )
        for i in range(6)
    ]
    return "M" + " L".join(f"{px:.1f} {py:.1f}" for px, py in corners) + " Z"
