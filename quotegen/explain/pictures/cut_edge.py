"""The cut edge of a slab on its paper: where each layer of a cut-away stands."""

from dataclasses import dataclass, replace
from fractions import Fraction

from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.results import Results
from quotegen.quantity import Length, Units
from quotegen.reading.files.rate_book import Finish, Reinforcement
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
        deep = self.px(Length.of_inches(self.joint.saw_depth_in))
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
        return self.px(Length.of_inches(Fraction(style.split(maxsplit=1)[0].split("x")[0])))

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


def deep_left(cut: Cut, height: float) -> float:
    """The inner side of a deep edge at a height: upright, and above it the taper."""
    if cut.deep is None:
        return cut.slab_right
    deep, inner = cut.px(cut.deep.depth), cut.slab_right - cut.px(cut.deep.width)
    taper = cut.px(cut.deep.taper) if cut.deep.taper else 0.0
    return inner - taper * max(0.0, (deep + height) / (deep - cut.thick))


def stone_right(cut: Cut) -> float:
    """Where the stone ends: at the wall of the dig, or under a deep edge."""
    return deep_left(cut, -cut.dig) if cut.deep else cut.dug_right
