"""The cut-away: the edge of a slab lifted open, from the dug ground to the finished surface.

A cabinet drawing: what is cut faces the reader to scale, and what runs back runs to the upper left
at 45 degrees and half its length. The layers stand from left to right in the order of the work.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.dimension import Dimension, draw_dimensions
from quotegen.explain.drawing.flags import Flag, draw_flags, draw_numbers, flags_height
from quotegen.explain.drawing.pens import Ink
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.font import Font
from quotegen.explain.pictures.cut_edge import Cut, cut_of
from quotegen.explain.pictures.cut_layers import draw_layers
from quotegen.explain.results import Results
from quotegen.explain.words.prose import sentence
from quotegen.quantity import Length
from quotegen.reading.files.rate_book import SteelKind
from quotegen.reading.records import PlacementSpec

CHAIN_PX, WHOLE_PX, MARGIN_PX = 26.0, 56.0, 74.0
"""From the end of the lawn to the dimensions of the layers, to that of the dig, to the rim."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AtTheEdge:
    """What stands beside the slab, where its owner has said so.

    Attributes:
        board: how high the form board is.
        above_lawn: how far the finished top stands over the lawn.
        below_sill: how far the finished top stays below the door sill.
    """

    board: Length | None = None
    above_lawn: Length | None = None
    below_sill: Length | None = None


NOTHING_SAID = AtTheEdge()


def cutaway(
    results: Results,
    placement: PlacementSpec,
    width: float,
    ident: str,
    beside: AtTheEdge = NOTHING_SAID,
) -> Drawing:
    """Draw the edge of one placement, cut open.

    Args:
        results: the job and its words.
        placement: whose edge it is.
        width: in pixels; a narrow one has numbers and a list in place of flags, and no scale.
        ident: unique on the page.
        beside: what the owner has said of the edge; what is not said is not drawn to a figure.
    """
    words = results.words
    cut = cut_of(results, placement, width - MARGIN_PX, beside.board, beside.above_lawn)
    ink, narrow = Ink(), cut.narrow
    count = len(tuple(_flags(results, placement, cut, beside)))
    cut = cut.lowered((12.0 if narrow else flags_height(count)) + cut.back + 6)
    draw_layers(ink, cut)
    flags = tuple(_flags(results, placement, cut, beside))
    dimensions = _dimensions(results, placement, cut, beside)
    ink.put(draw_dimensions(one for one in dimensions if _has_room(one, words.font)))
    bottom = cut.bottom + 26
    if narrow:
        bottom = draw_numbers(ink, flags, words.font, bottom, width)
    else:
        draw_flags(ink, flags, 2)
    note = words("cutaway_half") if narrow else words("cutaway_scale", scale=cut.scale)
    for line in words.font.wrapped(note, width, 12):
        ink.put(svg.text((0, bottom + 14), line, size=12, anchor="start"))
        bottom += 16
    return svg.drawing(
        (width, bottom + 6), ink.drawn(),
        title=words("cutaway_title", placement=placement.name),
        about=" ".join(sentence(flag.words) for flag in flags),
        ident=ident, family=words.font.family, scale="" if narrow else cut.scale,
        css_class="drawing cutaway",
    )  # fmt: skip


def _flags(
    results: Results, placement: PlacementSpec, cut: Cut, beside: AtTheEdge
) -> Iterator[Flag]:
    """Name each layer where the work of it can be seen."""
    job, words = results.job, results.words
    steel = job.rate_book.reinforcement[placement.reinforcement]
    dug = words("cutaway_ground", depth=words.depth(placement.dig_depth))
    yield Flag(at=cut.at((cut.dug_left + cut.stone_left) / 2 - 4, -cut.dig, 0.62), words=dug)
    if placement.base.feet:
        stone = words("cutaway_base", depth=words.depth(placement.base),
                      material=results.job.rate_book.base_material)  # fmt: skip
        yield Flag(at=cut.at(cut.stone_left + 14, -cut.thick, 0.55), words=_head(stone))
    if steel.kind in {SteelKind.WIRE, SteelKind.BAR}:
        yield Flag(at=cut.on_steel, words=_head(steel.name))
    slab = words("cutaway_slab", depth=words.depth(placement.thickness))
    if steel.kind is SteelKind.FIBER:
        slab = words("cutaway_fibers", slab=slab, fibers=steel.name)
    yield Flag(at=cut.at(cut.slab_left, -cut.thick * 0.45, 0.3 if cut.narrow else 0.62), words=slab)
    if cut.deep:
        deep = words("section_deep", width=words.depth(cut.deep.width),
                     depth=words.depth(cut.deep.depth))  # fmt: skip
        x = cut.slab_right - cut.px(cut.deep.width) / 2
        yield Flag(at=(x, cut.y(-cut.thick) + 10), words=deep)
    finish = job.finish_of(placement, job.finish)[1].name
    yield Flag(
        at=cut.at(cut.slab_left + 0.3 * cut.slab_wide, 0, 0.42 if cut.narrow else 0.86),
        words=_head(finish),
    )
    if cut.joint_deep:
        depth = words.depth(Length(cut.joint.saw_depth_in / 12))
        yield Flag(at=cut.at(cut.joint_x, 0, 0.93), words=words("cutaway_joint", depth=depth))
    board = words("cutaway_board")
    if beside.board:
        board = words("cutaway_board_high", depth=words.depth(beside.board))
    yield Flag(at=cut.at(cut.slab_right + cut.board / 2, 0, 0.9), words=board)
    lawn = words("cutaway_lawn")
    if beside.above_lawn:
        lawn = words("cutaway_lawn_lower", depth=words.depth(beside.above_lawn))
    yield Flag(at=cut.at((cut.dug_right + cut.lawn_right) / 2, -cut.lawn_down, 0.7), words=lawn)


def _dimensions(
    results: Results, placement: PlacementSpec, cut: Cut, beside: AtTheEdge
) -> Iterator[Dimension]:
    """The slab, the stone, and both together as the dig; the sill."""
    words = results.words
    x = cut.lawn_right + CHAIN_PX
    top, below, bottom = cut.y(0), cut.y(-cut.thick), cut.y(-cut.dig)
    yield _upright(words.depth(placement.thickness), x, top, below, cut.dug_right + 4)
    if placement.base.feet:
        yield _upright(words.depth(placement.base), x, below, bottom, cut.dug_right + 4)
        whole = x + WHOLE_PX - CHAIN_PX
        dug = words("cutaway_dig", depth=words.depth(placement.dig_depth))
        yield _upright(dug, whole, top, bottom, x)
    if beside.below_sill:
        sill = words("cutaway_sill", depth=words.depth(beside.below_sill))
        up = cut.y(cut.px(beside.below_sill))
        yield Dimension(start=(x, top), end=(x, up), words="", measured=())
        yield Dimension(start=(x - 40, up), end=(x + 46, up), words=sill, size=12)


def _has_room(one: Dimension, font: Font) -> bool:
    """Whether an upright text is no longer than its line; its flag says the same."""
    (x, y), (to_x, to_y) = one.start, one.end
    return x != to_x or font.width(one.words, one.size) + 4 < abs(y - to_y)


def _upright(words: str, x: float, top: float, bottom: float, foot: float) -> Dimension:
    ends: tuple[Pixel, Pixel] = (x, top), (x, bottom)
    return Dimension(
        start=ends[0], end=ends[1], words=words, measured=((foot, top), (foot, bottom)), size=12
    )


def _head(text: str) -> str:
    return text[:1].upper() + text[1:]
