"""Heights on sheet 2: of corners, along edges, and of ground that others made ready."""

from collections.abc import Mapping

from quotegen.explain.drawing.canvas import marked_edges
from quotegen.explain.results import Results
from quotegen.explain.sheets.plan_views import HeightRow


def corner_rows(results: Results) -> tuple[HeightRow, ...]:
    """The height of each corner, named by the letters of the edges that meet there."""
    words, letters = results.words, _letters(results)
    return tuple(
        HeightRow(
            mark=words(
                "corner_of",
                first=letters[falls.placement, corner.marks[0]],
                second=letters[falls.placement, corner.marks[1]],
            ),
            height=words.height(corner.height_ft),
        )
        for falls in results.takeoff.falls
        for corner in falls.corners
    )


def drop_rows(results: Results) -> tuple[HeightRow, ...]:
    """The highest and lowest point of each edge that falls, and the drop between."""
    words, letters = results.words, _letters(results)
    return tuple(
        HeightRow(
            mark=letters[falls.placement, edge.mark],
            height=words.height(edge.highest_ft),
            lowest=words.height(edge.lowest_ft),
            drop=words.feet(edge.drop_ft),
        )
        for falls in results.takeoff.falls
        for edge in falls.edges
        if edge.drop_ft
    )


def heights_from(results: Results) -> str:
    """What the heights of each placement count from."""
    words = results.words
    specs = {p.id: p for p in results.job.placements}
    sentences = []
    for falls in results.takeoff.falls:
        spec = specs[falls.placement]
        key = "heights_from_stated" if spec.typed.stated_height else "heights_from_highest"
        key = "heights_from_mark" if falls.of else key
        sentences.append(words(key, placement=spec.name, mark=falls.of))
    return " ".join(sentences)


def ground(results: Results) -> str:
    """Whether the ground that others made ready is large enough, in words."""
    prepared, typed, words = (
        results.takeoff.prepared,
        results.job.typed.prepared_ground,
        results.words,
    )
    if prepared is None or typed is None:
        return ""
    margin = words.depth(typed.margin)
    if not prepared.short_ft:
        return words("ground_enough", margin=margin)
    return words("ground_short", area=words.square_feet(prepared.short_sqft), margin=margin)


def _letters(results: Results) -> Mapping[tuple[str, str], str]:
    """The letter on the plan of each edge, by placement and by the edge's own mark."""
    return {(m.placement, m.edge.mark): m.mark for m in marked_edges(results.takeoff)}
