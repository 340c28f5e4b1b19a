"""A flight of steps from the side: the height of each, its depth, and whether it is one pour.

It climbs to the slab, or where it stands at the house from the slab to the door.
"""

from collections.abc import Iterator
from itertools import pairwise

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.dimension import Dimension, draw_dimensions
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.scatter import spots
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.results import Results
from quotegen.quantity import Length
from quotegen.reading.files.site_parts import Flight, PouredWith
from quotegen.reading.records import PlacementSpec

PX_PER_FT, MOST_HIGH_PX, UNSAID_FT = 72.0, 60.0, 1.0
"""How large and high a flight is drawn, at most; how deep a step whose depth nobody said."""

LEFT_PX, TOP_PX, FOOT_PX, LANDING_PX, RIGHT_PX, WALL_PX = 66.0, 24.0, 16.0, 70.0, 64.0, 16.0
SIZE_PX, LINE_PX = 12.5, 16.0


def steps_drawing(
    results: Results, placement: PlacementSpec, width: float, ident: str
) -> Drawing | None:
    """Draw the steps of a placement, the slab or the house at the right; None where it has none.

    Args:
        results: the job and its words.
        placement: whose steps they are.
        width: in pixels.
        ident: unique on the page.
    """
    flight, words = placement.typed.steps, results.words
    if flight is None:
        return None
    on_plan = results.takeoff.placement(placement.id).flight
    at_house = on_plan is not None and on_plan.at_house
    run = flight.tread.ft if flight.tread else UNSAID_FT
    free = width - LEFT_PX - LANDING_PX - RIGHT_PX
    high_ft = sum(riser.ft for riser in flight.risers)
    long_ft = run * max(1, len(flight.risers) - 1)
    per_ft = min(PX_PER_FT, MOST_HIGH_PX / high_ft, free / long_ft)
    last = run * per_ft if at_house else LANDING_PX
    corners = _corners(flight, run * per_ft, last, per_ft)
    ink, foot = Ink(), corners[0][1]
    _concrete(ink, corners, foot)
    end = corners[-1][0]
    if at_house:
        ink.stroke(((end, TOP_PX - WALL_PX), (end, foot)), Pen.HEAVY)
    else:
        _ground(ink, corners[0][0], end, foot)
    if flight.poured is PouredWith.APART and not at_house:
        ink.stroke(((end - LANDING_PX, corners[-1][1]), (end - LANDING_PX, foot)), Pen.HEAVY)
    ink.put(draw_dimensions(_dimensions(results, flight, corners)))
    bottom = foot + FOOT_PX
    side = "steps_at_house" if at_house else "steps_from_the_side"
    said = f"{words(side)} {_said(results, flight, corners)}"
    for line in words.font.wrapped(said.strip(), width, SIZE_PX):
        bottom += LINE_PX
        ink.put(svg.text((0, bottom), line, size=SIZE_PX, anchor="start"))
    return svg.drawing(
        (width, bottom + 6), ink.drawn(), title=words("steps_title", placement=placement.name),
        ident=ident, family=words.font.family, css_class="drawing steps",
    )  # fmt: skip


def _corners(flight: Flight, run: float, last: float, per_ft: float) -> list[Pixel]:
    """The line of the steps from their foot up to the end of what is drawn, `last` deep."""
    heights = [riser.ft * per_ft for riser in flight.risers]
    x, y = LEFT_PX, TOP_PX + sum(heights)
    corners = [(x, y)]
    for index, height in enumerate(heights):
        y -= height
        corners.append((x, y))
        x += run if index < len(heights) - 1 else last
        corners.append((x, y))
    return corners


def _concrete(ink: Ink, corners: list[Pixel], foot: float) -> None:
    """The steps, cut: dots, a heavy line on top, and what they stand on."""
    (left, _), (right, top) = corners[0], corners[-1]
    for u, v in spots(int((right - left) * (foot - top) / 90), right - left, foot - top - 4, 6):
        x, y = left + u, top + 3 + v
        if y > _top_at(corners, x) + 3:
            ink.stroke(((x, y), (x + 0.4, y)), Pen.MEDIUM)
    ink.stroke(corners, Pen.HEAVY)
    ink.stroke(((left - 40, foot), (right, foot)), Pen.MEDIUM)


def _ground(ink: Ink, left: float, right: float, foot: float) -> None:
    """The strokes of earth under a flight that stands on the ground."""
    for index in range(int((right - left + 40) / 24)):
        x = left - 38 + 24 * index
        ink.strokes((((x + 6 * n + 7, foot + 2), (x + 6 * n, foot + 9)) for n in range(2)),
                    Pen.FINE)  # fmt: skip


def _top_at(corners: list[Pixel], x: float) -> float:
    flat = ((a, b) for a, b in pairwise(corners) if a[1] == b[1])
    return next((a[1] for a, b in flat if a[0] <= x <= b[0]), corners[0][1])


def _dimensions(results: Results, flight: Flight, corners: list[Pixel]) -> Iterator[Dimension]:
    """Each rise at the left, all together at the right, and each depth where it was said."""
    words, x = results.words, LEFT_PX - 28
    rises = zip(flight.risers, corners[0::2], corners[1::2], strict=False)
    if _heights_fit(results, flight, corners):
        for riser, foot_at, head_at in rises:
            yield Dimension(start=(x, head_at[1]), end=(x, foot_at[1]), words=words.depth(riser),
                            measured=(head_at, foot_at), size=12)  # fmt: skip
    (right, top), foot = corners[-1], corners[0][1]
    if len(flight.risers) > 1:
        whole = Length(
            sum((riser.feet for riser in flight.risers), start=flight.risers[0].feet * 0)
        )
        yield Dimension(start=(right + 30, top), end=(right + 30, foot), words=words.depth(whole),
                        measured=((right, top), (right, foot)), size=12)  # fmt: skip
    if flight.tread and len(flight.risers) > 1:
        (left, y), (end, _) = corners[1], corners[2]
        yield Dimension(start=(left, y - 14), end=(end, y - 14), words=words.depth(flight.tread),
                        measured=((left, y), (end, y)), size=12)  # fmt: skip


def _heights_fit(results: Results, flight: Flight, corners: list[Pixel]) -> bool:
    """Whether each height has room beside its step; if not they are said below."""
    words = results.words
    rises = zip(flight.risers, corners[0::2], corners[1::2], strict=False)
    return all(
        words.font.width(words.depth(riser), 12) + 4 < foot[1] - head[1]
        for riser, foot, head in rises
    )


def _said(results: Results, flight: Flight, corners: list[Pixel]) -> str:
    words = results.words
    said = []
    if not _heights_fit(results, flight, corners):
        heights = tuple(words.depth(riser) for riser in flight.risers)
        said.append(words("steps_heights", heights=words.listing(heights)))
    if flight.tread is None and len(flight.risers) > 1:
        said.append(words("steps_no_depth"))
    if flight.poured:
        said.append(words(f"steps_{flight.poured.name.lower()}"))
    return " ".join(said)
