"""The layers of a cut-away: where each stands on the paper, and its strokes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import cos, pi, sin

from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.scatter import numbers, packed, spots
from quotegen.explain.drawing.surfaces import surface_strokes
from quotegen.explain.results import Results
from quotegen.quantity import Length, Units
from quotegen.reading.files.rate_book import Finish, Reinforcement, SteelKind
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.files.site_parts import DeepEdge
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.joints.records import JointPlan

SCALES_US = (
    ("1-1/2 in = 1 ft", 12.0), ("1 in = 1 ft", 8.0), ("3/4 in = 1 ft", 6.0), ("1/2 in = 1 ft", 4.0),
)  # fmt: skip
SCALES_METRIC = (("1 : 8", 12.0), ("1 : 10", 9.6), ("1 : 15", 6.4), ("1 : 20", 4.8))
"""Scales of details: their name, and pixels for one inch."""

NARROW_PX = 400.0
"""On less than this it is drawn for a phone: deeper, so that numbers find room."""

DIG_MOST = 0.3
"""How much of its width the drawing may be deep, at most."""

BOARD_IN, TRENCH_IN = 1.5, 1.6
"""How thick a board is drawn, and how much wider than the board the ground is opened."""

STEEL_HEIGHT = 0.42
"""How far below the top steel is drawn, as a share of the slab."""

SHORT = 0.35355
"""How far up, and left, what runs back by one inch is drawn: half of it at 45 degrees."""

SURFACE_PX = 3.6
"""How far apart lines of a surface stand, at least."""

FORMED = frozenset({EdgeKind.OUTER, EdgeKind.FORMED})


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """The cut edge on its paper, in pixels; heights count from the finished top, up.

    Attributes:
        per_in: pixels for one inch of what is cut.
        top: how far down the paper the finished top lies.
        back: how far left, and up, the drawing runs back.
        thick, dig: of the slab, and of slab and stone together.
        dug_left, stone_left, slab_left, slab_right, dug_right, lawn_right: of the cut face.
        lawn_down: how far the lawn lies below the finished top.
        narrow: whether it is drawn for a phone.
        board, board_down: how thick the form board is, and how far down it reaches.
        joint: of the placement; drawn where it has joints.
        deep: the edge that is deeper than the slab, where it is a formed one.
    """

    per_in: float
    scale: str
    top: float
    back: float
    thick: float
    dig: float
    dug_left: float
    stone_left: float
    slab_left: float
    slab_right: float
    dug_right: float
    lawn_right: float
    lawn_down: float
    narrow: bool
    board: float
    board_down: float
    joint: JointPlan
    steel: Reinforcement
    finish: Finish
    deep: DeepEdge | None

    def at(self, x: float, height: float, back: float) -> Pixel:
        """A point of the cut face, moved back by a share of the depth."""
        return x - back * self.back, self.y(height) - back * self.back

    def y(self, height: float) -> float:
        """How far down the paper a height of the cut face is."""
        return self.top - height

    def px(self, length: Length) -> float:
        """A length of the cut face."""
        return length.ft * 12 * self.per_in

    def lowered(self, top: float) -> "Cut":
        """The same with the finished top farther down the paper."""
        return replace(self, top=top)

    @property
    def bottom(self) -> float:
        """The foot of what is cut, and of the strokes that stand for earth below it."""
        deep = self.px(self.deep.depth) if self.deep else 0.0
        return self.y(-max(self.dig, deep)) + 14

    @property
    def slab_wide(self) -> float:
        return self.slab_right - self.slab_left

    @property
    def joint_x(self) -> float:
        return self.slab_left + 0.55 * self.slab_wide

    @property
    def joint_deep(self) -> float:
        """How deep a joint is cut; zero where there is none."""
        deep = float(self.joint.saw_depth_in) * self.per_in
        return deep if self.joint.joints else 0.0

    @property
    def steel_height(self) -> float:
        return -self.thick * STEEL_HEIGHT

    @property
    def mesh_px(self) -> float:
        """How far apart wires or bars lie."""
        if self.steel.bar:
            return self.px(self.steel.bar.spacing)
        style = self.steel.wire.style if self.steel.wire else "6x6"
        return float(style.split(maxsplit=1)[0].split("x")[0]) * self.per_in

    @property
    def along(self) -> tuple[float, ...]:
        """Where on the cut face the wires that run back come out, the last one in the slab."""
        first, x = self.stone_left + 34, self.slab_right - 3 * self.per_in
        found = list[float]()
        while x > first:
            found.append(x)
            x -= self.mesh_px
        return tuple(reversed(found))

    @property
    def across(self) -> tuple[float, ...]:
        """At which shares of the depth wires cross."""
        step = self.mesh_px * SHORT / self.back
        count = int(0.8 / step) + 1
        return tuple(0.12 + step * index for index in range(count))

    @property
    def on_steel(self) -> Pixel:
        """A place on a wire that crosses, left of the slab."""
        x = (self.stone_left + self.slab_left) / 2 + 10
        return self.at(x, self.steel_height, self.across[-1])


def cut_of(
    results: Results,
    placement: PlacementSpec,
    width: float,
    board: Length | None,
    above_lawn: Length | None,
) -> Cut:
    """Lay out the cut edge of a placement on paper of a width, at the largest scale that fits."""
    job = results.job
    deep = next((one for one in placement.deep_edges if one.along in FORMED), None)
    deepest_in = max(placement.dig_depth.ft, deep.depth.ft if deep else 0.0) * 12
    scales = SCALES_US if job.units is Units.US else SCALES_METRIC
    name, per_in = next((s for s in scales if s[1] * deepest_in <= width * DIG_MOST), scales[-1])
    narrow = width < NARROW_PX
    back = (0.26 if narrow else 0.165) * width
    thick_board, trench = BOARD_IN * per_in, TRENCH_IN * per_in
    lawn_right = width
    dug_right = lawn_right - 0.1 * width
    slab_right = dug_right - thick_board - trench
    joint = results.takeoff.placement(placement.id).joints
    thick = placement.thickness.ft * 12 * per_in
    return Cut(
        per_in=per_in, scale=name, top=0.0, back=back, thick=thick,
        dig=placement.dig_depth.ft * 12 * per_in,
        dug_left=back + 0.03 * width, stone_left=back + 0.12 * width,
        slab_left=(0.6 if narrow else 0.52) * width, slab_right=slab_right,
        dug_right=dug_right, lawn_right=lawn_right,
        lawn_down=above_lawn.ft * 12 * per_in if above_lawn else 0.0,
        narrow=narrow, board=thick_board, board_down=board.ft * 12 * per_in if board else thick,
        joint=joint, steel=job.rate_book.reinforcement[placement.reinforcement],
        finish=job.finish_of(placement, job.finish)[1], deep=deep,
    )  # fmt: skip


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
    right = _stone_right(cut)
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


def _deep_left(cut: Cut, height: float) -> float:
    """The inner side of a deep edge at a height: upright, and above it the taper."""
    if cut.deep is None:
        return cut.slab_right
    deep, inner = cut.px(cut.deep.depth), cut.slab_right - cut.px(cut.deep.width)
    taper = cut.px(cut.deep.taper) if cut.deep.taper else 0.0
    return inner - taper * max(0.0, (deep + height) / (deep - cut.thick))


def _stone_right(cut: Cut) -> float:
    """Where the stone ends: at the wall of the dig, or under a deep edge."""
    return _deep_left(cut, -cut.dig) if cut.deep else cut.dug_right


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
        lower = [(right, foot), (inner, foot), (_deep_left(cut, -cut.thick), under)]
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
        line += [(_stone_right(cut), floor), (inner, foot), (cut.slab_right, foot),
                 (cut.slab_right, shelf), (wall, shelf)]  # fmt: skip
    else:
        line.append((wall, floor))
    ink.stroke([*line, (wall, cut.y(-cut.lawn_down))], Pen.HEAVY)
    ink.stroke(((wall, cut.y(-cut.lawn_down)), (cut.lawn_right, cut.y(-cut.lawn_down))), Pen.HEAVY)
    ends = line[-1][0] if not cut.deep else _stone_right(cut)
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
