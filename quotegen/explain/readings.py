"""The many readings of one shape as a list to measure after: offsets by station, ties by point."""

from collections.abc import Iterator
from itertools import zip_longest

from quotegen.explain.wording import Words
from quotegen.quantity import Length
from quotegen.spec.field_methods import AreaRule, EdgeLine, Offsets, Ties
from quotegen.spec.shapes import Piece, Shape


def readings_of(shape: Piece, words: Words) -> tuple[str, ...]:
    """Return one text for each station or point; none where the sentence says every reading."""
    if shape.offsets is not None:
        return tuple(_stations(shape.offsets, words))
    if shape.ties is not None:
        return tuple(
            words("tie_pair", a=words.length(point.a), b=words.length(point.b))
            for point in shape.ties.points
        )
    if isinstance(shape, Shape) and shape.border is not None:
        return readings_of(shape.border.pool, words)
    return ()


def offsets_way(offsets: Offsets, words: Words) -> str:
    """Return in a sentence what the readings of offsets are, and by which rule the area is."""
    rule = "rule_trapezoid"
    if offsets.rule is AreaRule.SIMPSON:
        rule = "rule_simpson_split" if len(offsets.far) % 2 == 0 else "rule_simpson"
    return words("way_offsets" if offsets.near is None else "way_offsets_both", rule=words(rule))


def ties_way(ties: Ties, words: Words) -> str:
    """Return in a sentence what the readings of ties are, and what line joins the points."""
    line = words("line_smooth" if ties.edge is EdgeLine.SMOOTH else "line_straight")
    return words("way_ties", apart=words.length(ties.apart), line=line)


def _stations(offsets: Offsets, words: Words) -> Iterator[str]:
    along = offsets.along or tuple(
        Length(number * offsets.every.feet) for number in range(len(offsets.far)) if offsets.every
    )
    for station, far, near in zip_longest(along, offsets.far, offsets.near or ()):
        said = {"along": words.length(station), "far": words.length(far)}
        if near is None:
            yield words("station", **said)
        else:
            yield words("station_both", near=words.length(near), **said)
