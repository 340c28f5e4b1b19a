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


def draw_section(job: JobSpec, placement: PlacementSpec, words: Words, width: float, ident: str
                 ) -> Drawing:
    """Draw the section of one placement, the depths to one scale."""
    slab_px, base_px = _px(placement.thickness), _px(placement.base)
    left, right = 92.0, width - 8
    top = TOP_PX
    parts = [
        svg.element("defs", hatches.ground(f"{ident}-ground") + hatches.stone(f"{ident}-stone")
                    + hatches.concrete(f"{ident}-concrete")),
        _layer(left, right, top, slab_px, f"{ident}-concrete", svg.THICK),
        _layer(left, right, top + slab_px, base_px, f"{ident}-stone", svg.THIN),
        _layer(left, right, top + slab_px + base_px, GROUND_PX, f"{ident}-ground", 0),
        *_steel(job.rate_book.reinforcement[placement.reinforcement].kind, left, right, top, slab_px),
        svg.dimension((64, top), (64, top + slab_px), words.depth(placement.thickness), size=12,
                      extension=((left, top), (left, top + slab_px))),
        svg.dimension((64, top + slab_px), (64, top + slab_px + base_px), words.depth(placement.base),
                      size=12, extension=((left, top + slab_px), (left, top + slab_px + base_px))),
        *_names(job, placement, words, left, top, slab_px, base_px),
    ]
    height = top + slab_px + base_px + GROUND_PX + 6
    title = words("section_title", placement=placement.name)
    return Drawing(svg=svg.document(width, height, "".join(parts), title=title, ident=ident,
                                    css_class="drawing section"), title=title)


def _px(depth: Length) -> float:
    return depth.ft * 12 * PX_PER_INCH_DEEP


def _layer(left: float, right: float, top: float, height: float, pattern: str, outline: float) -> str:
    shape = svg.element("rect", x=left, y=top, width=right - left, height=height,
                        fill=f"url(#{pattern})")
    if not outline:
        return shape
    return shape + svg.element("rect", x=left, y=top, width=right - left, height=height, fill="none",
                               stroke=svg.INK, stroke_width=outline)


def _steel(kind: SteelKind, left: float, right: float, top: float, slab_px: float) -> Iterator[str]:
    """Steel lies in the upper half, a little above the middle, on supports; fibres everywhere."""
    height = top + slab_px * 0.45
    if kind in {SteelKind.WIRE, SteelKind.BAR}:
        radius, apart = (3.0, 66.0) if kind is SteelKind.WIRE else (5.0, 198.0)
        yield svg.line((left + 8, height), (right - 8, height), width=1.6)
        x = left + 24
        while x < right - 12:
            yield svg.element("circle", cx=x, cy=height + radius, r=radius, fill=svg.INK)
            x += apart
        for x in (left + 60, (left + right) / 2, right - 60):
            yield svg.polyline([(x - 8, top + slab_px), (x, height + 6), (x + 8, top + slab_px)],
                               width=svg.THIN)
    elif kind is SteelKind.FIBRE:
        for index in range(40):
            x = left + 10 + (index * 0.7549 % 1) * (right - left - 30)
            y = top + 6 + (index * 0.5698 % 1) * (slab_px - 12)
            slant = 5 if index % 2 else -5
            yield svg.line((x, y), (x + 9, y + slant), width=1.0)


def _names(job: JobSpec, placement: PlacementSpec, words: Words, left: float, top: float,
           slab_px: float, base_px: float) -> Iterator[str]:
    steel = job.rate_book.reinforcement[placement.reinforcement].name
    finish = job.finish_of(placement, job.finish)[1].name
    x = left + 14
    yield svg.text((left, top - 10), words("section_surface", finish=finish), size=13,
                   anchor="start", bold=True)
    yield svg.text((x, top + slab_px - 8),
                   words("section_slab", strength=words.number(job.rate_book.mix.strength_psi, 0),
                         steel=steel), size=12, anchor="start", halo=True)
    yield svg.text((x, top + slab_px + base_px / 2 + 4),
                   words("section_base", material=job.rate_book.base_material), size=12,
                   anchor="start", halo=True)
    yield svg.text((x, top + slab_px + base_px + GROUND_PX / 2 + 4), words("section_ground"), size=12,
                   anchor="start", halo=True)
