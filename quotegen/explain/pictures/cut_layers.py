"""The layers of a cut-away: the strokes of each, the farthest first."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import cos, pi, sin

from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.scatter import numbers, packed, spots
from quotegen.explain.drawing.surfaces import surface_strokes
from quotegen.explain.pictures.cut_edge import SHORT, STEEL_HEIGHT, Cut, deep_left, stone_right
from quotegen.reading.files.rate_book import SteelKind

SURFACE_PX = 3.6
"""How far apart lines of a surface stand, at least."""


def draw_layers(ink: Ink, cut: Cut) -> None:
    """Draw all of it, the farthest first."""
    _lawn(ink, cut)
    _ground(ink, cut)
    if cut.dig > cut.thick:
        _stone(ink, cut)
    _board(ink, cut)
    _slab(ink, cut)
    if cut.steel.kind in {SteelKind.WIRE, SteelKind.BAR}:
        _steel(ink, cut)
    _earth(ink, cut)


def _ragged(cut: Cut, x: float, height: float, seed: int, reach: float = 5) -> list[Pixel]:
    """A broken edge that runs back from a point of the cut face."""
    chance = numbers(seed)
    steps = 11
    return [
        cut.at(x + (reach * (next(chance) - 0.5) * 2 if 0 < n < steps else 0), height, n / steps)
        for n in range(steps + 1)
    ]


def _far(cut: Cut, left: float, right: float, height: float, seed: int) -> list[Pixel]:
    """A broken edge at the back, from left to right."""
    chance, steps = numbers(seed), max(2, int((right - left) / 14))
    (x, y), wide = cut.at(left, height, 1), right - left
    return [
        (x + wide * n / steps, y + (3 * (next(chance) - 0.5) if 0 < n < steps else 0))
        for n in range(steps + 1)
    ]


def _lawn(ink: Ink, cut: Cut) -> None:
    """The lawn beside the dig, its cut rim, and the wall of the dig below it."""
    h, right = -cut.lawn_down, cut.lawn_right
    near, far = cut.at(cut.dug_right, h, 0), cut.at(cut.dug_right, h, 1)
    rim = _ragged(cut, right, h, 3)
    top = [near, (right, cut.y(h)), *rim[1:], *reversed(_far(cut, cut.dug_right, right, h, 4))]
    wall = [near, far, cut.at(cut.dug_right, -cut.thick, 1), cut.at(cut.dug_right, -cut.thick, 0)]
    ink.face(wall, Pen.FINE)
    for n in range(1, 26):
        x, y = cut.at(cut.dug_right, h, n / 26)
        ink.stroke(((x, y), (x, y + 5 + 5 * (n * 0.618 % 1))), Pen.FINE)
    ink.face(top)
    ink.strokes((_far(cut, cut.dug_right, right, h, 4), rim, (near, far)), Pen.MEDIUM)
    chance = numbers(9)
    for u, v in spots(16, 1, 1, 6):
        x, y = cut.at(cut.dug_right + 6 + u * (right - cut.dug_right - 14), h, 0.05 + 0.88 * v)
        ink.strokes(_tuft((x, y), 3.5 + 1.5 * next(chance)), Pen.FINE)


def _tuft(at: Pixel, size: float) -> Iterator[tuple[Pixel, Pixel]]:
    """Three blades of grass."""
    x, y = at
    for lean in (-0.7, 0, 0.7):
        yield (x, y), (x + size * lean, y - size * (1.1 if not lean else 0.9))


def _ground(ink: Ink, cut: Cut) -> None:
    """The floor of the dig, where it is not yet covered."""
    left = _ragged(cut, cut.dug_left, -cut.dig, 5)
    back = _far(cut, cut.dug_left, cut.stone_left, -cut.dig, 6)
    ink.face([*left, *back[1:], cut.at(cut.stone_left, -cut.dig, 0)])
    ink.strokes((left, back), Pen.MEDIUM)
    wide = cut.stone_left - cut.dug_left
    for u, v in spots(34, 1, 1, 8):
        x, y = cut.at(cut.dug_left + 8 + u * (wide - 16), -cut.dig, 0.03 + 0.92 * v)
        ink.stroke(((x - 2, y), (x + 3, y)), Pen.FINE)


def _stone(ink: Ink, cut: Cut) -> None:
    """The stone: its broken side, its top, and its cut face in front."""
    high = cut.dig - cut.thick
    upper, lower = (_ragged(cut, cut.stone_left, h, 7) for h in (-cut.thick, -cut.dig))
    ink.face([*upper, *reversed(lower)], Pen.MEDIUM)
    radii = tuple(min(high / 2.3, cut.per_in * size) for size in (0.95, 0.6, 0.36, 0.22))
    for index, stone in enumerate(packed(cut.back, high - 3, radii, 21, gap=0.8)):
        ring = [
            (cut.stone_left - a + 1, cut.y(-cut.thick) - a + b + 2)
            for a, b in stone.outline(index, corners=6)
        ]
        ink.stroke(ring, Pen.FINE, closed=True)
    top = [*upper, *_far(cut, cut.stone_left, cut.slab_left + 8, -cut.thick, 8)[1:],
           cut.at(cut.slab_left + 8, -cut.thick, 0)]  # fmt: skip
    ink.face(top)
    ink.strokes((upper, _far(cut, cut.stone_left, cut.slab_left, -cut.thick, 8)), Pen.MEDIUM)
    _pebbles_on_top(ink, cut)
    right = stone_right(cut)
    front = [(cut.stone_left, cut.y(-cut.thick)), (right, cut.y(-cut.thick)),
             (right, cut.y(-cut.dig)), (cut.stone_left, cut.y(-cut.dig))]  # fmt: skip
    ink.face(front, Pen.MEDIUM)
    stones = packed(right - cut.stone_left - 4, high - 3, radii, 31, gap=0.8)
    for index, stone in enumerate(stones):
        ring = [(cut.stone_left + 2 + x, cut.y(-cut.thick) + 1.5 + y)
                for x, y in stone.outline(index + 500)]  # fmt: skip
        ink.stroke(ring, Pen.FINE, closed=True)


def _pebbles_on_top(ink: Ink, cut: Cut) -> None:
    wide = cut.slab_left - cut.stone_left
    size = cut.per_in * 0.32
    for index, stone in enumerate(packed(wide - 10, cut.back * 0.94, (size, size * 0.6), 41, 3.2)):
        if index % 2:
            u, v = stone.middle
            x, y = cut.at(cut.stone_left + 8 + u, -cut.thick, 0.02 + v / cut.back)
            ring = replace(stone, middle=(x, y)).outline(index + 900, corners=6, flat=0.55)
            ink.stroke(ring, Pen.FINE, closed=True)


def _board(ink: Ink, cut: Cut) -> None:
    """The form board with its stakes: its top, and the end of the wood."""
    left, right, down = cut.slab_right, cut.slab_right + cut.board, -cut.board_down
    stake = 0.8 * cut.board
    for share in (0.78, 0.06):
        x, y = cut.at(right, 0, share)
        ink.face([(x, y - 2), (x + stake, y - 2), (x + stake, y + 16), (x, y + 16)], Pen.FINE)
    ink.face([cut.at(left, 0, 0), cut.at(right, 0, 0), cut.at(right, 0, 1), cut.at(left, 0, 1)],
             Pen.MEDIUM)  # fmt: skip
    for share in (0.3, 0.62):
        x = left + cut.board * share
        ink.stroke((cut.at(x, 0, 0.04), cut.at(x, 0, 0.55)), Pen.FINE)
        ink.stroke((cut.at(x + 2, 0, 0.6), cut.at(x + 2, 0, 0.97)), Pen.FINE)
    ink.face([(left, cut.y(0)), (right, cut.y(0)), (right, cut.y(down)), (left, cut.y(down))],
             Pen.MEDIUM)  # fmt: skip
    for ring in range(1, 5):
        reach = cut.board * (0.2 + 0.19 * ring)
        arc = [(left + 1 + reach * sin(t * pi / 16), cut.y(down * 0.5) - down * 0.46
                * cos(t * pi / 8) * (0.4 + 0.14 * ring)) for t in range(9)]  # fmt: skip
        ink.stroke([(min(right - 1, x), y) for x, y in arc], Pen.FINE)


def _slab(ink: Ink, cut: Cut) -> None:
    """The slab: its broken side, its surface, and its cut face with a heavy outline."""
    upper, lower = (_ragged(cut, cut.slab_left, h, 9) for h in (0.0, -cut.thick))
    ink.face([*upper, *reversed(lower)], Pen.MEDIUM)
    for u, v in spots(90, 1, 1, 12):
        x, y = cut.at(cut.slab_left, -cut.thick * (0.06 + 0.88 * v), 0.02 + 0.96 * u)
        ink.stroke(((x, y), (x + 0.4, y)), Pen.MEDIUM)
    far = _far(cut, cut.slab_left, cut.slab_right, 0, 10)
    ink.face([*upper, *far[1:], cut.at(cut.slab_right, 0, 0)])
    _surface(ink, cut)
    ink.strokes((upper, far, (cut.at(cut.slab_right, 0, 0), cut.at(cut.slab_right, 0, 1))),
                Pen.MEDIUM)  # fmt: skip
    outline = _slab_outline(cut)
    ink.face(outline)
    _concrete(ink, cut)
    ink.stroke(outline, Pen.HEAVY, closed=True)
    if cut.joint_deep:
        x, y = cut.joint_x, cut.y(-cut.joint_deep)
        ink.stroke((cut.at(x, 0, 1), cut.at(x, 0, 0), (x, y)), Pen.HEAVY)
        chance = numbers(13)
        steps = [y + (cut.y(-cut.thick) - y) * n / 5 for n in range(6)]
        ink.stroke([(x + 3 * (next(chance) - 0.5), down) for down in steps], Pen.FINE)


def _slab_outline(cut: Cut) -> list[Pixel]:
    left, right, under = cut.slab_left, cut.slab_right, cut.y(-cut.thick)
    if cut.deep is None:
        lower = [(right, under)]
    else:
        foot = cut.y(-cut.px(cut.deep.depth))
        inner = right - cut.px(cut.deep.width)
        lower = [(right, foot), (inner, foot), (deep_left(cut, -cut.thick), under)]
    return [(left, cut.y(0)), (right, cut.y(0)), *lower, (left, under)]


def _surface(ink: Ink, cut: Cut) -> None:
    """The finish, as it lies: across as it is, back at half its length."""
    wide, deep = cut.slab_wide / cut.per_in, cut.back / (cut.per_in * SHORT)
    filled = list[Sequence[Pixel]]()
    finest = SURFACE_PX / (cut.per_in * SHORT)
    for stroke in surface_strokes(cut.finish.kind, cut.finish.pattern, wide, deep, finest):
        run = [cut.at(cut.slab_left + x * cut.per_in, 0, 1 - y / deep) for x, y in stroke.points]
        if stroke.filled:
            filled.append(run)
        ink.stroke(run, Pen.FINE, closed=stroke.closed)
    ink.solid(filled, "#777")


def _concrete(ink: Ink, cut: Cut) -> None:
    """Cut concrete: dots and a few small stones; short strokes where fibers are mixed in."""
    wide, high = cut.slab_wide - 8, cut.thick - 8
    left, top = cut.slab_left + 4, cut.y(0) + 4
    if cut.deep:
        across, down = cut.px(cut.deep.width), cut.px(cut.deep.depth) - cut.thick - 3
        for u, v in spots(int(across * down / 60), across - 6, down, 18):
            x, y = cut.slab_right - across + 3 + u, cut.y(-cut.thick) + v
            ink.stroke(((x, y), (x + 0.4, y)), Pen.MEDIUM)
    for u, v in spots(int(wide * high / 60), wide, high, 14):
        ink.stroke(((left + u, top + v), (left + u + 0.4, top + v)), Pen.MEDIUM)
    for u, v in spots(int(wide * high / 500), wide, high, 15):
        x, y = left + u, top + v
        ink.stroke(((x, y), (x + 5, y + 1), (x + 2, y - 4)), Pen.FINE, closed=True)
    if cut.steel.kind is SteelKind.FIBER:
        for index, (u, v) in enumerate(spots(int(wide * high / 170), wide - 9, high, 16)):
            lean = 4 * ((index * 0.618 % 1) - 0.5) * 2
            ink.stroke(((left + u, top + v), (left + u + 9, top + v + lean)), Pen.MEDIUM)


def _steel(ink: Ink, cut: Cut) -> None:
    """Wires or bars on their chairs: open to the eye left of the slab, cut in its face."""
    h, bar = cut.steel_height, cut.steel.kind is SteelKind.BAR
    open_along = [x for x in cut.along if x < cut.slab_left - 4]
    last = cut.across[-1] + 0.06
    for x in open_along:
        for share in cut.across:
            _chair(ink, cut, cut.at(x, h, share))
    for x in open_along:
        _rod(ink, cut.at(x, h, 0.04), cut.at(x, h, last), wide=2.6 if bar else 0)
    for share in reversed(cut.across):
        start, end = cut.at(cut.stone_left + 26, h, share), cut.at(cut.slab_left, h, share)
        _rod(ink, start, end, wide=3.2 if bar else 0)
    front = cut.slab_left + 2, cut.slab_right - 1.5 * cut.per_in
    _rod(ink, (front[0], cut.y(h)), (front[1], cut.y(h)), wide=3.2 if bar else 0)
    cut_through = [x for x in cut.along if x >= cut.slab_left]
    for x in cut_through:
        _chair(ink, cut, (x, cut.y(h)))
    radius = 3.2 if bar else 2.4
    for x in cut_through:
        y = cut.y(h) + radius
        ink.solid([[(x + radius * cos(pi * n / 6), y + radius * sin(pi * n / 6))
                    for n in range(12)]])  # fmt: skip


def _rod(ink: Ink, start: Pixel, end: Pixel, wide: float) -> None:
    """A wire as a heavy line, a bar as a band."""
    if not wide:
        ink.stroke((start, end), Pen.HEAVY)
        return
    flat = abs(start[1] - end[1]) < 1
    x, y = (0.0, wide) if flat else (wide, -wide)
    x, y = (x, y) if flat else (wide * 0.72, -wide * 0.72)
    ink.face([(start[0] - x, start[1] - y), (end[0] - x, end[1] - y),
              (end[0] + x, end[1] + y), (start[0] + x, start[1] + y)], Pen.MEDIUM)  # fmt: skip


def _chair(ink: Ink, cut: Cut, at: Pixel) -> None:
    """A chair under steel: its two legs on the stone."""
    (x, y), high = at, cut.thick * (1 - STEEL_HEIGHT)
    spread = min(7.0, high * 0.24)
    ink.strokes((((x - 1.5, y), (x - spread, y + high)), ((x + 1.5, y), (x + spread, y + high))),
                Pen.MEDIUM)  # fmt: skip


def _earth(ink: Ink, cut: Cut) -> None:
    """The line of the dig from its floor up to the lawn, and the strokes of earth below it."""
    floor, line = cut.y(-cut.dig), [(cut.dug_left, cut.y(-cut.dig))]
    wall = cut.dug_right
    if cut.deep:
        foot = cut.y(-max(cut.dig, cut.px(cut.deep.depth)))
        inner = cut.slab_right - cut.px(cut.deep.width)
        shelf = cut.y(-cut.thick)
        line += [(stone_right(cut), floor), (inner, foot), (cut.slab_right, foot),
                 (cut.slab_right, shelf), (wall, shelf)]  # fmt: skip
    else:
        line.append((wall, floor))
    ink.stroke([*line, (wall, cut.y(-cut.lawn_down))], Pen.HEAVY)
    ink.stroke(((wall, cut.y(-cut.lawn_down)), (cut.lawn_right, cut.y(-cut.lawn_down))), Pen.HEAVY)
    ends = line[-1][0] if not cut.deep else stone_right(cut)
    x = cut.dug_left + 4
    while x < ends - 16:
        ink.strokes((((x + 6 * n, floor + 2), (x + 6 * n - 9, floor + 11)) for n in range(3)),
                    Pen.FINE)  # fmt: skip
        x += 30
    y = cut.y(-cut.lawn_down) + 14
    while y < (floor if not cut.deep else cut.y(-cut.thick)) - 10:
        ink.strokes((((wall + 2, y + 5 * n), (wall + 10, y + 5 * n + 8)) for n in range(3)),
                    Pen.FINE)  # fmt: skip
        y += 26
