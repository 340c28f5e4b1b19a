"""The section: ground, base, slab, steel and surface, cut through, with this job's depths."""

from collections.abc import Iterator

from quotegen.explain.drawing import hatches, svg
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.dimension import Dimension, draw_dimensions
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.font import Font
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.quantity import Length
from quotegen.reading.files.rate_book import SteelKind
from quotegen.reading.files.site_parts import DeepEdge
from quotegen.reading.records import JobSpec, PlacementSpec

PX_PER_INCH_DEEP = 11.0
GROUND_PX = 34.0
TOP_PX = 30.0
CUT_SHARE = 0.56
DEPTH_X = 36.0


def draw_section(results: Results, placement: PlacementSpec, width: float, ident: str) -> Drawing:
    """Draw the section of one placement, the depths to one scale, its layers named at the right."""
    job, words = results.job, results.words
    left, right = 62.0, width * CUT_SHARE
    below = TOP_PX + _px(placement.thickness)
    bottom = below + _px(placement.base)
    slab = _slab(placement, left, right)
    ground_top = max(bottom, *(y for _, y in slab))
    surface = words("section_surface", finish=job.finish_of(placement, job.finish)[1].name)
    steel = job.rate_book.reinforcement[placement.reinforcement]
    stone_right = right - sum(_reach_px(deep) for deep in placement.deep_edges[1:])
    names = (
        ((right, (TOP_PX + below) / 2), _slab_name(job, placement, words)),
        (
            (stone_right, (below + bottom) / 2),
            words("section_base", material=job.rate_book.base_material),
        ),
        ((right, ground_top + GROUND_PX / 2), words("section_ground")),
    )
    parts = [
        svg.element(
            "defs",
            hatches.ground(f"{ident}-ground")
            + hatches.stone(f"{ident}-stone")
            + hatches.concrete(f"{ident}-concrete"),
        ),
        _layer(_box(left, right, bottom, ground_top + GROUND_PX), f"{ident}-ground", 0),
        _layer(_box(left, right, below, bottom), f"{ident}-stone", svg.THIN),
        _layer(slab, f"{ident}-concrete", svg.THICK),
        *_steel(steel.kind, left, right, TOP_PX, below - TOP_PX),
        draw_dimensions(
            (
                _depth(words.depth(placement.thickness), left, TOP_PX, below),
                _depth(words.depth(placement.base), left, below, bottom),
            )
        ),
        *_deep(placement, words, left, right),
        svg.text((left, TOP_PX - 10), surface, size=13, anchor="start", face="bold"),
        *(part for at, name in names for part in _named(name, at, right, width, words.font)),
    ]
    return svg.drawing(
        (width, ground_top + GROUND_PX + 4),
        "".join(parts),
        title=words("section_title", placement=placement.name),
        ident=ident,
        family=words.font.family,
        css_class="drawing section",
    )


def _slab_name(job: JobSpec, placement: PlacementSpec, words: Words) -> str:
    steel = job.rate_book.reinforcement[placement.reinforcement].name
    strength = words.number(job.rate_book.mix.strength_psi, 0)
    return words("section_slab", steel=steel, strength=strength)


def _depth(depth: str, left: float, top: float, bottom: float) -> Dimension:
    """Dimension a layer at the left."""
    ends = (DEPTH_X, top), (DEPTH_X, bottom)
    return Dimension(
        start=ends[0], end=ends[1], words=depth, measured=((left, top), (left, bottom))
    )


def _named(name: str, at: Pixel, right: float, width: float, font: Font) -> Iterator[str]:
    """Name a layer beside it, at a thin line, in as many rows as the name takes."""
    start, height = right + 26, at[1]
    yield svg.line((at[0] - 10, height), (start - 5, height))
    lines = font.wrapped(name, width - start, 12)
    first = height + 4 - (len(lines) - 1) * 7
    for index, words in enumerate(lines):
        yield svg.text((start, first + index * 14), words, size=12, anchor="start")


def _px(depth: Length) -> float:
    return depth.ft * 12 * PX_PER_INCH_DEEP


def _slab(placement: PlacementSpec, left: float, right: float) -> list[Pixel]:
    """The outline of the slab, with its deep edges to scale at the left and at the right."""
    top, below = TOP_PX, TOP_PX + _px(placement.thickness)
    under: list[Pixel] = []
    for deep, at, inward in zip(placement.deep_edges, (left, right), (1, -1), strict=False):
        down, wide = top + _px(deep.depth), _px(deep.width)
        corners = [(at, down), (at + inward * wide, down), (at + inward * _reach_px(deep), below)]
        under = [*under, *(corners if inward > 0 else reversed(corners))]
    ends = len(placement.deep_edges)
    under = [*([] if ends else [(left, below)]), *under, *([] if ends > 1 else [(right, below)])]
    return [(right, top), (left, top), *under]


def _reach_px(deep: DeepEdge) -> float:
    """How far in under the slab a deep edge reaches, with its taper."""
    return _px(deep.width) + (_px(deep.taper) if deep.taper else 0.0)


def _deep(placement: PlacementSpec, words: Words, left: float, right: float) -> Iterator[str]:
    """Write the width and the depth of each deep edge below it."""
    for deep, at, anchor in zip(
        placement.deep_edges, (left, right), ("start", "end"), strict=False
    ):
        size = words("section_deep", width=words.depth(deep.width), depth=words.depth(deep.depth))
        at_px = (at, TOP_PX + _px(deep.depth) + 15)
        yield svg.text(at_px, size, size=12, anchor=anchor, halo=True)


def _box(left: float, right: float, top: float, bottom: float) -> list[Pixel]:
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def _layer(ring: list[Pixel], pattern: str, outline: float) -> str:
    """Draw a layer over what lies behind it: paper, its hatch, and its outline."""
    data = svg.rings_path([ring])
    paper = svg.element("path", d=data, fill=svg.PAPER)
    hatch = f"url(#{pattern})"
    if not outline:
        return paper + svg.element("path", d=data, fill=hatch)
    return paper + svg.element("path", d=data, fill=hatch, stroke=svg.INK, stroke_width=outline)


def _steel(kind: SteelKind, left: float, right: float, top: float, slab_px: float) -> Iterator[str]:
    """Draw steel a little above the middle on its supports, or fibers all through the slab."""
    height = top + slab_px * 0.42
    if kind in {SteelKind.WIRE, SteelKind.BAR}:
        radius, apart = (2.6, 66.0) if kind is SteelKind.WIRE else (4.4, 198.0)
        yield svg.line((left + 4, height), (right - 4, height), width=1.6)
        x = left + 24
        while x < right - 8:
            yield svg.element("circle", cx=x, cy=height + radius, r=radius, fill=svg.INK)
            x += apart
        support = left + 50
        while support < right - 20:
            feet = [
                (support - 8, top + slab_px),
                (support, height + 3),
                (support + 8, top + slab_px),
            ]
            yield svg.polyline(feet, width=svg.THIN)
            support += 132
    elif kind is SteelKind.FIBER:
        for index in range(int((right - left) / 12)):
            x = left + 6 + (index * 0.7549 % 1) * (right - left - 24)
            y = top + 8 + (index * 0.5698 % 1) * (slab_px - 16)
            slant = 5 if index % 2 else -5
            yield svg.line((x, y), (x + 9, y + slant), width=1.0)
