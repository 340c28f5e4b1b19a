"""Heights on the measuring sheet: of corners, along edges, and of ground that others made ready."""

from collections.abc import Mapping

from quotegen.explain.drawing.canvas import marked_edges
from quotegen.explain.papers.measuring_views import HeightRow
from quotegen.explain.results import Results


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


def _letters(results: Results) -> Mapping[tuple[str, str], str]:
    """The letter on the plan of each edge, by placement and by the edge's own mark."""
    return {(m.placement, m.edge.mark): m.mark for m in marked_edges(results.takeoff)}
