"""The section: ground, base, slab, steel and surface, cut through, with this job's depths."""

from collections.abc import Iterator

from quotegen.explain import hatches, svg
from quotegen.explain.svg import Drawing
from quotegen.explain.wording import Words
from quotegen.quantity import Length
from quotegen.spec.rate_book import SteelKind
from quotegen.spec.records import JobSpec, PlacementSpec

PX_PER_INCH_DEEP = 11.0
GROUND_PX = 34.0
TOP_PX = 30.0
CUT_SHARE = 0.56


def draw_section(
    job: JobSpec, placement: PlacementSpec, words: Words, width: float, ident: str
) -> Drawing:
    """Draw the section of one placement, the depths to one scale, its layers named at the right."""
    slab_px, base_px = _px(placement.thickness), _px(placement.base)
    left, right = 62.0, width * CUT_SHARE
    top, below, bottom = TOP_PX, TOP_PX + slab_px, TOP_PX + slab_px + base_px
    steel = job.rate_book.reinforcement[placement.reinforcement]
    names = (
        (
            top + slab_px / 2,
            words(
                "section_slab",
                steel=steel.name,
                strength=words.number(job.rate_book.mix.strength_psi, 0),
            ),
        ),
        (below + base_px / 2, words("section_base", material=job.rate_book.base_material)),
        (bottom + GROUND_PX / 2, words("section_ground")),
    )
    surface = words("section_surface", finish=job.finish_of(placement, job.finish)[1].name)
    parts = [
        svg.element(
            "defs",
            hatches.ground(f"{ident}-ground")
            + hatches.stone(f"{ident}-stone")
            + hatches.concrete(f"{ident}-concrete"),
        ),
        _layer(left, right, top, slab_px, f"{ident}-concrete", svg.THICK),
        _layer(left, right, below, base_px, f"{ident}-stone", svg.THIN),
        _layer(left, right, bottom, GROUND_PX, f"{ident}-ground", 0),
        *_steel(steel.kind, left, right, top, slab_px),
        svg.dimension(
            (36, top),
            (36, below),
            words.depth(placement.thickness),
            size=12,
            extension=((left, top), (left, below)),
        ),
        svg.dimension(
            (36, below),
            (36, bottom),
            words.depth(placement.base),
            size=12,
            extension=((left, below), (left, bottom)),
        ),
        svg.text((left, top - 10), surface, size=13, anchor="start", face="bold"),
        *(part for height, name in names for part in _named(name, right, width, height)),
    ]
    title = words("section_title", placement=placement.name)
    drawn = svg.document(
        width,
        bottom + GROUND_PX + 4,
        "".join(parts),
        title=title,
        ident=ident,
        css_class="drawing section",
    )
    return Drawing(svg=drawn, title=title)


def _named(name: str, right: float, width: float, height: float) -> Iterator[str]:
    """Name a layer beside it, on a thin line, in as many short lines as it takes."""
    start = right + 26
    yield svg.line((right - 10, height), (start - 5, height))
    lines = svg.wrapped(name, width - start, 12)
    first = height + 4 - (len(lines) - 1) * 7
    for index, words in enumerate(lines):
        yield svg.text((start, first + index * 14), words, size=12, anchor="start")


def _px(depth: Length) -> float:
    return depth.ft * 12 * PX_PER_INCH_DEEP


def _layer(
    left: float, right: float, top: float, height: float, pattern: str, outline: float
) -> str:
    shape = svg.element(
        "rect", x=left, y=top, width=right - left, height=height, fill=f"url(#{pattern})"
    )
    if not outline:
        return shape
    return shape + svg.element(
        "rect",
        x=left,
        y=top,
        width=right - left,
        height=height,
        fill="none",
        stroke=svg.INK,
        stroke_width=outline,
    )


def _steel(kind: SteelKind, left: float, right: float, top: float, slab_px: float) -> Iterator[str]:
    """Steel lies a little above the middle, on supports; fibres lie everywhere."""
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
    elif kind is SteelKind.FIBRE:
        for index in range(int((right - left) / 12)):
            x = left + 6 + (index * 0.7549 % 1) * (right - left - 24)
            y = top + 8 + (index * 0.5698 % 1) * (slab_px - 16)
            slant = 5 if index % 2 else -5
            yield svg.line((x, y), (x + 9, y + slant), width=1.0)
