"""Surfaces seen from above, in strokes: real inches across and down, for any scale.

What it shows is what a hand would feel: the lines of a broom, stones that stand out, the ridges of
split stone, the joints of cut stones, planks or bricks. Nothing is tiled.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.pens import Pen
from quotegen.explain.drawing.scatter import numbers, packed, spots
from quotegen.reading.files.rate_book import FinishKind, Pattern

Points = tuple[Pixel, ...]

PLANK_IN = 6.0


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line, a ring, or a ring filled with the second tone."""

    points: Points
    pen: Pen = Pen.FINE
    closed: bool = False
    filled: bool = False


def surface_strokes(
    kind: FinishKind, pattern: Pattern, wide: float, high: float, finest: float
) -> tuple[Stroke, ...]:
    """The strokes of a surface of so many inches across and down.

    Args:
        kind: of the finish.
        pattern: what its stamps show, where it is a stamped pattern.
        wide: in inches.
        high: in inches.
        finest: how many inches apart lines must be to be told apart at the scale of the drawing.
    """
    draw = _PATTERNS[pattern] if kind is FinishKind.STAMPED_PATTERN else _KINDS[kind]
    return tuple(one for one in draw(wide, high, finest) if _is_on(one, wide, high))


def _is_on(stroke: Stroke, wide: float, high: float) -> bool:
    """Whether all of a stroke lies on the surface."""
    return all(-0.01 <= x <= wide + 0.01 and -0.01 <= y <= high + 0.01 for x, y in stroke.points)


def _broom(wide: float, high: float, finest: float) -> Iterator[Stroke]:
    """Fine lines right across, broken where the broom skips, a deeper one now and then."""
    chance = numbers(3)
    y = 0.12
    while y < high:
        x = -6 * next(chance)
        while x < wide:
            end = x + 5 + 14 * next(chance)
            run = (max(0.0, x), y), (min(wide, end), y + 0.1 * (next(chance) - 0.5))
            if end > 0 and run[0][0] < run[1][0]:
                yield Stroke(run, Pen.MEDIUM if next(chance) < 0.12 else Pen.FINE)
            x = end + 0.2 + 0.6 * next(chance)
        y += max(0.22, finest) * (1 + 0.4 * next(chance))


def _exposed(wide: float, high: float, finest: float) -> Iterator[Stroke]:
    """Stones of three sizes, packed; some of them dark."""
    least = max(0.22, finest / 2)
    stones = packed(wide, high, (2.2 * least, 1.5 * least, least), 5, gap=0.2 * least)
    for index, stone in enumerate(stones):
        ring = tuple(stone.outline(index, corners=6))
        yield Stroke(ring, closed=True, filled=index % 9 == 4)


def _texture(wide: float, high: float, finest: float) -> Iterator[Stroke]:
    """The skin of split stone: ridges in sheaves of lines that run on beside one another."""
    chance = numbers(7)
    for _ in range(int(wide * high / max(3.2, 14 * finest)) + 4):
        x, y = wide * next(chance), high * next(chance)
        long, lean, bend = 1.5 + 5 * next(chance), 1.2 * next(chance), 0.6 * next(chance)
        for row in range(1 + int(4.5 * next(chance) ** 2)):
            down, part = y + max(0.16, finest) * row, 1 - 0.2 * row
            run = (
                (x + long * part * (t - 0.5) + 0.35 * row, down + lean * (t - 0.5)
                 + bend * sin(2.4 * pi * t + y) * part)
                for t in (0, 0.14, 0.28, 0.42, 0.56, 0.7, 0.84, 1)
            )  # fmt: skip
            inside = tuple(at for at in run if 0 <= at[0] <= wide and 0 <= at[1] <= high)
            if len(inside) > 1:
                yield Stroke(inside, Pen.FINE if row else Pen.MEDIUM)


def _cut_stone(wide: float, high: float, _finest: float) -> Iterator[Stroke]:
    """Cut stones in courses of three heights, their ends nowhere in line, with a worn face."""
    yield from _courses(wide, high, (8.0, 5.5, 11.0), (9.0, 19.0), 13)
    for index, (x, y) in enumerate(spots(int(wide * high / 9), wide, high, 5)):
        turn = 2 * pi * (index * 0.618 % 1)
        run = (x, y), (x + 0.7 * cos(turn), y + 0.3 * sin(turn))
        yield Stroke(tuple((min(wide, max(0, a)), min(high, max(0, b))) for a, b in run))


def _brick(wide: float, high: float, _finest: float) -> Iterator[Stroke]:
    """Bricks of 8 by 4 in, each course half a brick on."""
    tops = [4.0 * row for row in range(int(high / 4) + 2)]
    for row, (top, foot) in enumerate(pairwise(tops)):
        if 0 < top < high:
            yield Stroke(((0, top), (wide, top)), Pen.MEDIUM)
        x = 8.0 if row % 2 else 4.0
        while x < wide:
            yield Stroke(((x, top), (x, min(foot, high))), Pen.MEDIUM)
            x += 8


def _planks(wide: float, high: float, finest: float) -> Iterator[Stroke]:
    """Boards 6 in wide with their grain, long, their ends far apart, a knot here and there."""
    chance, top, row = numbers(17), 0.0, 0
    while top < high:
        if row:
            yield Stroke(((0, top), (wide, top)), Pen.MEDIUM)
        if row % 2:
            end = wide * (0.2 + 0.6 * (row * 0.618 % 1))
            yield Stroke(((end, top), (end, min(top + PLANK_IN, high))), Pen.MEDIUM)
        yield from _grain(wide, top, wide * (0.15 + 0.7 * next(chance)), finest)
        top, row = top + PLANK_IN, row + 1


def _grain(wide: float, top: float, knot: float, finest: float) -> Iterator[Stroke]:
    """The grain of one board: long lines that part around a knot."""
    middle, lines = PLANK_IN / 2, max(2, min(8, int(PLANK_IN / finest)))
    for line in range(1, lines):
        y = PLANK_IN * line / lines
        away = (y - middle) or 0.05
        bulge = 0.7 * (1 if away > 0 else -1) * (1 - abs(away) / middle)
        steps = [wide * step / 24 for step in range(25)]
        run = [(x, top + y + bulge * _near(x, knot) + 0.08 * sin(x / 4 + line)) for x in steps]
        yield Stroke(tuple(run[line % 3 :]))
    ring = ((0.7 * cos(pi * n / 6), 0.35 * sin(pi * n / 6)) for n in range(12))
    yield Stroke(tuple((knot + x, top + middle + y) for x, y in ring), closed=True)


def _near(x: float, at: float) -> float:
    return max(0.0, 1 - ((x - at) / 3.5) ** 2)


def _courses(
    wide: float, high: float, heights: tuple[float, ...], lengths: Pixel, seed: int
) -> Iterator[Stroke]:
    chance, top, row = numbers(seed), 0.0, 0
    while top < high:
        foot = min(high, top + heights[row % len(heights)])
        if row:
            yield Stroke(((0, top), (wide, top)), Pen.MEDIUM)
        x = lengths[0] * (0.4 + next(chance))
        while x < wide:
            yield Stroke(((x, top), (x, foot)), Pen.MEDIUM)
            x += lengths[0] + (lengths[1] - lengths[0]) * next(chance)
        top, row = foot, row + 1


_KINDS: Mapping[FinishKind, Callable[[float, float, float], Iterator[Stroke]]] = {
    FinishKind.BROOM: _broom,
    FinishKind.EXPOSED_AGGREGATE: _exposed,
    FinishKind.STAMPED_TEXTURE: _texture,
}
_PATTERNS: Mapping[Pattern, Callable[[float, float, float], Iterator[Stroke]]] = {
    Pattern.CUT_STONE: _cut_stone,
    Pattern.BRICK: _brick,
    Pattern.PLANKS: _planks,
}
